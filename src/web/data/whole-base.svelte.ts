import type { Said } from "../../findings/index.js";
import { USUAL_MEMBERS } from "../../simulation/members.js";
import type { Answer } from "../worker/protocol.js";
import { app } from "./app.svelte.js";
import { Work } from "./work.svelte.js";

interface Made {
  readonly plan: Answer<"basePlan">;
  /** [ms] when it was asked for. */
  readonly at: number;
  /** Names of aircraft whose departure was too far ahead for it. */
  readonly later: readonly string[];
}

/** The plan of all aircraft together; it outlives the screen, and the next one changes it for good reason only. */
class WholeBase {
  readonly work = new Work<Made>(true);
  /** The logbook it was asked of: what is told at one base means nothing at another. */
  #of = $state<string>();

  get made(): Made | undefined {
    return this.#isHere ? this.work.answer : undefined;
  }

  /** Why there is none. */
  get reasons(): readonly Said[] {
    return this.#isHere ? this.work.reasons : [];
  }

  /** @returns whether there is a new plan */
  async ask(): Promise<boolean> {
    const at = Date.now();
    if (!this.#isHere) {
      this.work.forget();
      this.#of = logbook();
    }
    const told = (this.made?.plan.aircraft ?? []).map((one) => one.told);
    const isDone = await this.work.run(async (options) => {
      const { signal } = options;
      const asked = { now: at, members: USUAL_MEMBERS, told };
      const { document, later } = await app.planner.ask("wholeBase", asked, { signal });
      return { plan: await app.planner.ask("basePlan", { document }, options), at, later };
    });
    // Another base may have been opened meanwhile.
    return isDone && this.#isHere;
  }

  get #isHere(): boolean {
    return this.#of === logbook();
  }
}

/** Which logbook is open: the first set-up names it, whatever is written later. */
function logbook(): string | undefined {
  return app.events.find(({ kind }) => kind === "set-up")?.id;
}

export const wholeBase = new WholeBase();
