import type { SimulationDocument } from "../../index.js";
import type { Style } from "../style.js";
import { chartLines } from "./chart.js";
import { screen } from "./opening.js";
import { bareTemperature, clock, closing, day, list, unitOf } from "./words.js";

/** Parts in the order of interest, and what they are called here. */
const COLUMNS = [
  ["oil", "oil"],
  ["sump", "sump"],
  ["crankcase", "case"],
  ["crankshaft", "crank"],
  ["cylinders", "barrel"],
  ["heads", "heads"],
  ["battery", "batt."],
  ["cowl_air", "cowl"],
  ["heater_surface", "heater"],
  ["outside_air", "air"],
] as const;

/** A simulated course: from where to where each part went, then medians by the hour, and the chart. */
export function simulationText(simulation: SimulationDocument, style: Style): string[] {
  const { name, aircraft, start, zone, course, members, cautions } = simulation;
  const hours = course.time_h[course.time_h.length - 1];
  const opening = {
    verdict: `${name}: ${hours} h from ${day(start)} ${start.time.slice(11, 16)}, times in ${zone}`,
    about: `${aircraft.name}. The middle of ${members} cases.`,
    facts: partFacts(simulation, style),
    cautions,
  };
  return screen(opening, () => everything(simulation, style), style);
}

/** Parts of the first screen, and what they are called there. */
const FIRST_PARTS: Readonly<Record<string, string>> = {
  oil: "Oil",
  crankcase: "Case",
  crankshaft: "Crankshaft",
  cylinders: "Barrels",
  heads: "Heads",
  battery: "Battery",
  outside_air: "Outside air",
};

function partFacts({ course, happenings, start }: SimulationDocument, style: Style): [string, string][] {
  const bare = (celsius: number) => bareTemperature(celsius, style);
  const facts = Object.entries(FIRST_PARTS).flatMap(([part, label]): [string, string][] => {
    const middle = course.parts[part]?.p50_c;
    if (middle === undefined) return [];
    const ends = `${bare(middle[0]!)} at the start, ${bare(middle.at(-1)!)} at the end`;
    return [
      [label, `${ends}, between ${bare(Math.min(...middle))} and ${style.values.temp(Math.max(...middle))}`],
    ];
  });
  const done = happenings.map((h) => `${clock(h, start)} ${h.do.replace("_", " ")}`).join(", ");
  return happenings.length === 0 ? facts : [...facts, ["What happens", done]];
}

function everything(
  { start, zone, course, happenings, assumptions, warnings, cautions }: SimulationDocument,
  style: Style,
): string[] {
  const end = course.time_h[course.time_h.length - 1];
  const marks = happenings.map(({ at_h }, i) => ({ at_h, letter: String((i + 1) % 10), label: "" }));
  return [
    `Middle of all cases, ${unitOf("c", style)}`,
    ...hourlyTable(course, style),
    "",
    ...chartLines({ course, from_h: 0, to_h: end, start: Date.parse(start.time) / 1000, zone, marks }, style),
    ...list(
      "What happens",
      happenings.map((h, i) => `${(i + 1) % 10} ${clock(h, start)} ${h.do.replace("_", " ")}: ${h.what}`),
      style,
    ),
    ...closing({ assumptions, warnings, cautions }, style),
  ];
}

/** Samples at most this many lines. */
const MOST_LINES = 25;

function hourlyTable(course: SimulationDocument["course"], style: Style): string[] {
  const columns = COLUMNS.filter(([part]) => course.parts[part] !== undefined);
  const end = course.time_h[course.time_h.length - 1];
  const step = Math.max(1, Math.ceil(end / MOST_LINES));
  const rows = course.time_h.flatMap((hour, s) => {
    if (Math.abs(hour / step - Math.round(hour / step)) > 1e-6) return [];
    const cells = columns.map(([part]) => bareTemperature(course.parts[part].p50_c[s], style).padStart(7));
    return [`${hour.toFixed(0).padStart(4)} h ${cells.join("")}`];
  });
  const heading = `${"after".padStart(6)} ${columns.map(([, label]) => label.padStart(7)).join("")}`;
  return [style.colors.bold(heading), ...rows];
}
