import type { StampDocument, ThawOutlookDocument } from "../../index.js";
import type { Style } from "../style.js";
import {
  type Column,
  closing,
  countedPercent,
  hourlyRows,
  mass,
  massValue,
  tenths,
} from "./airframe-text.js";
import { rollOutFacts, rollOutLine } from "./roll-out-text.js";
import { clock, day, fact, inUnits, percent, span, unitOf, wrapped } from "./words.js";

type Times = ThawOutlookDocument["all_dry"];
type Dry = ThawOutlookDocument["trials"]["as_is"];

/** When it may leave, for a pilot: the answer first, then the roll-out, what would help, and the stay by the hour. */
export function thawText(outlook: ThawOutlookDocument, style: Style): string[] {
  const { name, panel, start, zone, members, snow_kg_per_m2, roll_out } = outlook;
  const load = snow_kg_per_m2 > 0 ? `with ${mass(snow_kg_per_m2)} of snow or ice` : "without snow";
  return [
    ...[answer(outlook), ...(roll_out === null ? [] : [rollOutLine(roll_out, start)])].flatMap((line) =>
      wrapped(line, style.width).map((text) => style.colors.bold(text)),
    ),
    ...wrapped(
      `${name}, ${panel}, in at ${clock(start, start)} on ${day(start)} ${load}, times in ${zone}. Over ${members} drawn cases.`,
      style.width,
    ),
    "",
    ...timesTable(outlook, style),
    "",
    ...helpFacts(outlook, style),
    ...hangarFacts(outlook, style),
    ...(roll_out === null ? [] : rollOutFacts(roll_out, start, style)),
    "",
    ...stayTable(outlook, style),
    ...closing(outlook, style),
  ];
}

/** The first line: the earliest it may leave, dry on the skin and in the gaps. */
function answer({ all_dry, start, horizon_h, members }: ThawOutlookDocument): string {
  const { p50, p95, share } = all_dry;
  const at = (stamp: StampDocument) => clock(stamp, start);
  if (p95 !== null) {
    const half = p50 === null ? "" : ` (half of cases by ${at(p50)})`;
    return `Clear and dry by ${at(p95)} with 95 % chance${half}: then it may leave.`;
  }
  const within = span(horizon_h);
  if (p50 !== null) {
    return `Not surely dry within ${within}: half of cases by ${at(p50)}, ${percent(share)} by the end.`;
  }
  return `Not dry within ${within}: ${countedPercent(share, members)} of cases are by then.`;
}

function timesTable(outlook: ThawOutlookDocument, style: Style): string[] {
  const { skin_clear, skin_dry, gaps_thawed, gaps_dry, all_dry, start, horizon_h, members } = outlook;
  const cell = (stamp: StampDocument | null) =>
    (stamp === null ? "not yet" : clock(stamp, start)).padStart(12);
  const row = (label: string, { p05, p50, p95, share }: Times) =>
    `${label.padEnd(LABEL)}${cell(p05)}${cell(p50)}${cell(p95)}${countedPercent(share, members).padStart(16)}`;
  const heading = `${"".padEnd(LABEL)}${"5 % by".padStart(12)}${"half by".padStart(12)}${"95 % by".padStart(12)}${`within ${span(horizon_h)}`.padStart(16)}`;
  return [
    style.colors.bold(heading),
    row("skin clear", skin_clear),
    row("skin dry", skin_dry),
    row("gaps thawed", gaps_thawed),
    row("gaps dry", gaps_dry),
    row("all dry", all_dry),
  ];
}

const LABEL = 14;

/** [h] less is no help worth naming. */
const WORTH = 0.25;

