import type { FaceFrost, FrostResult } from "../airframe/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import {
  type AirframeRead,
  airframeHeader,
  bandDocument,
  celsiusSeries,
  seriesDocument,
  stampAt,
  timeBandDocument,
} from "./airframe-document.js";
import type { ReadFrost } from "./frost-reading.js";
import type { FaceDocument, FrostOutlookDocument } from "./frost-result-schema.js";
import { rounded } from "./result-header.js";

/** The same night with another cover, or without. */
export interface OtherCover {
  /** Id of the cover tried; undefined for none. */
  readonly cover: string | undefined;
  readonly result: FrostResult;
}

/** A night's frost as it is stored, exchanged and shown. */
export function frostDocument(result: FrostResult, other: OtherCover, read: ReadFrost): FrostOutlookDocument {
  const { request, name, zone, assumptions, warnings } = read;
  const { start, duration, panel, cover } = request;
  const context: AirframeRead = { name, zone, start, assumptions, warnings };
  const face = (frost: FaceFrost) => faceDocument(frost, context);
  return {
    ...airframeHeader(context, panel.name, [result]),
    kind: "frost-outlook",
    departure: stampAt(context, duration),
    cover: cover?.origin ?? null,
    upper: face(result.upper),
    lower: face(result.lower),
    other: { cover: other.cover ?? null, upper: face(other.result.upper) },
    course: courseOf(result, start),
  };
}

function faceDocument(frost: FaceFrost, read: AirframeRead): FaceDocument {
  return {
    verdict: frost.verdict,
    chance: frost.chance,
    chance_at_departure: frost.chanceAtEnd,
    first: timeBandDocument(read, frost.first, read.start),
    hours: bandDocument(frost.duration, 2, SECONDS_OF_HOUR),
    frost_at_departure_kg_per_m2: bandDocument(frost.frostAtEnd, 4),
    dew_at_departure_kg_per_m2: bandDocument(frost.dewAtEnd, 4),
    most_frost_kg_per_m2: bandDocument(frost.mostFrost, 4),
    most_below_air_k: bandDocument(frost.mostBelowAir, 2),
  };
}

function courseOf({ series }: FrostResult, start: number): FrostOutlookDocument["course"] {
  return {
    time_h: Array.from(series.time, (t) => rounded((t - start) / SECONDS_OF_HOUR, 4)),
    air_c: celsiusSeries(series.tempAir),
    frost_point_c: celsiusSeries(series.tempCondensation),
    sky_c: celsiusSeries(series.tempSky),
    wind_mps: seriesDocument(series.windSpeed, 2),
    upper_c: celsiusSeries(series.tempUpper),
    lower_c: celsiusSeries(series.tempLower),
    inside_c: celsiusSeries(series.tempInside),
    upper_frost_kg_per_m2: seriesDocument(series.iceUpper, 4),
    upper_dew_kg_per_m2: seriesDocument(series.waterUpper, 4),
    lower_frost_kg_per_m2: seriesDocument(series.iceLower, 4),
    lower_dew_kg_per_m2: seriesDocument(series.waterLower, 4),
    cover_frost_kg_per_m2: series.iceCover === undefined ? null : seriesDocument(series.iceCover, 4),
  };
}
