import type { Finding, Measure } from "../findings/index.js";
import { fahrenheitFromCelsius, type ReaderUnits, WIND_UNITS, windIn } from "../units/index.js";
import type { Say } from "./phrases.js";

export type LanguageTag = "en" | "nb";

export const LANGUAGES: Readonly<Record<LanguageTag, string>> = { en: "English", nb: "Norsk bokmål" };

/** Keeps a number and its unit on one line. */
const NBSP = "\u00a0";

const JOINED = {
  en: {
    and: "and",
    in: "in",
    over: "over",
    under: "under",
    times: "times",
    ofHundred: "of 100",
    hour: "h",
    calm: "calm",
  },
  nb: {
    and: "og",
    in: "av",
    over: "over",
    under: "under",
    times: "ganger",
    ofHundred: "av 100",
    hour: "t",
    calm: "vindstille",
  },
} as const satisfies Record<LanguageTag, object>;

const LOCALE: Readonly<Record<LanguageTag, string>> = { en: "en-GB", nb: "nb" };

/** What a medium writes in its own way. */
export interface Writing {
  number?(value: number, digits: number): string;
  clock?(time: string): string;
  /** English names of the catalogue to those of the language. */
  readonly names?: Readonly<Record<string, string>>;
}

/** How a language writes values in the reader's units. */
export function sayIn(
  language: LanguageTag,
  units: ReaderUnits,
  finding: (one: Finding) => string,
  writing: Writing = {},
): Say {
  const joined = JOINED[language];
  const number = (value: number, digits = 0) =>
    writing.number?.(value, digits) ?? numberText(value, language, digits);
  const { over, under } = joined;
  const inCases = (cases: number, all: number) => `${cases} ${joined.in} ${all}`;
  const odds = (share: number) => {
    const of = (cases: number) => inCases(Math.floor(share * cases + 1e-9), cases);
    if (share >= 0.995) return `${over} 99 ${joined.in} 100`;
    if (share >= 0.95) return of(20);
    if (share >= 0.1) return of(10);
    return share >= 0.01 ? of(100) : `${under} 1 ${joined.in} 100`;
  };
  const counted = ({ share, members }: { share: number; members: number }) => {
    if (share === 1) return `${over} ${inCases(members - 1, members)}`;
    if (share === 0) return `${under} ${inCases(1, members)}`;
    return share < 0.1 ? inCases(Math.round(share * members), members) : odds(share);
  };
  const temp = (celsius: number, digits = 0) =>
    units.temp === "f"
      ? `${number(fahrenheitFromCelsius(celsius), digits)}${NBSP}°F`
      : `${number(celsius, digits)}${NBSP}°C`;
  const difference = (kelvins: number, digits = 1) =>
    units.temp === "f" ? `${number(1.8 * kelvins, digits)}${NBSP}F°` : `${number(kelvins, digits)}${NBSP}K`;
  const measure = ({ value, unit }: Measure) => {
    if (unit === "c") return temp(value);
    if (unit === "k") return difference(value);
    const text = number(value, unit === "percent" || unit === "ratio" ? 1 : 0);
    const name = { percent: "%", ratio: joined.times, rpm: "rpm", index: joined.ofHundred, count: "" }[unit];
    return name === "" ? text : `${text}${NBSP}${name}`;
  };
  const wind = (mps: number, digits = 0) =>
    `${number(windIn(mps, units.wind), digits)}${NBSP}${WIND_UNITS[units.wind]}`;
  return {
    number,
    odds,
    counted,
    risk: (of) => {
      const { share } = of;
      if (share < 0.1 || share === 1) return counted(of);
      const all = share >= 0.95 ? 20 : 10;
      const cases = Math.ceil(share * all - 1e-9);
      return cases === all ? `${over} ${inCases(all - 1, all)}` : inCases(cases, all);
    },
    left: (minutes) =>
      minutes <= 90 ? `${minutes}${NBSP}min` : spanText((5 * Math.floor(minutes / 5)) / 60, joined.hour),
    brief: (value) => number(value, value < 10 && value > 0 ? 1 : 0),
    cold: ({ air_c, wind_mps }) => `${temp(air_c)}, ${wind_mps === 0 ? joined.calm : wind(wind_mps)}`,
    money: ({ amount, currency }, digits = 0) => `${number(amount, digits)} ${currency}`.trimEnd(),
    name: (text) => nameIn(text, writing.names, language),
    finding,
    temp,
    difference,
    measure,
    wind,
    percent: (share) => `${number(100 * share)}${NBSP}%`,
    span: (hours) => spanText(hours, joined.hour),
    needed: (hours) => neededText(hours, joined.hour),
    clock: (time) => writing.clock?.(time) ?? time.slice(11, 16),
    dayAndClock: (time) => `${weekday(time, language)}${NBSP}${time.slice(11, 16)}`,
    list: (entries) =>
      entries.length < 2
        ? entries.join("")
        : `${entries.slice(0, -1).join(", ")} ${joined.and} ${entries[entries.length - 1]}`,
  };
}

const TANKS = { en: {}, nb: { "a tank": "en tank", "a full tank": "en full tank" } } as const;

/** A name of the catalogue; of a piece of wing with the tank behind it. */
function nameIn(text: string, names: Writing["names"], language: LanguageTag): string {
  const [, wing, tank] = / over (a tank|a full tank)$/.test(text)
    ? (/^(.*) over (.*)$/.exec(text) ?? [])
    : [];
  if (wing === undefined || tank === undefined) return names?.[text] ?? text;
  const behind: Readonly<Record<string, string>> = TANKS[language];
  return behind[tank] === undefined ? text : `${names?.[wing] ?? wing} over ${behind[tank]}`;
}

/** A number as the language writes it, without grouping: "-24", "7.2"; "7,2" in Norwegian. */
function numberText(value: number, language: LanguageTag, digits: number): string {
  // Adding 0 turns -0 into 0.
  const text = (Math.round(value * 10 ** digits) / 10 ** digits + 0).toFixed(digits);
  return language === "nb" ? text.replace(".", ",") : text;
}

/**
 * Hours, to the minute and to five minutes where it is long; never more than was counted. What rounding of documents
 * took away is not lost a minute. @example spanText(1.37) // "1 h 20 min"
 */
function spanText(hours: number, hour = "h"): string {
  const exact = Math.floor(hours * 60 + 0.1);
  return minutesText(exact > 60 ? Math.floor(exact / 5) * 5 : exact, hour);
}

/** The same of hours that something needs: never fewer. @example neededText(1.37) // "1 h 25 min" */
function neededText(hours: number, hour = "h"): string {
  const exact = Math.ceil(hours * 60 - 0.1);
  return minutesText(exact > 60 ? Math.ceil(exact / 5) * 5 : exact, hour);
}

function minutesText(minutes: number, hour: string): string {
  const [h, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (h === 0) return `${rest}${NBSP}min`;
  return rest === 0 ? `${h}${NBSP}${hour}` : `${h}${NBSP}${hour}${NBSP}${rest}${NBSP}min`;
}

function weekday(time: string, language: LanguageTag): string {
  const [year, month, date] = time.slice(0, 10).split("-").map(Number);
  const at = new Date(Date.UTC(year!, month! - 1, date));
  return at.toLocaleDateString(LOCALE[language], { weekday: "short", timeZone: "UTC" });
}
