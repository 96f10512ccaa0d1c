import { Dropped, Refusal } from "../worker/planner.js";
import type { Answer } from "../worker/protocol.js";
import { app } from "./app.svelte.js";

/** Drawn cases, as in the plans of single aircraft. */
const MEMBERS = 200;

/** The plan of all aircraft together; it outlives the screen, and the next one changes it for good reason only. */
class WholeBase {
  plan = $state.raw<Answer<"basePlan">>();
  /** When it was asked for. */
  madeAt = $state<number>();
  /** Share done of what is being worked on. */
  share = $state<number>();
  reasons = $state.raw<readonly string[]>([]);
  #of: string | undefined;
  #stop: AbortController | undefined;

  /** @returns the plan, or undefined when it was refused or stopped */
  async work(): Promise<Answer<"basePlan"> | undefined> {
    this.stop();
    const mine = new AbortController();
    this.#stop = mine;
    this.share = 0;
    const now = Date.now();
    // What was told at one base means nothing at another.
    const told = this.#of === app.view?.name ? (this.plan?.aircraft ?? []).map((one) => one.told) : [];
    try {
      const document = await app.planner.ask(
        "wholeBase",
        { now, members: MEMBERS, told },
        { signal: mine.signal },
      );
      const plan = await app.planner.ask(
        "basePlan",
        { document },
        {
          signal: mine.signal,
          onProgress: (done) => {
            this.share = done;
          },
        },
      );
      this.plan = plan;
      this.madeAt = now;
      this.#of = app.view?.name;
      this.reasons = [];
      return plan;
    } catch (error) {
      if (error instanceof Dropped) return undefined;
      this.reasons =
        error instanceof Refusal ? error.reasons : [error instanceof Error ? error.message : String(error)];
      return undefined;
    } finally {
      if (this.#stop === mine) this.share = undefined;
    }
  }

  stop(): void {
    this.#stop?.abort();
  }
}

export const wholeBase = new WholeBase();
