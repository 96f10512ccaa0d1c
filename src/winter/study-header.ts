import { type Caution, heaterBasis, originOf } from "../aircraft/index.js";
import type { Habit, KitChoice, ReadWinter, WinterStudyDocument } from "../documents/index.js";
import { eachOnce, type Finding, finding, sourced } from "../findings/index.js";
import { celsiusFromKelvin, SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import { localText } from "../weather/index.js";
import { barsOf, isAttended, type KitSetting, leastOn, longestOn, unplugBeforeOf } from "./heater-limits.js";
import { habitRefused } from "./switching.js";

export type StudyHeader = Omit<
  WinterStudyDocument,
  "rows" | "kind" | "ranking" | "answer" | "first_cautions"
>;

/** All of a study but its rows. */
export function headerOfWinter(read: ReadWinter): StudyHeader {
  const { name, installation, start, end, zone, ensemble, departures, years, prices, against } = read;
  return {
    soakline: 2,
    name,
    aircraft: { id: installation.id, name: installation.name },
    start: { at_h: 0, time: localText(start, zone) },
    zone,
    members: ensemble.members,
    hours: roundedTo((end - start) / SECONDS_OF_HOUR, 2),
    departures: departures.length,
    winters: years.map(({ name: year, weather }) => ({
      name: year,
      origin: weather.origin,
      mean_c: roundedTo(celsiusFromKelvin(mean(weather.tempAir)), 1),
      coldest_c: roundedTo(celsiusFromKelvin(Math.min(...weather.tempAir)), 1),
    })),
    currency: prices.currency,
    attended_per_h: prices.attended,
    wanted_chance: wantedChance(read),
    against,
    kits: read.kits.map((choice) => kitHeader(choice, read)),
    habits: read.habits.map((habit) => ({ do: kindOf(habit), label: habitLabel(habit) })),
    assumptions: [...read.assumptions, ...HOW_COUNTED, ...byHandOf(read)],
    warnings: [...read.warnings],
    cautions: cautionsOf(read),
  };
}

/** How a winter is counted, for everyone who reads its numbers. */
const HOW_COUNTED = [
  finding("winter-flown-warm", {}),
  finding("winter-lead-table", {}),
  finding("winter-aims", {}),
  finding("winter-time-counted", {}),
  finding("winter-wet-counted", {}),
];

function byHandOf({ kits, habits }: ReadWinter): Finding[] {
  const names = kits.filter(({ switching }) => switching === "by_hand").map(({ name }) => name);
  if (names.length === 0 || habits.every((habit) => habit.do === "always-on")) return [];
  return [finding("winter-by-hand", { kits: names })];
}

/** The chance that plans of a study want: the highest of its planned habits. */
function wantedChance({ habits }: ReadWinter): number {
  return Math.max(0, ...habits.map((habit) => (habit.do === "planned" ? habit.chance : 0))) || USUAL_CHANCE;
}

const USUAL_CHANCE = 0.9;

/** A kit and its limits as every result has them. */
export function kitHeader(
  { name, kit, switching, price }: KitChoice,
  read: KitSetting & { readonly unplugBefore: number },
) {
  const hasHeater = kit.heaters.length > 0;
  return {
    name,
    attended: isAttended(kit),
    least_on_h: hasHeater ? leastOn(kit) / SECONDS_OF_HOUR : null,
    longest_on_h: hasHeater ? longestOn(kit) / SECONDS_OF_HOUR : null,
    unplug_before_min: unplugBeforeOf(kit, read.unplugBefore) / SECONDS_OF_MINUTE,
    barred: barsOf(kit, read),
    heaters: kit.heaters.map((heater) => ({ id: heater.id, name: heater.name, basis: heaterBasis(heater) })),
    covers: kit.covers.map(({ id, name: text }) => ({ id, name: text })),
    switching,
    price: price ?? null,
  };
}

function kindOf(habit: Habit): "always_on" | "clock" | "planned" {
  if (habit.do === "always-on") return "always_on";
  return habit.do === "planned" ? "planned" : "clock";
}

function habitLabel(habit: Habit): Finding {
  switch (habit.do) {
    case "always-on":
      return finding("habit-always-on", {});
    case "clock":
      return finding("habit-clock", { lead_h: roundedTo(habit.lead / SECONDS_OF_HOUR, 2) });
    case "daily":
      return finding("habit-daily", habit.times);
    case "planned":
      return finding("habit-planned", { chance: habit.chance });
  }
}

/** Cautions of all the kits, each once, with what leaving it on goes against. */
function cautionsOf(read: ReadWinter): Caution[] {
  const { kits, habits } = read;
  const all = kits.flatMap(({ kit }) => [
    ...kit.heaters.flatMap((heater) => heater.cautions),
    ...kit.covers.flatMap((cover) => cover.cautions),
  ]);
  const always = habits.find((habit) => habit.do === "always-on");
  if (always !== undefined) {
    const possible = kits.filter((choice) => habitRefused(choice, always, read) === "");
    for (const heater of possible.flatMap(({ kit }) => kit.heaters)) {
      all.unshift(
        sourced(
          "always-on-compared",
          { heater: heater.name, longest_on_h: heater.longest_on_h },
          originOf(heater.origins, "longest_on_h"),
        ),
      );
    }
  }
  return eachOnce(all);
}

export function roundedTo(value: number, digits: number): number {
  const scale = 10 ** digits;
  // Adding 0 turns -0 into 0.
  return Math.round(value * scale) / scale + 0;
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
