import { METRES_PER_SECOND_OF_KNOT } from "./other.js";
import { fahrenheitFromCelsius } from "./temperature.js";

/** The units somebody reads in. */
export interface ReaderUnits {
  readonly temp: "c" | "f";
  readonly wind: WindUnit;
}

export type WindUnit = "kt" | "mps" | "kmh";

export const WIND_UNITS: Readonly<Record<WindUnit, string>> = { kt: "kt", mps: "m/s", kmh: "km/h" };

/** [m/s] of one. */
const METRES_PER_SECOND: Readonly<Record<WindUnit, number>> = {
  kt: METRES_PER_SECOND_OF_KNOT,
  mps: 1,
  kmh: 1 / 3.6,
};

/** A speed [m/s] in the reader's unit. @example windIn(10, "kmh") // 36 */
export function windIn(mps: number, unit: WindUnit): number {
  return mps / METRES_PER_SECOND[unit];
}

/** [m/s] of a speed in the reader's unit. */
export function mpsFromWind(value: number, unit: WindUnit): number {
  return value * METRES_PER_SECOND[unit];
}

/**
 * A sentence that speaks in °C, K and m/s, in the reader's units with as many decimals. Never for a caution, which keeps
 * the unit it was published in, nor for what quotes the user's own input.
 * @example sentenceInUnits("at -25 °C, 7.2 K short", { temp: "f", wind: "kt" }) // "at -13 °F, 13.0 F° short"
 */
export function sentenceInUnits(text: string, units: ReaderUnits): string {
  return text.replace(
    QUANTITY,
    (whole, first: string, to: string | undefined, second: string | undefined, unit: Unit) => {
      const { value, name } = SHOWN[unit](units);
      if (name === unit) return whole;
      const shown = (number: string) => {
        const decimals = number.split(".")[1]?.length ?? 0;
        return value(Number(number.replace("\u2212", "-"))).toFixed(decimals);
      };
      const start = to === undefined || second === undefined ? "" : `${shown(first)}${to}`;
      return `${start}${shown(second ?? first)}${NBSP}${name}`;
    },
  );
}

type Unit = "°C" | "K" | "m/s";

interface Shown {
  readonly value: (si: number) => number;
  readonly name: string;
}

const same = (value: number) => value;

const SHOWN: Readonly<Record<Unit, (units: ReaderUnits) => Shown>> = {
  "°C": ({ temp }) =>
    temp === "f" ? { value: fahrenheitFromCelsius, name: "°F" } : { value: same, name: "°C" },
  K: ({ temp }) =>
    temp === "f" ? { value: (kelvins) => kelvins * 1.8, name: "F°" } : { value: same, name: "K" },
  "m/s": ({ wind }) => ({ value: (mps) => windIn(mps, wind), name: WIND_UNITS[wind] }),
};

/** Between a number and its unit, so that they stay on one line. */
const NBSP = "\u00a0";

/** A number, or two with what joins them, and its unit. */
const QUANTITY =
  /((?<![\d.])[-\u2212]?\d+(?:\.\d+)?)(?:( to |\.\.| and )([-\u2212]?\d+(?:\.\d+)?))?[ \u00a0](\u00b0C|K|m\/s)(?![\p{L}\d/])/gu;