/** What would help, from trial runs of the middle case, the quickest first. */
function helpFacts({ trials, horizon_h }: ThawOutlookDocument, style: Style): string[] {
  const { as_is, changes } = trials;
  const never = Number.POSITIVE_INFINITY;
  const sorted = [...changes].sort((a, b) => (a.all_dry_h ?? never) - (b.all_dry_h ?? never));
  const entries = sorted.flatMap(({ text, ...dry }) => {
    const gain = gainText(as_is, dry, horizon_h);
    return gain === undefined ? [] : [`${inUnits(text, style)}: ${gain}`];
  });
  const base = `middle case as it is: ${dryText(as_is, horizon_h)}`;
  if (entries.length === 0) return fact("Would help", `nothing that was tried (${base})`, style);
  return [...fact("Would help", base, style), ...entries.flatMap((entry) => fact("", entry, style))];
}

function dryText({ skin_dry_h, gaps_dry_h }: Dry, horizon: number): string {
  const after = (hours: number | null) =>
    hours === null ? `not within ${span(horizon)}` : `after ${span(hours)}`;
  return `skin dry ${after(skin_dry_h)}, gaps ${after(gaps_dry_h)}`;
}

function gainText(before: Dry, after: Dry, horizon: number): string | undefined {
  const gain = (key: keyof Dry) => (before[key] ?? horizon) - (after[key] ?? horizon);
  if (after.all_dry_h !== null && gain("all_dry_h") >= WORTH) {
    const sooner =
      before.all_dry_h === null
        ? `instead of not within ${span(horizon)}`
        : `${span(gain("all_dry_h"))} sooner`;
    return `all dry after ${span(after.all_dry_h)}, ${sooner}`;
  }
  if (gain("skin_dry_h") >= WORTH) return `skin dry ${span(gain("skin_dry_h"))} sooner, but the gaps decide`;
  if (gain("gaps_dry_h") >= WORTH) return `gaps dry ${span(gain("gaps_dry_h"))} sooner, but the skin decides`;
  return undefined;
}

function hangarFacts(outlook: ThawOutlookDocument, style: Style): string[] {
  const { highest_humidity_percent: humid, heater_kwh: heat, floor_water_kg: water, condensed_kg } = outlook;
  const range = ({ p05, p95 }: typeof humid, digits: number) =>
    `(${p05.toFixed(digits)} to ${p95.toFixed(digits)})`;
  const sweat =
    condensed_kg.p95 >= 0.5 ? `; up to ${condensed_kg.p95.toFixed(0)} kg condenses on the building` : "";
  return [
    ...fact("Humidity", `at most ${humid.p50.toFixed(0)} % ${range(humid, 0)}${sweat}`, style),
    ...fact("Heat", `${heat.p50.toFixed(0)} kWh ${range(heat, 0)} within ${span(outlook.horizon_h)}`, style),
    ...fact("Water", `${water.p50.toFixed(0)} kg ${range(water, 0)} on the floor`, style),
  ];
}

function stayTable({ course, start, zone }: ThawOutlookDocument, style: Style): string[] {
  const celsius = (heading: string, { p50 }: { p50: readonly number[] }): Column => ({
    heading,
    width: 10,
    cells: p50.map((value) => tenths(value, style)),
  });
  const kilograms = (heading: string, values: readonly number[]): Column => ({
    heading,
    width: 9,
    cells: values.map(massValue),
  });
  const wetter = course.upper_water_kg_per_m2.p50.map((up, s) =>
    Math.max(up, course.lower_water_kg_per_m2.p50[s]),
  );
  const inGap = course.gap_ice_kg_per_m2.p50.map((ice, s) => ice + course.gap_water_kg_per_m2.p50[s]);
  const columns = [
    celsius("hangar", course.hangar_c),
    { heading: "humid.", width: 8, cells: course.humidity_percent.p50.map((rh) => `${rh.toFixed(0)} %`) },
    celsius("skin", course.skin_c),
    celsius("fittings", course.fittings_c),
    kilograms("snow", course.snow_kg_per_m2.p50),
    kilograms("film", wetter),
    kilograms("in gaps", inGap),
  ];
  return [
    `Medians in ${unitOf("c", style)} and kg/m² (of mouth for the gaps)`,
    ...hourlyRows(course.time_h, start, zone, columns, style),
  ];
}
