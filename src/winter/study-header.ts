import { type Caution, originOf } from "../aircraft/index.js";
import type { Habit, KitChoice, ReadWinter, WinterStudyDocument } from "../documents/index.js";
import { eachOnce } from "../findings/index.js";
import { WET_TIME_LIMITS } from "../starting/index.js";
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
  "Those ready at a departure fly and stand there again warm through; the others stay, and are heated for the next departure.",
  "A plan takes its lead from a table by the forecast's mean air and wind of the twelve hours before departure, as if cold-soaked: soon after a flight it heats longer than needed.",
  "Plans aim at warm through where the kit reaches it with the wanted chance, else at the least that the maker asks for; ready counts the least.",
  "Somebody's time is the whole time that an attended heater runs and the pause after it; by hand 10 min for each time on (project judgement).",
  `Wet hours are those of the middle aircraft. ${WET_TIME_LIMITS}`,
];

function byHandOf({ kits, habits }: ReadWinter): string[] {
  const names = kits.filter(({ switching }) => switching === "by_hand").map(({ name }) => name);
  if (names.length === 0 || habits.every((habit) => habit.do === "always-on")) return [];
  return [
    `By hand (${names.join(", ")}) it is plugged in at the last moment before a habit's time when somebody is there: for an early departure that is the evening before, whatever lead the habit names.`,
  ];
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
    heaters: kit.heaters.map(({ id, name: text }) => ({ id, name: text })),
    covers: kit.covers.map(({ id, name: text }) => ({ id, name: text })),
    switching,
    price: price ?? null,
  };
}

function kindOf(habit: Habit): "always_on" | "clock" | "planned" {
  if (habit.do === "always-on") return "always_on";
  return habit.do === "planned" ? "planned" : "clock";
}

/** @example habitLabel({ do: "clock", lead: 10800 }) // "always 3 h before" */
function habitLabel(habit: Habit): string {
  switch (habit.do) {
    case "always-on":
      return "always on";
    case "clock":
      return `always ${roundedTo(habit.lead / SECONDS_OF_HOUR, 2)} h before`;
    case "daily":
      return `daily ${habit.label}`;
    case "planned":
      return `as planned, ${roundedTo(100 * habit.chance, 0)} of 100`;
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
      all.unshift({
        text: `Always on is compared, not advised: ${heater.name} may be on for ${heater.longest_on_h} h in one go, and a heater that nobody watches must go off.`,
        source: originOf(heater.origins, "longest_on_h"),
      });
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
