import type { Finding, Measure } from "../findings/index.js";

/** [0..1] a share of so many drawn cases. */
interface Counted {
  readonly share: number;
  readonly members: number;
}

/** How values are written in the reader's language and units; what a phrase is given beside its values. */
export interface Say {
  /** [°C] @example "-24 °C" */
  temp(celsius: number, digits?: number): string;
  /** [K] a difference @example "7.2 K" */
  difference(kelvins: number, digits?: number): string;
  /** [m/s] @example "10 kt" */
  wind(mps: number, digits?: number): string;
  number(value: number, digits?: number): string;
  /** A value of a criterion, or a margin, with its unit. @example "62 rpm" */
  measure(measure: Measure): string;
  /** [0..1] @example "80 %" */
  percent(share: number): string;
  /** [0..1] never more than was counted @example "9 in 10" */
  odds(share: number): string;
  /** [h] never more than was counted @example "1 h 20 min" */
  span(hours: number): string;
  /** [h] of something that needs them, never fewer @example "1 h 25 min" */
  needed(hours: number): string;
  /** The same share counted over so many cases, no surer than their number allows. @example "over 39 in 40" */
  counted(of: Counted): string;
  /** The same of what may hurt, never less than was counted. @example "2 in 10" */
  risk(of: Counted): string;
  /** [min] that are left, never more than there are, to five where they are many. @example "25 min" */
  left(minutes: number): string;
  /** A number with a decimal where it is small. @example "3.4", "34" */
  brief(value: number): string;
  /** Air and wind of a cold case. @example "-20 °C, calm" */
  cold(of: { readonly air_c: number; readonly wind_mps: number }): string;
  /** @example "12 EUR" */
  money(of: { readonly amount: number; readonly currency: string }, digits?: number): string;
  /** Clock time of a local time with offset; with its day where the medium shows it. @example "09:20" */
  clock(time: string): string;
  /** Day and clock time. @example "Thu 09:20" */
  dayAndClock(time: string): string;
  /** @example "a, b and c" */
  list(entries: readonly string[]): string;
  /** A name of the catalogue: heater, cover, engine, oil, piece of wing; others as they are. */
  name(text: string): string;
  /** Another finding within this one. */
  finding(finding: Finding): string;
}

/** A phrase for every code of a domain: one that is missing, or has no code, does not compile. */
export type Phrases<V> = {
  readonly [C in keyof V]: (values: V[C], say: Say) => string;
};
