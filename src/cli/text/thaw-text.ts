import { thawScreen, triedLine } from "../../first-screen/index.js";
import { type StampDocument, type ThawOutlookDocument, thawRemedies } from "../../index.js";
import { type Style, speakingOn } from "../style.js";
import { type Column, hourlyRows, mass, massValue, tenths } from "./airframe-text.js";
import { openingOf, screen } from "./opening.js";
import { rollOutFacts } from "./roll-out-text.js";
import { clock, closing, day, fact, needed, span, unitOf, wrapped } from "./words.js";

type Times = ThawOutlookDocument["gaps_dry"];

/** When it may leave, for a pilot: the first screen; behind it times, everything tried, the roll-out and the stay by the hour. */
export function thawText(outlook: ThawOutlookDocument, style: Style): string[] {
  const { name, panel, start, zone, members, snow_kg_per_m2 } = outlook;
  const load = snow_kg_per_m2 > 0 ? `with ${mass(snow_kg_per_m2)} of snow or ice` : "without snow";
  const about = `${name}, ${panel}, in at ${clock(start, start)} on ${day(start)} ${load}; times in ${zone}, chances over ${members} cases.`;
  return screen(openingOf(thawScreen(outlook), about, start, style), () => whole(outlook, style), style);
}

function whole(outlook: ThawOutlookDocument, style: Style): string[] {
  const { roll_out, start } = outlook;
  return [
    ...timesTable(outlook, style),
    "",
    ...triedFacts(outlook, style),
    ...hangarFacts(outlook, style),
    ...(roll_out === null ? [] : rollOutFacts(roll_out, start, style)),
    "",
    ...stayTable(outlook, style),
    ...closing(outlook, style),
  ];
}

function timesTable(outlook: ThawOutlookDocument, style: Style): string[] {
  const { skin_clear, skin_dry, gaps_thawed, gaps_dry, start, horizon_h, members } = outlook;
  const cell = (stamp: StampDocument | null) =>
    (stamp === null ? "not yet" : clock(stamp, start)).padStart(12);
  const row = (label: string, { p05, p50, p95, share }: Times) =>
    `${label.padEnd(LABEL)}${cell(p05)}${cell(p50)}${cell(p95)}${style.values.counted({ share, members }).padStart(16)}`;
  const heading = `${"".padEnd(LABEL)}${"1 in 20 by".padStart(12)}${"half by".padStart(12)}${"19 in 20 by".padStart(12)}${`within ${span(horizon_h)}`.padStart(16)}`;
  return [
    style.colors.bold(heading),
    row("skin clear", skin_clear),
    row("skin dry", skin_dry),
    row("gaps thawed", gaps_thawed),
    row("gaps dry", gaps_dry),
  ];
}

const LABEL = 14;

/** All that was tried, with its chance of being dry by when it is wanted, and when half and 19 in 20 cases are. */
function triedFacts(outlook: ThawOutlookDocument, style: Style): string[] {
  const { trials, start } = outlook;
  const { as_is, by, members, longest_h } = trials;
  const after = (hours: number | null) => (hours === null ? `not within ${span(longest_h)}` : needed(hours));
  const told = ({ gaps_dry_h, gaps_dry_surely_h }: typeof as_is) =>
    `dry after ${after(gaps_dry_h)} in half of the cases, ${after(gaps_dry_surely_h)} in 19 in 20`;
  const remedies = thawRemedies(outlook);
  const entries = remedies.map((remedy) => {
    const line = speakingOn(start, style)(triedLine(remedy, outlook));
    return remedy.kind === "change" ? `${line}; ${told(remedy.change)}` : line;
  });
  const none = remedies.some(({ helps }) => helps) ? [] : ["Nothing that was tried would help."];
  return [
    style.colors.bold(`Tried: chance of being dry by ${clock(by, start)}, over ${members} cases`),
    ...wrapped(
      `as it is: ${style.values.counted({ share: as_is.chance, members })}; ${told(as_is)}`,
      style.width,
      "- ",
    ),
    ...entries.flatMap((entry) => wrapped(entry, style.width, "- ")),
    ...none,
    "",
  ];
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
