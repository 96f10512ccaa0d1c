import type { Finding } from "../findings/index.js";
import type { SolveStatus } from "../solver/index.js";
import { KELVIN_OF_ZERO_CELSIUS, requireInside } from "../units/index.js";
import { TRANSFER_LOG_SD } from "./air-film.js";
import type { Caution } from "./caution.js";
import { type Band, type BandSeries, drawsOf, type Ensemble, type TimeBand } from "./ensemble.js";
import { type Gap, requireGap } from "./gap.js";
import { type Hangar, type OutsideAir, requireHangar } from "./hangar.js";
import { evenTimes, integrate } from "./integrate.js";
import type { Panel } from "./panel.js";
import { type MeltTerms, SNOW_MASS_LOG_SD } from "./snow-cover.js";
import { meltAtStart } from "./thaw-melt.js";
import { thawModel } from "./thaw-model.js";
import { thawAssumptions, thawCautions } from "./thaw-notes.js";
import { type ThawRun, type ThawTimes, thawStatistics } from "./thaw-statistics.js";

/** [kg/m2] of water on a skin once the rest has run off: beads and film of 0.2 mm; wiped with cloths 0.03 mm. Project judgement. */
export const FILM_LEFT = { dripping: 0.2, wiped: 0.03 } as const;

export interface ThawRequest {
  readonly panel: Panel;
  /** [m2] of plan area of wing, tail and body. */
  readonly area: number;
  /** [kg/m2] of snow, ice or frost on top after brushing, see snowMass. */
  readonly snow: number;
  /** [kg/m2] of that snow which a broom would still take off. */
  readonly brushable?: number;
  /** [kg/m2] of water left on the skin, see FILM_LEFT. */
  readonly film: number;
  readonly gap: Gap;
  /** [K] of skin and fittings when it comes in, and of what is inside the wing (fuel); the skin's when absent. */
  readonly tempAircraft: number;
  readonly tempInside?: number;
  readonly hangar: Hangar;
  /** Air outside the hangar, taken as constant. */
  readonly outside: OutsideAir;
  /** [0..1] in the hangar at the start; the outside's moisture when absent. */
  readonly relativeHumidity?: number;
  /** [Pa] */
  readonly pressure: number;
  /** [s] to look ahead. */
  readonly duration: number;
  /** Absent: one member, everything in the middle. */
  readonly ensemble?: Ensemble;
}

export interface ThawReport {
  /** "completed", or why the calculation stopped; then `remedy` says what to do and there are no results. */
  readonly status: SolveStatus;
  readonly remedy: string;
  readonly result: ThawResult | undefined;
}

export interface ThawResult {
  /**
   * [s] from roll-in: no ice left on either skin; both skins dry; gaps thawed, so controls can move, never before the
   * skin is clear; gaps dry, never before the skin is: the earliest it may leave. Each from then on to the end.
   */
  readonly skinClear: TimeBand;
  readonly skinDry: TimeBand;
  readonly gapsThawed: TimeBand;
  readonly gapsDry: TimeBand;
  /** The same case by case. */
  readonly cases: ThawTimes;
  /** What is dry last. */
  readonly weakest: "snow" | "skin" | "gaps";
  /** What melts the snow: rates [kg/(m2 s)] on snow at 0 °C in the hangar's air at the start, heat through the wing apart. */
  readonly melt: MeltTerms;
  /** [J] from the heater by the end, and highest relative humidity [0..1] in the hangar. */
  readonly heaterEnergy: Band;
  readonly mostHumid: Band;
  /** By the end, [kg/m2] of water that ran off the aircraft, and [kg] that condensed on the building. */
  readonly ranOff: Band;
  readonly condensed: Band;
  readonly members: number;
  readonly series: ThawSeries;
  readonly cautions: readonly Caution[];
  /** What was taken for granted. */
  readonly assumptions: readonly Finding[];
}

