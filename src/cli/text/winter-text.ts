import { wetHours, winterScreen } from "../../first-screen/index.js";
import type { WinterRowDocument, WinterStudyDocument } from "../../index.js";
import type { Style } from "../style.js";
import { openingOf, screen } from "./opening.js";
import { bareTemperature, closing, fact, odds, percent, unitOf, wrapped } from "./words.js";

/** A winter for whoever buys the kit: the answer first, behind it every kit and habit, and what they hang on. */
export function winterText(study: WinterStudyDocument, style: Style): string[] {
  const { name, aircraft, winters, departures, start } = study;
  const coldest = Math.min(...winters.map(({ coldest_c }) => coldest_c));
  const count = winters.length === 1 ? "one winter" : `${winters.length} winters`;
  const about = `${name}, ${aircraft.name.split(",")[0]}: ${count} of ${departures} departures, coldest hour ${style.values.temp(coldest)}`;
  return screen(
    openingOf(winterScreen(study), about, start, style),
    () => winterDetails(study, style),
    style,
  );
}

function winterDetails(study: WinterStudyDocument, style: Style): string[] {
  return [
    ...wrapped(occasion(study, style), style.width),
    "",
    ...mainTable(study, style),
    "",
    ...engineTable(study, style),
    "",
    ...readyChart(study, style),
    "",
    ...whyLines(study, style),
    ...closing(study, style),
  ];
}

function occasion(study: WinterStudyDocument, style: Style): string {
  const { winters, members, hours, start, zone } = study;
  const mean = winters.reduce((sum, { mean_c }) => sum + mean_c, 0) / winters.length;
  return `${Math.round(hours / 24)} days from ${start.time.slice(0, 10)}, times in ${zone}, mean ${style.values.temp(mean)}. Bands: 5 to 95 % over winters and ${members} drawn aircraft.`;
}

function nameOf(
  { kits, habits }: WinterStudyDocument,
  { kit, habit }: WinterRowDocument,
  { say }: Style,
): string {
  return `${kits[kit]!.name}, ${say(habits[habit]!.label)}`;
}

/** [characters] */
const LABEL = 24;
const WIDTH = 8;

type Value = (row: WinterRowDocument) => string;
type Column = readonly [head: string, value: Value];

/** Every kit and habit with a number a column. */
function table(study: WinterStudyDocument, columns: readonly Column[], style: Style): string[] {
  const { rows, kits, habits, currency } = study;
  const head = cells(
    "kit, habit",
    columns.map(([title]) => title),
  );
  return [
    style.colors.bold(head),
    ...kits.flatMap((kit, k) => [
      `${kit.name}${kit.price === null ? "" : ` (${kit.price} ${currency})`}`.slice(0, style.width),
      ...rows
        .filter((row) => row.kit === k)
        .flatMap((row) => {
          const label = `  ${style.say(habits[row.habit]!.label)}${row.not_advised.length > 0 ? " (!)" : ""}`;
          if (row.refused !== "")
            return wrapped(`not possible: ${style.say(row.refused)}`, style.width, label.padEnd(LABEL));
          return [
            cells(
              label,
              columns.map(([, value]) => value(row)),
            ),
          ];
        }),
    ]),
  ];
}

function mainTable(study: WinterStudyDocument, style: Style): string[] {
  const money = study.currency === "" ? "cost" : study.currency;
  const columns: Column[] = [
    ["ready", (row) => shortPercent(row.ready_mean)],
    ["warm", (row) => shortPercent(row.warm_mean)],
    ["on h", (row) => row.heater_h.p50.toFixed(0)],
    ["kWh", ({ energy_kwh, fuel_kwh }) => style.values.brief(energy_kwh.p50 + fuel_kwh.p50)],
    ["time h", (row) => row.attended_h.p50.toFixed(0)],
    ["time", (row) => row.attended_money.p50.toFixed(0)],
    [money, (row) => (row.winter_cost === null ? "-" : row.winter_cost.p50.toFixed(0))],
  ];
  return [
    ...table(study, columns, style),
    ...wrapped(
      `(!) compared, not advised. Time: somebody standing by or plugging in, in hours and in ${money}; it is in the last column too.`,
      style.width,
    ),
  ];
}

