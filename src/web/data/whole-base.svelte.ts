import { Dropped, Refusal } from "../worker/planner.js";
import type { Answer } from "../worker/protocol.js";
import { app } from "./app.svelte.js";

/** Drawn cases, as in the plans of single aircraft. */
const MEMBERS = 200;

interface Made {
  readonly plan: Answer<"basePlan">;
  /** [ms] when it was asked for. */
  readonly at: number;
  readonly later: readonly string[];
}

/** The plan of all aircraft together; it outlives the screen, and the next one changes it for good reason only. */
class WholeBase {
  /** Share done of what is being worked on. */
  share = $state<number>();
  #made = $state.raw<Made>();
  #reasons = $state.raw<readonly string[]>([]);
  /** The logbook it was asked of: what is told at one base means nothing at another. */
  #of = $state<string>();
  #stop: AbortController | undefined;

  get plan(): Answer<"basePlan"> | undefined {
    return this.#here?.plan;
  }

  get madeAt(): number | undefined {
    return this.#here?.at;
  }

  /** Names of aircraft whose departure was too far ahead for it. */
  get later(): readonly string[] {
    return this.#here?.later ?? [];
  }

  /** Why there is none. */
  get reasons(): readonly string[] {
    return this.#isHere ? this.#reasons : [];
  }

  /** @returns the plan, or undefined when it was refused or stopped */
  async work(): Promise<Answer<"basePlan"> | undefined> {
    this.stop();
    const mine = new AbortController();
    this.#stop = mine;
    this.share = 0;
    const now = Date.now();
    if (!this.#isHere) {
      this.#of = logbook();
      this.#made = undefined;
      this.#reasons = [];
    }
    const told = (this.plan?.aircraft ?? []).map((one) => one.told);
    try {
      const { document, later } = await app.planner.ask(
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
      // Another base may have been opened meanwhile.
      if (!this.#isHere) return undefined;
      this.#made = { plan, at: now, later };
      this.#reasons = [];
      return plan;
    } catch (error) {
      if (error instanceof Dropped) return undefined;
      this.#reasons =
        error instanceof Refusal ? error.reasons : [error instanceof Error ? error.message : String(error)];
      return undefined;
    } finally {
      if (this.#stop === mine) this.share = undefined;
    }
  }

  stop(): void {
    this.#stop?.abort();
  }

  get #isHere(): boolean {
    return this.#of === logbook();
  }

  get #here(): Made | undefined {
    return this.#isHere ? this.#made : undefined;
  }
}

/** Which logbook is open: the first set-up names it, whatever is written later. */
function logbook(): string | undefined {
  return app.events.find(({ kind }) => kind === "set-up")?.id;
}

export const wholeBase = new WholeBase();
