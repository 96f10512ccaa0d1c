import { kitScreen } from "../../first-screen/index.js";
import type { KitComparisonDocument } from "../../index.js";
import type { Style } from "../style.js";
import { openingOf, screen } from "./opening.js";
import {
  bareTemperature,
  bareWind,
  basisText,
  clock,
  closing,
  odds,
  percent,
  span,
  unitOf,
  windUnit,
  wrapped,
} from "./words.js";

type KitEntry = KitComparisonDocument["kits"][number];

/** Kits side by side: which for what first; behind it tonight, the leads in cold cases, each kit's own numbers. */
export function kitText(comparison: KitComparisonDocument, style: Style): string[] {
  const { name, aircraft, kits, wanted_chance } = comparison;
  const first = kits.find(({ cases }) => cases.length > 0);
  const night = kits.find(({ tonight }) => tonight !== null)?.tonight?.departure ?? NO_NIGHT;
  const about = `${name}, ${aircraft.name.split(",")[0]}: ${kits.length} kits, ${first?.cases.length ?? 0} cold cases from cold-soaked, ${odds(wanted_chance)} wanted`;
  return screen(
    openingOf(kitScreen(comparison), about, night, style),
    () => kitDetails(comparison, style),
    style,
  );
}

/** Of a comparison that speaks of no moment. */
const NO_NIGHT = { at_h: 0, time: "" };

function kitDetails(comparison: KitComparisonDocument, style: Style): string[] {
  const { kits, members } = comparison;
  return [
    `${members} drawn aircraft in the cold cases.`,
    ...tonightLines(kits, style),
    "",
    ...leadTable(comparison, style),
    "",
    ...kits.flatMap((kit, k) => kitLines(kit, k, comparison, style)),
    ...closing(comparison, style),
  ];
}

function tonightLines(kits: readonly KitEntry[], style: Style): string[] {
  if (kits.every(({ tonight }) => tonight === null)) return [];
  const rows = kits.flatMap(({ name, tonight }) => {
    if (tonight === null) return [];
    const { plug_in, unplug, departure, chance, energy_kwh, toll, weakest } = tonight;
    const status: string = tonight.status;
    const mark =
      status === "ready" || status === "not-required" ? style.colors.green("ok") : style.colors.red("!!");
    const cells = [
      name.slice(0, 21).padEnd(22),
      (plug_in === null ? "none" : clock(plug_in, departure)).padEnd(10),
      (plug_in === null ? "" : clock(unplug, departure)).padEnd(7),
      percent(chance).padEnd(10),
      energy_kwh.p50.toFixed(1).padStart(5),
      (toll?.planned.hottest_surface_c == null
        ? "-"
        : bareTemperature(toll.planned.hottest_surface_c, style)
      ).padStart(6),
      (toll === null ? "-" : toll.planned.wet_h.toFixed(1)).padStart(7),
      `  ${weakest}`,
    ];
    return [`${mark} ${cells.join("")}`.trimEnd().slice(0, style.width + (mark.length - 2))];
  });
  return [
    "",
    style.colors.bold("Tonight"),
    `   ${"kit".padEnd(22)}${"plug in".padEnd(10)}${"off".padEnd(7)}${"chance".padEnd(10)}  kWh  surf  wet h  weakest`,
    ...rows,
  ];
}

/** Leads of all kits over the cases; a chance in brackets where none is long enough. */
function leadTable({ kits }: KitComparisonDocument, style: Style): string[] {
  const cases = kits.find((kit) => kit.cases.length > 0)?.cases ?? [];
  const blocks: string[] = [];
  for (let from = 0; from < kits.length; from += ABREAST) {
    const some = kits.slice(from, from + ABREAST);
    const row = (label: string, cells: readonly string[]) =>
      `${label.padEnd(18)}${cells.map((cell) => cell.padStart(10)).join("")}`;
    blocks.push(
      style.colors.bold(
        row(
          `air ${unitOf("c", style)}, wind ${windUnit(style)}`,
          some.map((_, i) => `kit ${from + i + 1}`),
        ),
      ),
      ...cases.map(({ air_c, wind_mps }, c) =>
        row(
          `${bareTemperature(air_c, style)}, ${wind_mps === 0 ? "calm" : bareWind(wind_mps, style)}`,
          some.map((kit) => leadCell(kit.cases[c])),
        ),
      ),
    );
  }
  return [
    style.colors.bold("Hours from plug-in to start, from cold-soaked"),
    ...wrapped(
      "w: warm through; l: the least that the maker asks; none: not required; in brackets the best chance where nothing is enough; -: may not be used",
      style.width,
    ),
    ...blocks,
  ];
}

