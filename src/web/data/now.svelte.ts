import type { NowDocument } from "../../documents/index.js";
import type { Said } from "../../findings/index.js";
import { Dropped, Refusal } from "../worker/planner.js";
import { app } from "./app.svelte.js";
import { estimatesOf } from "./server.js";

/** How one aircraft stands now, as far as it is known. */
export interface NowState {
  readonly aircraft: string;
  readonly document?: NowDocument;
  /** Who worked it out: the base hears its probes, this device knows the logbook and the weather only. */
  readonly by: "base" | "device";
  /** Why nothing is known; empty while it is being asked. */
  readonly reasons: readonly Said[];
}

/** [ms] an estimate of the base counts as one of now. */
const FRESH = 10 * 60_000;

/** Asks how an aircraft stands, each time it is told to; a later question takes the place of the one before it. */
export class LiveNow {
  state = $state.raw<NowState>();

  async look(aircraft: string): Promise<void> {
    if (this.state?.aircraft !== aircraft) this.state = { aircraft, by: "device", reasons: [] };
    const ofBase = await baseEstimate(aircraft);
    if (this.state?.aircraft !== aircraft) return;
    if (ofBase !== undefined) {
      this.state = { aircraft, document: ofBase, by: "base", reasons: [] };
      return;
    }
    try {
      const document = await app.planner.ask("now", { aircraft, now: Date.now() }, { lane: "now" });
      this.state = { aircraft, document, by: "device", reasons: [] };
    } catch (error) {
      if (error instanceof Dropped) return;
      const reasons = error instanceof Refusal ? error.reasons : [(error as Error).message];
      this.state = { aircraft, by: "device", reasons };
    }
  }
}

/** What the base says, unless it is old or does not know yet what was written down here. */
async function baseEstimate(aircraft: string): Promise<NowDocument | undefined> {
  const { sync } = app;
  if (sync.server !== "joined" || sync.waiting > 0) return undefined;
  const answer = await estimatesOf((await sync.address()) ?? "");
  if (!answer.ok) return undefined;
  const found = answer.value.estimates.find((each) => each.aircraft === aircraft)?.now;
  return found !== undefined && Date.now() - Date.parse(found.at.time) < FRESH ? found : undefined;
}
