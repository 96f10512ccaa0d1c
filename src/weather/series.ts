import type { Finding } from "../findings/index.js";

/**
 * Weather at one place on a common, ascending time axis; values between two times run linearly.
 * A series is always complete: whatever was missing in the source and had to be assumed is listed in `assumptions`.
 */
export interface WeatherSeries {
  /** [s] since 1970-01-01T00:00Z, strictly ascending, at least one entry. */
  readonly time: Float64Array;
  /** [K] air temperature at screen height (2 m). */
  readonly tempAir: Float64Array;
  /** [m/s] mean wind speed at 10 m. */
  readonly windSpeed: Float64Array;
  /** [K] dew point over liquid water (as METAR reports it at all temperatures). */
  readonly tempDewPoint: Float64Array;
  /** [0..1] fraction of the sky covered by cloud. */
  readonly cloudCover: Float64Array;
  /** [s] since epoch at which a forecast was issued; forecast error grows from here. Absent for measured weather. */
  readonly issued?: number;
  /**
   * Only with `issued`: "persistence" where nobody forecast the air temperature and it is carried on from the
   * last reading by assumption, so that its error grows faster. Absent: the temperature was forecast.
   */
  readonly tempBasis?: "persistence";
  /** Where it came from, in words: "TAF XXRV 091700Z", "file winter.epw rows 120-160". */
  readonly origin: string;
  readonly assumptions: readonly WeatherAssumption[];
}

/** Something the source did not say, and what was taken instead. Shown to the user, never hidden. */
export interface WeatherAssumption {
  readonly quantity: "tempAir" | "windSpeed" | "tempDewPoint" | "cloudCover" | "time";
  /** [s] since epoch: the stretch it applies to. */
  readonly from: number;
  readonly to: number;
  /** What was assumed and why that is the cautious side. */
  readonly text: Finding;
}

/** A fault in weather text or a weather file, found while reading it. Readers return these instead of throwing. */
export interface WeatherIssue {
  /** "line 14, column air_c" or "group 27/23". */
  readonly place: string;
  readonly expected: string;
  readonly received: string;
}

export type WeatherReading =
  | { readonly ok: true; readonly series: WeatherSeries; readonly warnings: readonly WeatherIssue[] }
  | { readonly ok: false; readonly issues: readonly WeatherIssue[] };
