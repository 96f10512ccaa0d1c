import { finding } from "../../findings/index.js";
import type { BaseState, LogbookEvent } from "../../logbook/index.js";
import { deriveBase, scenarioOf } from "../data/base.js";
import { Refused } from "./refused.js";

/** [h] the document reaches beyond the last moment asked for. */
const BEYOND = 0.25;

interface Past {
  readonly aircraft: string;
  /** First and last moment that is asked for [ms]. */
  readonly from: number;
  readonly to: number;
}

/** One aircraft through a time that is over, from where its temperatures were known before it. */
export function historyOf(base: BaseState, logbook: readonly LogbookEvent[], { aircraft, from, to }: Past) {
  const learned = base.aircraft.get(aircraft)?.setUp.learned;
  // As it was known at the end: a shut-down since then would hide what was before it.
  const then =
    deriveBase(logbook.filter((event) => isOf(event, to))) ??
    deriveBase(logbook.filter((event) => event.kind === "set-up" || isOf(event, to)));
  const standing = then?.aircraft.get(aircraft);
  if (then === undefined || standing === undefined) {
    throw new Refused([`the logbook says nothing of ${aircraft} at ${isoOf(to)}`]);
  }
  const { anchor } = standing;
  if (anchor.at >= to) {
    throw new Refused([
      `the logbook says how ${standing.setUp.name} stood from ${isoOf(anchor.at)} on; the log ends before, at ${isoOf(to)}`,
    ]);
  }
  const found = scenarioOf(then, aircraft, { now: to, hours: BEYOND, from: "anchor" });
  if (!found.ok) throw new Refused([found.reason]);
  const begins = found.facts.start;
  if (begins >= to) {
    throw new Refused([
      `the weather is known from ${isoOf(begins)} on; the log ends before, at ${isoOf(to)}`,
    ]);
  }
  const late = begins > from ? [finding("logged-before-not-used", { begins_at: isoOf(begins) })] : [];
  const { learned: _, ...document } = found.document();
  return {
    document: learned === undefined ? document : { ...document, learned },
    assumptions: [...found.assumptions, ...late],
  };
}

/** Corrections come after what they correct, and weather may be entered late. */
function isOf({ kind, at }: LogbookEvent, to: number): boolean {
  return kind === "correction" || kind === "forecast" || Date.parse(at) <= to;
}

function isoOf(at: number): string {
  return new Date(at).toISOString();
}
