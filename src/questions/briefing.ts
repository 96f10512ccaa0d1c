import { quantile } from "../numerics/index.js";
import type { DrawnScenario } from "../scenario/index.js";
import { createForcing, partTemps, type Trajectory } from "../simulation/index.js";
import { type StartBriefing, startBriefing } from "../starting/index.js";

/** What to know at the start, at a sample of a course: middle temperatures of the parts and the air. */
export function briefingAt(course: Trajectory, at: number, { read, draws }: DrawnScenario): StartBriefing {
  const s = course.time.indexOf(at);
  if (s < 0) throw new RangeError(`invalid at: ${at} s (expected a sample time of the course)`);
  const temps = new Map(course.parts.map((part) => [part, quantile(partTemps(course, part, s), 0.5)]));
  const forcing = createForcing(read.scenario, draws);
  const air = Float64Array.from({ length: course.members }, (_, m) => forcing.tempAirAt(at, m));
  return startBriefing(read.scenario.installation, temps, quantile(air, 0.5), read.batteryFitted);
}