/** Every intermediate over the stay. */
export interface ThawSeries {
  /** [s] from roll-in */
  readonly time: Float64Array;
  /** [K] */
  readonly tempHangar: BandSeries;
  readonly tempUpper: BandSeries;
  readonly tempInside: BandSeries;
  readonly tempGap: BandSeries;
  /** [0..1] over water */
  readonly relativeHumidity: BandSeries;
  /** [kg/m2] */
  readonly ice: BandSeries;
  readonly waterUpper: BandSeries;
  readonly waterLower: BandSeries;
  /** [kg/m2 of mouth] */
  readonly gapIce: BandSeries;
  readonly gapWater: BandSeries;
  /** [kg] */
  readonly puddle: BandSeries;
}

/** [s] between samples. */
const SAMPLING = 600;
/** Log-sd of what a user can only guess: project judgement. Air change: 0.6 to 2 per hour measured in hangars (ASTM STP 904, 1986). */
const LOG_SD = { airChange: 0.5, film: 0.5, gapDepth: 0.3, gapFill: 0.4 } as const;
const NAMES = ["transfer", "evaporation", "airChange", "film", "gapDepth", "gapFill", "snow"] as const;

/**
 * Melting and drying of an aircraft in a hangar as one system: snow and skin warm by air, fan, radiation and condensing
 * vapour; melt water runs off or stays as a film; film, floor and gaps dry into the hangar's air, whose humidity they
 * raise and air change and cold surfaces lower.
 */
export function thawAndDry(request: ThawRequest): ThawReport {
  check(request);
  const { ensemble, duration, hangar, pressure } = request;
  const draws = drawsOf(NAMES, ensemble, "thaw and dry");
  const time = evenTimes(0, duration, SAMPLING);
  const conditions = { tempFilm: 0.5 * (Math.max(263.15, request.tempAircraft) + hangar.tempSet), pressure };
  const runs: ThawRun[] = [];
  for (let m = 0; m < draws.members; m++) {
    const factor = (name: keyof typeof LOG_SD) => Math.exp(LOG_SD[name] * draws[name][m]);
    const model = thawModel({
      ...request,
      snow: request.snow * Math.exp(SNOW_MASS_LOG_SD * draws.snow[m]),
      film: request.film * factor("film"),
      gap: {
        ...request.gap,
        depth: Math.min(0.1, request.gap.depth * factor("gapDepth")),
        fill: Math.min(1, request.gap.fill * factor("gapFill")),
      },
      relativeHumidity: request.relativeHumidity,
      tempInside: request.tempInside ?? request.tempAircraft,
      conditions,
      transferFactor: Math.exp(TRANSFER_LOG_SD * draws.transfer[m]),
      evaporationDraw: draws.evaporation[m],
      airChangeFactor: factor("airChange"),
    });
    const solution = integrate({
      initial: model.initial,
      scales: model.scales,
      sums: model.sums,
      start: 0,
      sampleTimes: time,
      derivative: model.derivative,
    });
    if (solution.status !== "completed") {
      return { status: solution.status, remedy: solution.remedy, result: undefined };
    }
    runs.push({ model, samples: solution.samples });
  }
  const statistics = thawStatistics(time, runs);
  return {
    status: "completed",
    remedy: "",
    result: {
      ...statistics,
      melt: meltAtStart(request, conditions),
      members: draws.members,
      cautions: thawCautions(request, statistics),
      assumptions: thawAssumptions(request),
    },
  };
}

function check(request: ThawRequest): void {
  const { gap, hangar, outside } = request;
  requireGap(gap);
  requireHangar(hangar, outside);
  requireInside("area", request.area, 0.5, 1000, "m2");
  requireInside("snow", request.snow, 0, 500, "kg/m2");
  requireInside("brushable", request.brushable ?? 0, 0, request.snow, "kg/m2");
  requireInside("film", request.film, 0, 2, "kg/m2");
  const warmest = request.snow > 0 ? KELVIN_OF_ZERO_CELSIUS : 313.15;
  const lying = request.snow > 0 ? "K with snow on it" : "K";
  requireInside("tempAircraft", request.tempAircraft, 213.15, warmest, lying);
  if (request.tempInside !== undefined) requireInside("tempInside", request.tempInside, 213.15, 313.15, "K");
  if (request.relativeHumidity !== undefined) {
    requireInside("relativeHumidity", request.relativeHumidity, 0, 1, "");
  }
  requireInside("pressure", request.pressure, 5e4, 1.1e5, "Pa");
  requireInside("duration", request.duration, 600, 14 * 86_400, "s");
}
