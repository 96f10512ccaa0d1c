import type { WinterRowDocument, WinterStudyDocument } from "../index.js";
import { english } from "../words/index.js";

interface Column {
  readonly name: string;
  readonly value: (row: WinterRowDocument, study: WinterStudyDocument) => string | number | null;
}

const BANDS = [
  ["ready_rate", "ready_rate"],
  ["warm_rate", "warm_rate"],
  ["heater_h", "heater_h"],
  ["energy_kwh", "energy_kwh"],
  ["fuel_kwh", "fuel_kwh"],
  ["attended_h", "attended_h"],
  ["attended_money", "attended_money"],
  ["energy_money", "energy_money"],
  ["winter_cost", "winter_cost"],
  ["wet_h", "wet_h"],
  ["frost_h", "frost_h"],
  ["hottest_surface_c", "hottest_surface_c"],
  ["hottest_film_c", "hottest_film_c"],
  ["payback_winters", "payback_winters"],
] as const satisfies readonly (readonly [string, keyof WinterRowDocument])[];

const COLUMNS: readonly Column[] = [
  { name: "kit", value: ({ kit }, { kits }) => kits[kit]!.name },
  { name: "switching", value: ({ kit }, { kits }) => kits[kit]!.switching },
  { name: "habit", value: ({ habit }, { habits }) => english(habits[habit]!.label) },
  { name: "refused", value: ({ refused }) => english(refused) },
  { name: "not_advised", value: ({ not_advised }) => not_advised.map(({ rule }) => rule).join(" ") },
  { name: "ready_mean", value: ({ refused, ready_mean }) => (refused === "" ? ready_mean : null) },
  ...BANDS.flatMap(([name, key]): Column[] =>
    (["p05", "p50", "p95"] as const).map((p) => ({
      name: `${name}_${p}`,
      value: (row) => (row.refused === "" ? (row[key]?.[p] ?? null) : null),
    })),
  ),
  { name: "longest_on_h", value: ({ longest_on_h }) => longest_on_h },
  { name: "too_hot", value: ({ too_hot }) => too_hot },
  { name: "given_up", value: ({ given_up }) => given_up },
  { name: "heater_life_winters", value: ({ heater_life_winters }) => heater_life_winters },
  { name: "weakest", value: ({ weakest }) => (weakest[0] === undefined ? "" : english(weakest[0].title)) },
];

/** The rows of a study as CSV (RFC 4180), an empty cell where there is no number. */
export function winterCsv(study: WinterStudyDocument): string {
  const lines = study.rows.map((row) => COLUMNS.map(({ value }) => cell(value(row, study))).join(","));
  return `${[COLUMNS.map(({ name }) => name).join(","), ...lines].join("\r\n")}\r\n`;
}

function cell(value: string | number | null): string {
  const text = value === null ? "" : String(value);
  // A spreadsheet would take such a text for a formula.
  const safe = typeof value === "string" && /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
