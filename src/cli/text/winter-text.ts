import type { WinterRowDocument, WinterStudyDocument } from "../../index.js";
import type { Style } from "../style.js";
import {
  assumed,
  bareTemperature,
  cared,
  DEFERENCE,
  fact,
  list,
  percent,
  temperature,
  unitOf,
  wrapped,
} from "./words.js";

/** A winter for whoever buys the kit: the answer first, then every kit and habit, then what they hang on. */
export function winterText(study: WinterStudyDocument, style: Style): string[] {
  return [
    ...answers(study).flatMap((text) => wrapped(text, style.width).map((line) => style.colors.bold(line))),
    ...wrapped(occasion(study, style), style.width),
    "",
    ...mainTable(study, style),
    "",
    ...readyChart(study, style),
    "",
    ...whyLines(study, style),
    ...assumed(study.assumptions, style),
    ...list(
      "Doubtful input",
      study.warnings.map((w) => `${w.path}: expected ${w.expected}, received ${w.received}`),
      style,
    ),
    ...cared(study.cautions, style),
    "",
    ...wrapped(DEFERENCE, style.width),
  ];
}

function answers(study: WinterStudyDocument): string[] {
  const rows = study.rows.filter(({ refused }) => refused === "");
  const [first] = rows;
  if (first === undefined) return ["No habit can be had with any of these kits."];
  const readiest = rows.reduce((best, row) => {
    if (row.ready_mean !== best.ready_mean) return row.ready_mean > best.ready_mean ? row : best;
    return row.energy_kwh.p50 + row.fuel_kwh.p50 < best.energy_kwh.p50 + best.fuel_kwh.p50 ? row : best;
  });
  const told = (row: WinterRowDocument) =>
    `${nameOf(study, row)}: ready for ${percent(row.ready_mean)} of departures, ${kilowattHours(row)} kWh${costWords(study, row)}`;
  const lines = [`Readiest: ${told(readiest)}.`];
  const priced = rows.filter(({ winter_cost }) => winter_cost !== null);
  if (priced.length > 0) {
    const cheapest = priced.reduce((best, row) =>
      row.winter_cost!.p50 < best.winter_cost!.p50 ? row : best,
    );
    if (cheapest !== readiest) lines.push(`Cheapest winter: ${told(cheapest)}.`);
  }
  return lines;
}

function costWords({ currency }: WinterStudyDocument, { winter_cost }: WinterRowDocument): string {
  return winter_cost === null ? "" : `, ${winter_cost.p50.toFixed(0)} ${currency} a winter`.trimEnd();
}

function kilowattHours({ energy_kwh, fuel_kwh }: WinterRowDocument): string {
  const total = energy_kwh.p50 + fuel_kwh.p50;
  return total < 10 ? total.toFixed(1) : total.toFixed(0);
}

function nameOf({ kits, habits }: WinterStudyDocument, { kit, habit }: WinterRowDocument): string {
  return `${kits[kit]!.name}, ${habits[habit]!.label}`;
}

function occasion(study: WinterStudyDocument, style: Style): string {
  const { name, aircraft, winters, departures, members, hours, start, zone } = study;
  const coldest = Math.min(...winters.map(({ coldest_c }) => coldest_c));
  const mean = winters.reduce((sum, { mean_c }) => sum + mean_c, 0) / winters.length;
  const count = winters.length === 1 ? "one winter" : `${winters.length} winters`;
  return `${name} (${aircraft.name}): ${count} of ${Math.round(hours / 24)} days from ${start.time.slice(0, 10)}, ${departures} departures each, times in ${zone}; mean ${temperature(mean, style)}, coldest hour ${temperature(coldest, style)}. Bands: 5 to 95 % over winters and ${members} drawn aircraft.`;
}

const LABEL = 26;

function mainTable(study: WinterStudyDocument, style: Style): string[] {
  const { rows, kits, habits, currency } = study;
  const degrees = unitOf("c", style);
  const head = cells("kit, habit", [
    "ready",
    "hours",
    "kWh",
    currency === "" ? "cost" : currency,
    "wet h",
    `surf${degrees}`,
    `film${degrees}`,
  ]);
  const lines: string[] = [style.colors.bold(head)];
  kits.forEach((kit, k) => {
    const own = rows.filter((row) => row.kit === k);
    lines.push(`${kit.name}${kit.price === null ? "" : ` (${kit.price} ${currency})`}`.slice(0, style.width));
    for (const row of own) {
      const label = `  ${habits[row.habit]!.label}`;
      if (row.refused !== "") {
        lines.push(...wrapped(`not to be had: ${row.refused}`, style.width, label.padEnd(LABEL)));
        continue;
      }
      lines.push(
        cells(label, [
          shortPercent(row.ready_mean),
          row.heater_h.p50.toFixed(0),
          kilowattHours(row),
          row.winter_cost === null ? "-" : row.winter_cost.p50.toFixed(0),
          row.wet_h.p50.toFixed(0),
          row.hottest_surface_c === null ? "-" : bareTemperature(row.hottest_surface_c.p50, style),
          row.hottest_film_c === null ? "-" : bareTemperature(row.hottest_film_c.p50, style),
        ]),
      );
    }
  });
  return lines;
}

function cells(label: string, values: readonly string[]): string {
  return `${label.padEnd(LABEL)}${values.map((value) => value.padStart(7)).join("")}`.trimEnd();
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
    const label = `${shortened(study.kits[row.kit]!.name, 18)} ${shortened(study.habits[row.habit]!.label, 12)}`;
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
        first === undefined ? "nothing kept it" : `${first.title} kept it in ${percent(first.share)}`,
        ...(row.longest_on_h > LONG_ON ? [`on for up to ${row.longest_on_h.toFixed(0)} h in one go`] : []),
        ...(row.too_hot > 0 ? [`a ceiling broken in ${percent(row.too_hot)} of departures`] : []),
        ...(row.given_up > 0 ? [`${percent(row.given_up)} given up unheated`] : []),
        ...(row.heater_life_winters === null ? [] : [`rated hours last ${years(row.heater_life_winters)}`]),
        ...(row === reference ? ["the reference for payback"] : paybackWords(row)),
        ...(row.winter_cost === null
          ? []
          : [`${row.winter_cost.p05.toFixed(0)} to ${row.winter_cost.p95.toFixed(0)} ${currency}`.trimEnd()]),
      ];
      return wrapped(`${nameOf(study, row)}: ${facts.join("; ")}`, style.width, "- ");
    });
  return [
    style.colors.bold("Row by row"),
    ...lines,
    ...(reference === undefined ? [] : fact("Payback", `against ${nameOf(study, reference)}`, style)),
  ];
}

/** [h] beyond which a stretch on is worth telling. */
const LONG_ON = 24;

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
