import { isElementPart } from "../aircraft/index.js";
import { quantileOfSorted } from "../numerics/index.js";
import type { DrawnScenario } from "../scenario/index.js";
import { createForcing, partTemps, type Trajectory } from "../simulation/index.js";
import { celsiusFromKelvin, JOULE_OF_KILOWATT_HOUR, SECONDS_OF_HOUR } from "../units/index.js";
import { rounded } from "./result-header.js";
import type { CourseDocument } from "./result-schema.js";

type PartBand = CourseDocument["parts"][string];

/** Every part over time with 5, 50 and 95 % values, in the trade's names. */
export function courseDocument(course: Trajectory, { read, draws }: DrawnScenario): CourseDocument {
  const forcing = createForcing(read.scenario, draws);
  const outside = (s: number) =>
    Float64Array.from({ length: course.members }, (_, m) => forcing.tempAirAt(course.time[s], m));
  const parts = Object.entries(shownParts(course)).map(([name, sources]) => {
    const pick = name === "heater_surface" ? Math.max : Math.min;
    return [name, bandSeries(course, (s) => combined(course, sources, s, pick))] as const;
  });
  return {
    time_h: Array.from(course.time, (t) => rounded(t / SECONDS_OF_HOUR, 4)),
    parts: { ...Object.fromEntries(parts), outside_air: bandSeries(course, outside) },
    energy_kwh: energyBands(course),
  };
}

/** Names in results, each with the parts it is made of: the coldest head, the hottest heater surface. */
function shownParts({ parts }: Trajectory): Record<string, readonly string[]> {
  const elements = parts.filter(isElementPart);
  const own = Object.fromEntries(
    parts
      .filter((part) => !isElementPart(part))
      .map((part) => [part === "barrels" ? "cylinders" : part, [part]]),
  );
  return {
    ...own,
    heads: ["heads_front", "heads_rear"],
    ...(elements.length === 0 ? {} : { heater_surface: elements }),
    ...Object.fromEntries(elements.map((part) => [part, [part]])),
  };
}

function combined(
  course: Trajectory,
  sources: readonly string[],
  s: number,
  pick: (a: number, b: number) => number,
): Float64Array {
  const [first, ...others] = sources.map((part) => partTemps(course, part, s));
  return others.reduce((a, b) => a.map((value, m) => pick(value, b[m])), first);
}

function bandSeries(course: Trajectory, valuesAt: (s: number) => Float64Array): PartBand {
  const series: PartBand = { p05_c: [], p50_c: [], p95_c: [] };
  for (let s = 0; s < course.time.length; s++) {
    const sorted = Float64Array.from(valuesAt(s)).sort();
    series.p05_c.push(rounded(celsiusFromKelvin(quantileOfSorted(sorted, 0.05)), 2));
    series.p50_c.push(rounded(celsiusFromKelvin(quantileOfSorted(sorted, 0.5)), 2));
    series.p95_c.push(rounded(celsiusFromKelvin(quantileOfSorted(sorted, 0.95)), 2));
  }
  return series;
}

function energyBands({ energy, time, members }: Trajectory): CourseDocument["energy_kwh"] {
  const bands: CourseDocument["energy_kwh"] = { p05: [], p50: [], p95: [] };
  for (let s = 0; s < time.length; s++) {
    const sorted = energy.slice(s * members, (s + 1) * members).sort();
    const at = (p: number) => rounded(quantileOfSorted(sorted, p) / JOULE_OF_KILOWATT_HOUR, 3);
    bands.p05.push(at(0.05));
    bands.p50.push(at(0.5));
    bands.p95.push(at(0.95));
  }
  return bands;
}
