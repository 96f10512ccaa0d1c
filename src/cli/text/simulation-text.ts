import type { SimulationDocument } from "../../index.js";
import type { Style } from "../style.js";
import { chartLines } from "./chart.js";
import { assumed, bareTemperature, cared, clock, DEFERENCE, day, list, unitOf, wrapped } from "./words.js";

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

/** A simulated course: medians by the hour, and the chart. */
export function simulationText(simulation: SimulationDocument, style: Style): string[] {
  const { name, aircraft, start, zone, course, happenings, members } = simulation;
  const end = course.time_h[course.time_h.length - 1];
  const marks = happenings.map(({ at_h }, i) => ({ at_h, letter: String((i + 1) % 10), label: "" }));
  return [
    style.colors.bold(`${name}: ${end} h from ${day(start)} ${start.time.slice(11, 16)}, times in ${zone}`),
    ...wrapped(`${aircraft.name}; medians of ${members} drawn cases, ${unitOf("c", style)}`, style.width),
    "",
    ...hourlyTable(simulation, style),
    "",
    ...chartLines({ course, from_h: 0, to_h: end, start: Date.parse(start.time) / 1000, zone, marks }, style),
    ...list(
      "What happens",
      happenings.map((h, i) => `${(i + 1) % 10} ${clock(h, start)} ${h.do.replace("_", " ")}: ${h.what}`),
      style,
    ),
    ...assumed(simulation.assumptions, style),
    ...list(
      "Doubtful input",
      simulation.warnings.map((w) => `${w.path}: expected ${w.expected}, received ${w.received}`),
      style,
    ),
    ...cared(simulation.cautions, style),
    "",
    ...wrapped(DEFERENCE, style.width),
  ];
}

/** Samples at most this many lines. */
const MOST_LINES = 25;

function hourlyTable({ course }: SimulationDocument, style: Style): string[] {
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
