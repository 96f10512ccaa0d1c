import type { CriterionDocument } from "../../index.js";
import { fitting, type Style } from "../style.js";
import { bareOfHundred, bareValue, marginUnit, ofHundred, unitOf, wrapped } from "./words.js";

const TITLE_WIDTH = 33;

/** One line a criterion: whether it is OK, its median and band, its limit, in how many of 100 cases it is OK. */
export function criteriaTable(
  criteria: readonly CriterionDocument[],
  wanted: number,
  style: Style,
): string[] {
  const heading = (title: string) =>
    style.colors.bold(
      `   ${title.padEnd(TITLE_WIDTH)}${"middle".padStart(7)}${"9 in 10".padStart(12)}${"limit".padStart(12)}${"OK of 100".padStart(11)}`,
    );
  const lines = (aim: CriterionDocument["aim"]) =>
    criteria.filter((c) => c.aim === aim).map((c) => criterionLine(c, wanted, style));
  const warm = lines("warm-through");
  return [
    heading("Needed to start"),
    ...lines("least"),
    ...(warm.length === 0 ? [] : [heading("Warm through"), ...warm]),
  ];
}

function criterionLine(criterion: CriterionDocument, wanted: number, style: Style): string {
  const { unit, value, limit, chance, direction } = criterion;
  const shown = (x: number) => bareValue(x, unit, style);
  const sign = direction === "at-least" ? "≥" : "≤";
  const cells = [
    rowTitle(criterion, style).padEnd(TITLE_WIDTH),
    shown(value.p50).padStart(7),
    `${shown(value.p05)}..${shown(value.p95)}`.padStart(12),
    fitting(`${sign} ${shown(limit)} ${unitOf(unit, style)}`.trimEnd(), style).padStart(12),
    bareOfHundred(chance).padStart(11),
  ];
  return `${markOf(criterion, wanted, style)} ${cells.join("")}`;
}

/** Short enough for the table: of a heater's surface, the element and the heater's id. */
function rowTitle({ id, title }: CriterionDocument, { say }: Style): string {
  const [kind, heater, element] = id.split(":");
  const name = kind === "surface" ? `surface ${element}, ${heater}` : say(title);
  return name.length < TITLE_WIDTH ? name : `${name.slice(0, TITLE_WIDTH - 3)}..`;
}

/** "ok", "!!" where it fails too often, "! " where that is advice only; never by colour alone. */
function markOf(
  { chance, judged, margin, advisory }: CriterionDocument,
  wanted: number,
  { colors }: Style,
): string {
  const holds = judged === "at-start" ? chance >= wanted : margin.p50 >= 0;
  if (holds) return colors.green("ok");
  return advisory ? colors.yellow("! ") : colors.red("!!");
}

/** What a criterion comes to, in one line. */
export function criterionFigures(criterion: CriterionDocument, style: Style): string {
  const { unit, value, margin, limit, chance, direction, judged, advisory } = criterion;
  const shown = (x: number) => bareValue(x, unit, style);
  const apart = marginUnit(unit);
  const off = style.values.measure({ value: Math.abs(margin.p50), unit: apart });
  const units = unitOf(unit, style);
  const sign = direction === "at-least" ? "at least" : "at most";
  const when = judged === "at-start" ? "" : " while heating";
  const band = `${shown(value.p50)} ${units}${when} (9 in 10: ${shown(value.p05)} to ${shown(value.p95)})`;
  const spare = margin.p50 < 0 ? `${off} short` : `${off} to spare`;
  const role = advisory ? "; for information only" : "";
  return `${band}; ${sign} ${style.values.measure({ value: limit, unit: unit })}: ${spare}; OK in ${ofHundred(chance)}${role}`;
}

/** A criterion with its reason and source. */
export function criterionParagraph(criterion: CriterionDocument, weakest: boolean, style: Style): string[] {
  const { reason, source } = criterion;
  const title = style.say(criterion.title);
  return [
    style.colors.bold(weakest ? `Weakest point: ${title}` : title),
    ...wrapped(criterionFigures(criterion, style), style.width, "  "),
    ...wrapped(`Why: ${style.say(reason)}`, style.width, "  "),
    ...wrapped(`Source: ${typeof source === "string" ? source : style.say(source)}`, style.width, "  "),
  ];
}
