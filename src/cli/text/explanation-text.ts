import { type ExplanationDocument, type FlowsDocument, PART_LABELS } from "../../index.js";
import type { Style } from "../style.js";
import { criterionParagraph } from "./criteria-text.js";
import { assumed, cared, clock, DEFERENCE, day, odds, wrapped } from "./words.js";

/** Why a plan is what it is. */
export function explanationText(explanation: ExplanationDocument, style: Style): string[] {
  const { name, departure, chance, criteria, weakest, heating, at_departure, zone } = explanation;
  const bound = criteria.find((c) => c.id === weakest);
  return [
    style.colors.bold(
      `${name}: start at ${clock(departure, departure)}, chance ${odds(chance)}; weakest point: ${bound?.title ?? weakest}.`,
    ),
    `${day(departure)}, times in ${zone}`,
    "",
    ...criteria.flatMap((c) => [...criterionParagraph(c, c.id === weakest, style), ""]),
    ...(heating === null ? [] : flowLines("Where the heat goes just before unplugging", heating, style)),
    ...flowLines("Where the heat goes at the start", at_departure, style),
    ...assumed(explanation.assumptions, style),
    ...cared(explanation.cautions, style),
    "",
    ...wrapped(DEFERENCE, style.width),
  ];
}

/** [W] flows below this are left out of the text. */
const SMALLEST = 1;

function flowLines(heading: string, { at, heaters_w, flows, stored }: FlowsDocument, style: Style): string[] {
  const shown = flows
    .map(({ from, to, heat_w }) =>
      heat_w < 0 ? { from: to, to: from, heat_w: -heat_w } : { from, to, heat_w },
    )
    .filter(({ heat_w }) => heat_w >= SMALLEST)
    .sort((a, b) => b.heat_w - a.heat_w);
  const watts = (w: number) => `${Math.round(w)} W`.padStart(8);
  const warming = stored.filter((s) => s.heat_w > 0).reduce((sum, s) => sum + s.heat_w, 0);
  const cooling = stored.filter((s) => s.heat_w < 0).reduce((sum, s) => sum - s.heat_w, 0);
  return [
    style.colors.bold(`${heading} (${at.time.slice(11, 16)}, means of all cases)`),
    `${watts(heaters_w)}  from heaters`,
    `${watts(cooling)}  from parts that cool`,
    `${watts(warming)}  into parts that warm`,
    ...shown.map(({ from, to, heat_w }) => `${watts(heat_w)}  ${labelOf(from)} → ${labelOf(to)}`),
    "",
  ];
}

const PLACES: Readonly<Record<string, string>> = {
  outside_air: "outside air",
  cowl_surroundings: "air, sky and ground around the cowl",
  supply_air: "hot air of the duct",
};

function labelOf(name: string): string {
  if (name.startsWith("heater:")) return name.split(":").slice(1).join(", ");
  return PLACES[name] ?? (PART_LABELS as Readonly<Record<string, string>>)[name] ?? name;
}