/** Kits side by side in a table. */
const ABREAST = 6;

function leadCell(one: KitEntry["cases"][number] | undefined): string {
  if (one === undefined) return "-";
  const { status, aim, lead_h, chance } = one;
  if (status === "not-reached") return `(${Math.round(100 * chance)} %)`;
  return lead_h === null ? "none" : `${lead_h.toFixed(2)} ${aim === "least" ? "l" : "w"}`;
}

function kitLines(kit: KitEntry, k: number, { currency }: KitComparisonDocument, style: Style): string[] {
  const heaters = kit.heaters.map(({ name, basis }) => `${name} (${basisText(basis, style)})`);
  const pieces = [...heaters, ...kit.covers.map(({ name }) => name)].join(", ");
  const price = kit.price === null ? "" : `, ${kit.price} ${currency}`.trimEnd();
  const facts = [
    ...(kit.longest_on_h === null ? [] : [`at most ${span(kit.longest_on_h)} in one go`]),
    ...(kit.attended ? ["somebody must stay all the time it runs"] : []),
    ...kit.barred.map(({ text }) => `may not be used: ${style.say(text).replace(/\.$/, "")}`),
    ...kit.not_advised.map(({ text }) => `not advised: ${style.say(text).replace(/\.$/, "")}`),
  ];
  return [
    ...wrapped(
      `kit ${k + 1}: ${kit.name}: ${pieces || "nothing"}; switched ${SWITCHED[kit.switching]}${price}${facts.map((text) => `; ${text}`).join("")}`,
      style.width,
    ).map((line) => style.colors.bold(line)),
    ...(kit.cases.length === 0 ? [] : caseLines(kit, currency, style)),
    ...hotLines(kit, style),
    "",
  ];
}

function caseLines({ cases }: KitEntry, currency: string, style: Style): string[] {
  const degrees = unitOf("c", style);
  const money = currency === "" ? "cost" : currency;
  const heads = ["kWh", "min", `time`, money, `surf${degrees}`, `film${degrees}`, "wet h", "ready"];
  return [
    `${"  air, wind".padEnd(18)}${heads.map((head) => head.padStart(7)).join("")}`,
    ...cases.map((one) => {
      const { cost } = one;
      const values = [
        one.energy_kwh.p50.toFixed(1),
        (60 * one.attended_h).toFixed(0),
        cost.attended.toFixed(1),
        cost.all === null ? "-" : cost.all.toFixed(1),
        one.hottest_surface_c === null ? "-" : bareTemperature(one.hottest_surface_c.p50, style),
        bareTemperature(one.hottest_film_c.p50, style),
        one.wet_h === null ? "-" : one.wet_h.toFixed(1),
        percent(one.chance).replace("over", ">").replace("under", "<").replace(/\s/g, ""),
      ];
      return `${`  ${style.values.cold(one)}`.padEnd(18)}${values.map((value) => value.padStart(7)).join("")}`;
    }),
    ...wrapped(
      `min, time: of somebody standing by or plugging in; wet h: wet or frosted inside. Weakest point: ${[...new Set(cases.map(({ weakest_title }) => style.say(weakest_title)))].join("; ")}.`,
      style.width,
      "  ",
    ),
  ];
}

function hotLines(kit: KitEntry, style: Style): string[] {
  const hot = kit.cases.filter(({ too_hot }) => too_hot.length > 0);
  if (hot.length === 0) return [];
  const ids = [...new Set(hot.flatMap(({ too_hot }) => too_hot))].join(", ");
  return wrapped(`Too hot in the middle estimate: ${ids}. Do not heat so long.`, style.width, "  ");
}

const SWITCHED = {
  by_hand: "by hand",
  mains_timer: "by a mains timer",
  local_network: "over the local network",
  phone_network: "over the phone network",
} as const;
