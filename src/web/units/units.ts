import { mpsFromWind, WIND_UNITS, type WindUnit, windIn } from "../../units/index.js";

// Conversion and wording of quantities at the edge of the app. Inside, documents carry °C, m/s and ISO times.

export interface Units {
  readonly temp: "c" | "f";
  readonly wind: WindUnit;
  /** BCP 47 */
  readonly language: string;
}

/** Keeps a number and its unit on one line. */
const NARROW = "\u00a0";

/** @example tempText(-24.4, metric) // "−24 °C" */
function tempText(celsius: number, units: Units, digits = 0): string {
  return `${bareTemp(celsius, units, digits)}${NARROW}${tempUnit(units)}`;
}

export function tempUnit({ temp }: Units): string {
  return temp === "f" ? "°F" : "°C";
}

/** The same without its unit, for a drawing that says the unit once. */
export function bareTemp(celsius: number, units: Units, digits = 0): string {
  return numberText(shownTemp(celsius, units), units, digits);
}

export function shownTemp(celsius: number, { temp }: Units): number {
  return temp === "f" ? celsius * 1.8 + 32 : celsius;
}

/** [°C] of a number that the user gave in their unit. */
function celsiusOf(shown: number, { temp }: Units): number {
  return temp === "f" ? (shown - 32) / 1.8 : shown;
}

/** A difference of temperatures. */
function differenceText(kelvins: number, units: Units, digits = 0): string {
  return `${numberText(shownDifference(kelvins, units), units, digits)}${NARROW}${differenceUnit(units)}`;
}

function differenceUnit({ temp }: Units): string {
  return temp === "f" ? "F°" : "K";
}

function shownDifference(kelvins: number, { temp }: Units): number {
  return temp === "f" ? 1.8 * kelvins : kelvins;
}

function kelvinsOf(shown: number, { temp }: Units): number {
  return temp === "f" ? shown / 1.8 : shown;
}

export function windUnit({ wind }: Units): string {
  return WIND_UNITS[wind];
}

export function bareWind(mps: number, units: Units): string {
  return numberText(shownWind(mps, units), units, 0);
}

function shownWind(mps: number, { wind }: Units): number {
  return windIn(mps, wind);
}

function mpsOf(shown: number, { wind }: Units): number {
  return mpsFromWind(shown, wind);
}

/** [m/s] hurricane force begins above (WMO-No. 306, Beaufort 12): nobody flies. */
export const STRONGEST_MPS = 32;

/** The unit of an answer about degrees as the user reads it, and how its numbers are shown. */
export function answerIn(unit: string, units: Units): { unit: string; shown: (value: number) => number } {
  const isFahrenheit = units.temp === "f";
  if (unit === "°C") return { unit: tempUnit(units), shown: (value) => shownTemp(value, units) };
  if (unit === "K" && isFahrenheit) return { unit: "F°", shown: (value) => 1.8 * value };
  return { unit, shown: (value) => value };
}

export function numberText(value: number, { language }: Pick<Units, "language">, digits = 0): string {
  const scale = 10 ** digits;
  // Adding 0 turns -0 into 0; every language gets a real minus sign.
  const rounded = Math.round(value * scale) / scale + 0;
  const format = formats.get(`${language} ${digits}`) ?? remembered(language, digits);
  return format.format(rounded).replace("-", "−");
}

const formats = new Map<string, Intl.NumberFormat>();

function remembered(language: string, digits: number): Intl.NumberFormat {
  const format = new Intl.NumberFormat(language, {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  formats.set(`${language} ${digits}`, format);
  return format;
}

/** A value of a criterion in the unit its document gives it. */
export function criterionValue(value: number, unit: string, units: Units): string {
  switch (unit) {
    case "c":
      return tempText(value, units);
    case "k":
      return differenceText(value, units);
    case "percent":
      return `${numberText(value, units, 1)}${NARROW}%`;
    case "rpm":
      return `${numberText(value, units)}${NARROW}rpm`;
    case "ratio":
      return numberText(value, units, 1);
    default:
      return numberText(value, units);
  }
}

/** How far a value is from its limit. */
export function criterionMargin(value: number, unit: string, units: Units): string {
  return criterionValue(value, unit === "c" ? "k" : unit, units);
}

/** How a number of a quantity is shown, and what a shown one means. */
export const QUANTITIES = {
  /** [°C] */
  temp: { unitOf: tempUnit, shown: shownTemp, given: celsiusOf },
  /** [m/s] */
  wind: { unitOf: windUnit, shown: shownWind, given: mpsOf },
  /** [K] */
  difference: { unitOf: differenceUnit, shown: shownDifference, given: kelvinsOf },
  plain: { unitOf: () => "", shown: (x: number) => x, given: (x: number) => x },
} satisfies Record<string, Quantity>;

interface Quantity {
  unitOf(units: Units): string;
  shown(value: number, units: Units): number;
  given(shown: number, units: Units): number;
}
