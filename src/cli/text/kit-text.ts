import type { KitComparisonDocument } from "../../index.js";
import type { Style } from "../style.js";
import {
  assumed,
  bareTemperature,
  bareWind,
  cared,
  clock,
  DEFERENCE,
  list,
  percent,
  span,
  unitOf,
  windUnit,
  wrapped,
} from "./words.js";

type KitEntry = KitComparisonDocument["kits"][number];

/** Kits side by side: tonight first, then the leads in cold cases, then each kit's own numbers. */
export function kitText(comparison: KitComparisonDocument, style: Style): string[] {
  const { name, aircraft, kits, wanted_chance, members } = comparison;
  return [
    ...wrapped(`${name} (${aircraft.name})`, style.width).map((line) => style.colors.bold(line)),
    ...wrapped(
      `Latest plug-in for a ${percent(wanted_chance)} chance of being ready; ${members} drawn aircraft in the cold cases.`,
      style.width,
    ),
    ...tonightLines(kits, style),
    "",
    ...leadTable(comparison, style),
    "",
    ...kits.flatMap((kit, k) => kitLines(kit, k, comparison, style)),
    ...assumed(comparison.assumptions, style),
    ...list(
      "Doubtful input",
      comparison.warnings.map((w) => `${w.path}: expected ${w.expected}, received ${w.received}`),
      style,
    ),
    ...cared(comparison.cautions, style),
    "",
    ...wrapped(DEFERENCE, style.width),
  ];
}

function tonightLines(kits: readonly KitEntry[], style: Style): string[] {
  if (kits.every(({ tonight }) => tonight === null)) return [];
  const rows = kits.flatMap(({ name, tonight }) => {
    if (tonight === null) return [];
    const { plug_in, unplug, departure, chance, energy_kwh, status, toll, weakest } = tonight;
    const mark = status === "ready" ? style.colors.green("ok") : style.colors.red("!!");
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
    `   ${"kit".padEnd(22)}${"plug in".padEnd(10)}${"off".padEnd(7)}${"chance".padEnd(10)}  kWh  surf  wet h  binds`,
    ...rows,
  ];
}

/** Leads of all kits over the cases; a chance in brackets where none is long enough. */
function leadTable({ kits }: KitComparisonDocument, style: Style): string[] {
  const [first] = kits;
  if (first === undefined) return [];
  const columns = kits.map((_, k) => `kit ${k + 1}`);
  const width = Math.max(
    7,
    Math.min(12, Math.floor((style.width - 18) / Math.max(1, Math.min(kits.length, 6)))),
  );
  const blocks: string[] = [];
  for (let from = 0; from < kits.length; from += 6) {
    const some = kits.slice(from, from + 6);
    blocks.push(
      style.colors.bold(
        `${`air ${unitOf("c", style)}, wind ${windUnit(style)}`.padEnd(18)}${some.map((_, i) => columns[from + i]!.padStart(width)).join("")}`,
      ),
      ...first.cases.map(({ air_c, wind_mps }, c) => {
        const label = `${bareTemperature(air_c, style)}, ${wind_mps === 0 ? "calm" : bareWind(wind_mps, style)}`;
        return `${label.padEnd(18)}${some.map((kit) => leadCell(kit.cases[c]!).padStart(width)).join("")}`;
      }),
    );
  }
  return [
    style.colors.bold("Lead in hours, cold-soaked; (best chance) where none is long enough"),
    ...blocks,
  ];
}

function leadCell({ reached, lead_h, chance }: KitEntry["cases"][number]): string {
  if (!reached) return `(${Math.round(100 * chance)} %)`;
  return lead_h === null ? "none" : lead_h.toFixed(1);
}

function kitLines(kit: KitEntry, k: number, { currency }: KitComparisonDocument, style: Style): string[] {
  const pieces = [...kit.heaters, ...kit.covers].map(({ name }) => name).join(", ");
  const price = kit.price === null ? "" : `, ${kit.price} ${currency}`.trimEnd();
  const degrees = unitOf("c", style);
  const watched = kit.attended ? ["somebody must stand by all the time it runs"] : [];
  const longest = kit.longest_on_h === null ? [] : [`at most ${span(kit.longest_on_h)} in one go`];
  return [
    ...wrapped(
      `kit ${k + 1}: ${kit.name}: ${pieces || "nothing"}; switched ${SWITCHED[kit.switching]}${price}${[...longest, ...watched].map((text) => `; ${text}`).join("")}`,
      style.width,
    ).map((line) => style.colors.bold(line)),
    `${"  air, wind".padEnd(16)}${["kWh", `surf${degrees}`, `film${degrees}`, "wet h", "chance"].map((head) => head.padStart(8)).join("")}  binds`,
    ...kit.cases.map((one) => {
      const values = [
        one.energy_kwh.p50.toFixed(1),
        one.hottest_surface_c === null ? "-" : bareTemperature(one.hottest_surface_c.p50, style),
        bareTemperature(one.hottest_film_c.p50, style),
        one.wet_h.toFixed(1),
        percent(one.chance).replace("over", ">").replace("under", "<").replace(/\s/g, ""),
      ];
      const label = `  ${bareTemperature(one.air_c, style)}, ${one.wind_mps === 0 ? "calm" : bareWind(one.wind_mps, style)}`;
      const line = `${label.padEnd(16)}${values.map((value) => value.padStart(8)).join("")}  ${one.weakest}`;
      return line.slice(0, style.width);
    }),
    ...hotLines(kit, style),
    "",
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
