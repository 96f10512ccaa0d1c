/** Wind and sky of one part of a TAF; undefined means the part does not change it. */
export interface TafConditions {
  /** [m/s] */
  readonly windSpeed: number | undefined;
  /** [0..1] */
  readonly cloudCover: number | undefined;
}

export interface TafChange {
  /** FM replaces at `from`; BECMG passes over from `from` to `to`; TEMPO and PROB hold now and then from `from` to `to`. */
  readonly kind: "FM" | "BECMG" | "TEMPO" | "PROB";
  readonly from: number;
  readonly to: number;
  /** [%] 30 or 40, where given. */
  readonly probability: number | undefined;
  readonly conditions: TafConditions;
  readonly text: string;
}

/** A forecast low or high of the air temperature. */
export interface TempPoint {
  /** [s] since epoch. */
  readonly time: number;
  /** [K] */
  readonly tempAir: number;
}

export interface TafReport {
  readonly station: string;
  /** [s] since epoch. */
  readonly issued: number;
  readonly from: number;
  readonly to: number;
  readonly amended: boolean;
  readonly corrected: boolean;
  readonly base: TafConditions;
  /** In order of their beginning. */
  readonly changes: readonly TafChange[];
  /** TN and TX groups, oldest first. */
  readonly lows: readonly TempPoint[];
  readonly highs: readonly TempPoint[];
  readonly text: string;
}