/** What the habits do to the engine. */
function engineTable(study: WinterStudyDocument, style: Style): string[] {
  const degrees = unitOf("c", style);
  const shown = (value: WinterRowDocument["hottest_film_c"]) =>
    value === null ? "-" : bareTemperature(value.p50, style);
  return table(
    study,
    [
      ["wet h", (row) => wetHours(row).toFixed(0)],
      ["frost h", (row) => row.frost_h.p50.toFixed(0)],
      ["in one", (row) => row.longest_on_h.toFixed(0)],
      [`surf${degrees}`, (row) => shown(row.hottest_surface_c)],
      [`film${degrees}`, (row) => shown(row.hottest_film_c)],
      ["too hot", (row) => (row.too_hot === 0 ? "-" : shortPercent(row.too_hot))],
    ],
    style,
  );
}

function cells(label: string, values: readonly string[]): string {
  return `${label.padEnd(LABEL)}${values.map((value) => value.padStart(WIDTH)).join("")}`.trimEnd();
}

/** For columns: "97%", ">99%". */
function shortPercent(share: number): string {
  return percent(share).replace("over", ">").replace("under", "<").replace(/\s/g, "");
}

/** [characters] of a bar. */
const BAR = 40;

/** How often ready: a bar to the mean, its band shaded. */
function readyChart(study: WinterStudyDocument, style: Style): string[] {
  const [full, shade] = style.unicode ? ["█", "░"] : ["#", ":"];
  const rows = study.rows.filter(({ refused }) => refused === "");
  const lines = rows.map((row) => {
    const { p05, p95 } = row.ready_rate;
    const low = Math.round(p05 * BAR);
    const high = Math.max(low, Math.round(p95 * BAR));
    const bar = full.repeat(low) + shade.repeat(high - low);
    const label = `${shortened(study.kits[row.kit]!.name, 18)} ${shortened(style.say(study.habits[row.habit]!.label), 12)}`;
    return `${label.padEnd(32)}${bar.padEnd(BAR)} ${shortPercent(row.ready_mean)}`;
  });
  return [
    `${style.colors.bold("Departures ready")}, ${shade} 5 to 95 % of winters and aircraft`,
    ...lines,
    `${" ".repeat(32)}0 %${" ".repeat(BAR - 8)}100 %`,
  ];
}

function shortened(text: string, length: number): string {
  return text.length <= length ? text.padEnd(length) : `${text.slice(0, length - 1)}.`;
}

/** What kept it from being ready, how long the heater lasts, when the price comes back. */
function whyLines(study: WinterStudyDocument, style: Style): string[] {
  const { rows, currency, against } = study;
  const reference = rows.find(({ kit, habit }) => kit === against.kit && habit === against.habit);
  const lines = rows
    .filter(({ refused }) => refused === "")
    .flatMap((row) => {
      const [first] = row.weakest;
      const facts = [
        first === undefined
          ? "nothing was too cold"
          : `weakest point ${style.say(first.title)}, in ${odds(first.share)} departures`,
        ...row.not_advised.map(({ text }) => `not advised: ${style.say(text).replace(/\.$/, "")}`),
        ...(row.too_hot > 0 ? [`too hot in ${odds(row.too_hot)} departures`] : []),
        ...(row.given_up > 0 ? [`${odds(row.given_up)} given up unheated`] : []),
        ...(row.heater_life_winters === null ? [] : [`rated hours last ${years(row.heater_life_winters)}`]),
        ...(row === reference ? ["the reference for payback"] : paybackWords(row)),
        ...(row.winter_cost === null
          ? []
          : [`${row.winter_cost.p05.toFixed(0)} to ${row.winter_cost.p95.toFixed(0)} ${currency}`.trimEnd()]),
      ];
      return wrapped(`${nameOf(study, row, style)}: ${facts.join("; ")}`, style.width, "- ");
    });
  return [
    style.colors.bold("Row by row"),
    ...lines,
    ...(reference === undefined ? [] : fact("Payback", `against ${nameOf(study, reference, style)}`, style)),
  ];
}

const years = (winters: number) =>
  winters >= 1.5 ? `${winters.toFixed(0)} winters` : `${winters.toFixed(1)} winters`;

function paybackWords({ payback_winters }: WinterRowDocument): string[] {
  if (payback_winters === null) return [];
  const { p05, p50, p95 } = payback_winters;
  if (p50 === null)
    return [p05 === null ? "never pays back" : `pays back after ${p05.toFixed(1)} winters at best`];
  if (p50 === 0) return ["no dearer, costs no more"];
  return [
    `pays back in ${p50.toFixed(1)} winters (${p05?.toFixed(1)} to ${p95 === null ? "never" : p95.toFixed(1)})`,
  ];
}
