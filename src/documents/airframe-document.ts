import type { z } from "zod";
import { type Band, type BandSeries, type Caution, inOrderOfNeed, type TimeBand } from "../airframe/index.js";
import { eachOnce, type Finding } from "../findings/index.js";
import { celsiusFromKelvin, SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import { localText } from "../weather/index.js";
import type { minutesBand, timeBand } from "./airframe-result-schema.js";
import type { DocumentIssue } from "./issue.js";
import { SCENARIO_VERSION } from "./migrations.js";
import { rounded } from "./result-header.js";
import type { StampDocument } from "./result-schema.js";

// Numbers of the airframe's reports in the user's units.

/** What answers about the airframe are read from. */
export interface AirframeRead {
  readonly name: string;
  readonly zone: string;
  /** [s] since epoch. */
  readonly start: number;
  readonly assumptions: readonly Finding[];
  readonly warnings: readonly DocumentIssue[];
}

/** The part that all answers about the airframe share; assumptions and cautions of several reports stand once. */
export function airframeHeader(
  read: AirframeRead,
  panel: string,
  reports: readonly {
    readonly members: number;
    readonly assumptions: readonly Finding[];
    readonly cautions: readonly Caution[];
  }[],
) {
  const { name, zone, assumptions, warnings } = read;
  const cautions = reports.flatMap((report) => report.cautions);
  const taken = reports.flatMap((report) => report.assumptions);
  return {
    soakline: SCENARIO_VERSION as 2,
    name,
    panel,
    start: stampAt(read, 0),
    zone,
    members: reports[0].members,
    assumptions: eachOnce([...assumptions, ...taken]),
    warnings: [...warnings],
    cautions: inOrderOfNeed(cautions),
  };
}

/** A moment [s since the start], to the minute. */
export function stampAt({ start, zone }: Pick<AirframeRead, "start" | "zone">, at: number): StampDocument {
  return { at_h: rounded(at / SECONDS_OF_HOUR, 4), time: localText(start + at, zone) };
}

/** @param origin [s] of the start on the clock that `band` is told by */
export function timeBandDocument(
  read: Pick<AirframeRead, "start" | "zone">,
  { low, middle, high, share }: TimeBand,
  origin = 0,
): z.infer<typeof timeBand> {
  const at = (time: number | undefined) => (time === undefined ? null : stampAt(read, time - origin));
  return { p05: at(low), p50: at(middle), p95: at(high), share };
}

export function minutesDocument({ low, middle, high, share }: TimeBand): z.infer<typeof minutesBand> {
  const minutes = (time: number | undefined) =>
    time === undefined ? null : rounded(time / SECONDS_OF_MINUTE, 1);
  return { p05: minutes(low), p50: minutes(middle), p95: minutes(high), share };
}

export function bandDocument({ low, middle, high }: Band, digits: number, unit = 1) {
  return {
    p05: rounded(low / unit, digits),
    p50: rounded(middle / unit, digits),
    p95: rounded(high / unit, digits),
  };
}

export function seriesDocument({ low, middle, high }: BandSeries, digits: number, unit = 1) {
  const shown = (values: Float64Array) => Array.from(values, (value) => rounded(value / unit, digits));
  return { p05: shown(low), p50: shown(middle), p95: shown(high) };
}

export function celsiusSeries({ low, middle, high }: BandSeries) {
  const shown = (values: Float64Array) => Array.from(values, (value) => rounded(celsiusFromKelvin(value), 2));
  return { p05: shown(low), p50: shown(middle), p95: shown(high) };
}
