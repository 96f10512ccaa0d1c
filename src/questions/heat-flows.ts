import type { Configuration } from "../aircraft/index.js";
import type { HeatFlows } from "../documents/index.js";
import type { EnsembleRun, Trajectory } from "../simulation/index.js";

/** Where heat flows at a moment of a course: means over the members, which, unlike medians, still balance. */
export function heatFlowsAt(
  run: EnsembleRun,
  course: Trajectory,
  configuration: Configuration,
  at: number,
): HeatFlows {
  const { network, members, system } = run;
  const size = network.parts.length * members;
  const s = course.time.indexOf(at);
  if (s < 0) throw new RangeError(`missing sample: none at ${at} s`);
  const temps = course.temps.subarray(s * size, (s + 1) * size);
  const heat = new Float64Array(network.links.length * members);
  const elements = new Float64Array(network.sources.length * members);
  const total = new Float64Array(members);
  run.power(configuration, at, temps, total);
  run.heatFlows(configuration, at, temps, heat);
  system.sourcePowers(temps, elements);

  const stored = new Map(network.parts.map(({ name }) => [name, 0]));
  const add = (part: string, watts: number) => {
    const before = stored.get(part);
    if (before !== undefined) stored.set(part, before + watts);
  };
  const flows = network.links.map(({ from, to }, i) => {
    const watts = meanOf(heat, i, members);
    add(from, -watts);
    add(to, watts);
    return { from, to, watts };
  });
  const heaters = meanOf(total, 0, members);
  let blown = heaters;
  network.sources.forEach(({ part }, i) => {
    const watts = meanOf(elements, i, members);
    add(part, watts);
    blown -= watts;
  });
  // A duct warms outside air; what it does not leave on the sump and under the cowl goes out again with the same air.
  const left = flows.reduce((sum, { from, watts }) => (from === "supply_air" ? sum + watts : sum), 0);
  if (blown > 0) flows.push({ from: "supply_air", to: "outside_air", watts: blown - left });
  return { at, heaters, flows, stored };
}

function meanOf(values: Float64Array, row: number, members: number): number {
  return values.subarray(row * members, (row + 1) * members).reduce((sum, v) => sum + v, 0) / members;
}
