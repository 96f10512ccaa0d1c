import { type PlanDocument, readScenarioDocument } from "../../src/documents/index.js";
import type { ReadScenario } from "../../src/documents/scenario-reading.js";
import { type Aim, allCriteria, gatingOf, marginOf } from "../../src/readiness/index.js";
import { usedKit } from "../../src/scenario/index.js";
import { type Change, drawEnsemble, simulate, type TimedChange } from "../../src/simulation/index.js";

const HOUR = 3600;

export type Happening = PlanDocument["happenings"][number];

/** A document as read; throws for one that is refused. */
export function readOf(source: unknown): ReadScenario {
  const read = readScenarioDocument(source);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read;
}

/** What the document says will be done, as changes. */
export function changesOf(happenings: readonly Happening[]): TimedChange[] {
  return happenings.map(({ at_h, do: done, what }) => ({ at: at_h * HOUR, change: changeOf(done, what) }));
}

function changeOf(done: string, what: string): Change {
  const ids = what.split(", ");
  switch (done) {
    case "plug_in":
      return { do: "plug-in", heaters: ids };
    case "unplug":
      return { do: "unplug", heaters: ids };
    case "cover_on":
      return { do: "cover-on", covers: ids };
    case "cover_off":
      return { do: "cover-off", covers: ids };
    case "move":
      return { do: "move", to: what === "hangar" ? "hangar" : "ramp" };
    default:
      throw new RangeError(`unknown happening: ${done}`);
  }
}

/** The plan's happenings but for taking covers off and pulling out: covers left on, the aircraft where it is. */
export function leftCovered(
  { happenings, cover_off }: PlanDocument,
  own: readonly TimedChange[],
): TimedChange[] {
  const isOwn = ({ at, change }: TimedChange) =>
    own.some((o) => Math.abs(o.at - at) < 1 && JSON.stringify(o.change) === JSON.stringify(change));
  return changesOf(happenings).filter(
    (change) =>
      !["cover-off", "move"].includes(change.change.do) ||
      Math.abs(change.at - HOUR * cover_off.at_h) > 1 ||
      isOwn(change),
  );
}

/**
 * Shares of all cases that are ready at some moments [h], told by a simulation of its own: the document's happenings are
 * played as a scenario's events, with the same draws, and judged by all criteria. The planner has no part in it.
 */
export function readyShares(
  read: ReadScenario,
  events: readonly TimedChange[],
  moments: readonly number[],
  line: Aim = "least",
): number[] {
  const { scenario, ensemble, limits } = read;
  const draws = drawEnsemble({ ...ensemble, weather: scenario.weather });
  const times = [...new Set([0, ...moments.map((h) => Math.min(scenario.duration, h * HOUR))])].sort(
    (a, b) => a - b,
  );
  if (times.length === 1) times.push(1);
  const course = simulate({ ...scenario, events: [...events] }, draws, times);
  if (course.status !== "completed") throw new Error(course.remedy);
  const criteria = gatingOf(allCriteria(scenario.installation, usedKit(read), limits), line);
  const { members, parts, temps } = course;
  const size = parts.length * members;
  const values = new Float64Array(members);
  return moments.map((h) => {
    const s = times.indexOf(Math.min(scenario.duration, h * HOUR));
    const state = { temps: temps.subarray(s * size, (s + 1) * size), parts, members };
    const holds = new Uint8Array(members).fill(1);
    for (const criterion of criteria) {
      criterion.values(state, values);
      for (let m = 0; m < members; m++) if (marginOf(criterion, values[m]) < 0) holds[m] = 0;
    }
    return holds.reduce((sum, h) => sum + h, 0) / members;
  });
}
