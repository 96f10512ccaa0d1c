import {
  type CriterionDocument,
  type ExplanationDocument,
  type FlowsDocument,
  PART_NAMES,
} from "../../index.js";
import type { Style } from "../style.js";
import { criterionFigures, criterionParagraph } from "./criteria-text.js";
import { screen } from "./opening.js";
import { assumed, cared, clock, day, odds } from "./words.js";

/** Why a plan is what it is: the weakest checks first, then where the heat goes. */
export function explanationText(explanation: ExplanationDocument, style: Style): string[] {
  const { name, aircraft, departure, chance, weakest, zone } = explanation;
  const criteria = weakestFirst(explanation);
  const opening = {
    verdict: `${name}: ready at ${clock(departure, departure)} in ${odds(chance)} cases. Weakest point: ${style.say(criteria[0]?.title ?? weakest)}.`,
    about: `${aircraft.name}. ${day(departure)}, times in ${zone}.`,
    facts: [...weakFacts(criteria, style), ...heatFacts(explanation, style)],
    cautions: explanation.cautions,
  };
  return screen(opening, () => everything(explanation, criteria, style), style);
}

function everything(
  { weakest, heating, at_departure, assumptions, cautions }: ExplanationDocument,
  criteria: readonly CriterionDocument[],
  style: Style,
): string[] {
  return [
    ...criteria.flatMap((c) => [...criterionParagraph(c, c.id === weakest, style), ""]),
    ...(heating === null ? [] : flowLines("Where the heat goes just before unplugging", heating, style)),
    ...flowLines("Where the heat goes at the start", at_departure, style),
    ...assumed(assumptions, style),
    ...cared(cautions, style),
  ];
}

/** The plan's weakest point, then the others by how often they fail; advice and ceilings last. */
function weakestFirst({ criteria, weakest }: ExplanationDocument): CriterionDocument[] {
  const rank = ({ id, judged, advisory, chance }: CriterionDocument) =>
    id === weakest ? -1 : chance + (judged === "at-start" && !advisory ? 0 : 2);
  return [...criteria].sort((a, b) => rank(a) - rank(b));
}

/** Checks named on the first screen. */
const MOST_NAMED = 3;

function weakFacts(criteria: readonly CriterionDocument[], style: Style): [string, string][] {
  const told = criteria
    .filter(({ judged, advisory }) => judged === "at-start" && !advisory)
    .slice(0, MOST_NAMED);
  const [first] = told;
  const others = criteria.length - told.length;
  return [
    ...told.map((c, i): [string, string] => [
      i === 0 ? "Weakest" : i === 1 ? "Then" : "",
      `${style.say(c.title)}: ${criterionFigures(c, style)}`,
    ]),
    ...(first === undefined ? [] : [["Why", style.say(first.reason)] as [string, string]]),
    ...(others > 0 ? [["Others", `${others} more checks: --all`] as [string, string]] : []),
  ];
}

/** The strongest ways of the heat, while heating where there is any. */
function heatFacts({ heating, at_departure }: ExplanationDocument, style: Style): [string, string][] {
  const { at, heaters_w, flows } = heating ?? at_departure;
  const strongest = forward(flows).slice(0, 3);
  const ways = strongest.map(
    ({ from, to, heat_w }) => `${Math.round(heat_w)} W ${labelOf(from, style)} → ${labelOf(to, style)}`,
  );
  return [
    ["Heat", `at ${at.time.slice(11, 16)} ${Math.round(heaters_w)} W from heaters; ${ways.join(", ")}`],
  ];
}

/** Flows in the direction in which they go, the strongest first. */
function forward(flows: FlowsDocument["flows"]): FlowsDocument["flows"][number][] {
  return flows
    .map(({ from, to, heat_w }) =>
      heat_w < 0 ? { from: to, to: from, heat_w: -heat_w } : { from, to, heat_w },
    )
    .sort((a, b) => b.heat_w - a.heat_w);
}

/** [W] flows below this are left out of the text. */
const SMALLEST = 1;

function flowLines(heading: string, { at, heaters_w, flows, stored }: FlowsDocument, style: Style): string[] {
  const shown = forward(flows).filter(({ heat_w }) => heat_w >= SMALLEST);
  const watts = (w: number) => `${Math.round(w)} W`.padStart(8);
  const warming = stored.filter((s) => s.heat_w > 0).reduce((sum, s) => sum + s.heat_w, 0);
  const cooling = stored.filter((s) => s.heat_w < 0).reduce((sum, s) => sum - s.heat_w, 0);
  return [
    style.colors.bold(`${heading} (${at.time.slice(11, 16)}, mean of all cases)`),
    `${watts(heaters_w)}  from heaters`,
    `${watts(cooling)}  from parts that cool`,
    `${watts(warming)}  into parts that warm`,
    ...shown.map(
      ({ from, to, heat_w }) => `${watts(heat_w)}  ${labelOf(from, style)} → ${labelOf(to, style)}`,
    ),
    "",
  ];
}

const PLACES: Readonly<Record<string, string>> = {
  outside_air: "outside air",
  cowl_surroundings: "air, sky and ground around the cowl",
  supply_air: "hot air of the duct",
};

function labelOf(name: string, style: Style): string {
  if (name.startsWith("heater:")) return name.split(":").slice(1).join(", ");
  const part = PART_NAMES.find((known) => known === name);
  return part === undefined ? (PLACES[name] ?? name) : style.say({ code: "part", values: { name: part } });
}
