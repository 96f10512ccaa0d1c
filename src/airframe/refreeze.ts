import { type Finding, finding } from "../findings/index.js";
import { humidityRatio, tempWetBulb, vapourPressureFromDewPoint } from "../properties/index.js";
import type { SolveStatus } from "../solver/index.js";
import { KELVIN_OF_ZERO_CELSIUS, requireInside } from "../units/index.js";
import type { WeatherMoment } from "../weather/index.js";
import { requireMoistAir } from "./argument.js";
import { AIRFRAME_CAUTIONS, type Caution } from "./caution.js";
import { type Climb, coldestBelow, freezingLevel, requireClimb, temperatureProfile } from "./climb.js";
import { drawsOf, type Ensemble, type TimeBand } from "./ensemble.js";
import { type Gap, requireGap } from "./gap.js";
import type { FrostVerdict } from "./night-frost.js";
import { isOverFuel, type Panel } from "./panel.js";
import { type RefreezeRun, refreezeRun, refreezeTimes } from "./refreeze-run.js";
import { refreezeStatistics } from "./refreeze-statistics.js";
import { requireSite, type WingSite } from "./wing-weather.js";

export interface RefreezeRequest {
  readonly panel: Panel;
  readonly gap: Gap;
  /** [K] at roll-out: skin, what is inside the wing (fuel), fittings; the last two as the skin when absent. */
  readonly tempSkin: number;
  readonly tempInside?: number;
  readonly tempGap?: number;
  /** [kg/m2] of water still on the skin; water still in the gaps is the fill of `gap`. */
  readonly film: number;
  /** Weather outside, constant, and where the aircraft stands. */
  readonly outside: WeatherMoment;
  readonly falling: "nothing" | "snow" | "rain";
  readonly site: WingSite;
  /** [s] from roll-out to take-off. */
  readonly timeOutside: number;
  readonly climb?: Climb;
  /** Absent: one member, everything in the middle. */
  readonly ensemble?: Ensemble;
}

export interface RefreezeReport {
  /** "completed", or why the calculation stopped; then `remedy` says what to do and there are no results. */
  readonly status: SolveStatus;
  readonly remedy: string;
  readonly result: RefreezeResult | undefined;
}

/** Chance that residual water has frozen, and the word for the worse of the two. */
export interface RefreezeChance {
  readonly verdict: FrostVerdict;
  /** [0..1] at take-off, and after the climb and half an hour level (the same without a climb). */
  readonly atTakeOff: number;
  readonly inClimb: number;
}

export interface RefreezeResult {
  /** [s] from roll-out until upper skin and fittings are at 0 °C; looked at for six hours past take-off. */
  readonly skinFreezing: TimeBand;
  readonly gapFreezing: TimeBand;
  readonly film: RefreezeChance;
  readonly gaps: RefreezeChance;
  /** Whether what falls meets a skin above 0 °C at roll-out, to melt and then freeze on; until `skinFreezing`. */
  readonly meltsSnow: boolean;
  /** [s] with the doors open until the skin is at 0 °C; only with something falling. */
  readonly coolIndoors: TimeBand | undefined;
  /** [K] wet bulb outside: a wet skin in wind settles there, below 0 °C even in air a little above. */
  readonly tempWetBulb: number;
  readonly climb: ClimbOutlook | undefined;
  readonly members: number;
  readonly cautions: readonly Caution[];
  /** What was taken for granted. */
  readonly assumptions: readonly Finding[];
}

/** The air on the way up. */
export interface ClimbOutlook {
  /** [m above sea level] where the air is at 0 °C; the aerodrome in frost, undefined when it stays warmer up to the cruise. */
  readonly freezingLevel: number | undefined;
  /** [K] */
  readonly tempCruise: number;
  readonly tempColdest: number;
  /** [s] from take-off until the fittings are at 0 °C. */
  readonly gapFreezing: TimeBand;
}

/** Whether water left after thawing freezes again outside or in the climb, and whether falling snow would melt on the skin. */
export function refreezeCheck(request: RefreezeRequest): RefreezeReport {
  check(request);
  const { outside, site, climb, ensemble, falling } = request;
  const draws = drawsOf(["transfer", "dewPoint", "sky"], ensemble, "refreeze");
  const profile = climb && temperatureProfile(climb, outside.tempAir);
  const times = refreezeTimes(request);
  const runs: RefreezeRun[] = [];
  for (let m = 0; m < draws.members; m++) {
    const draw = { transfer: draws.transfer[m], dewPoint: draws.dewPoint[m], sky: draws.sky[m] };
    const run = refreezeRun(request, times, profile, draw);
    for (const solution of [run.outdoors, run.climb, run.indoors]) {
      if (solution !== undefined && solution.status !== "completed") {
        return { status: solution.status, remedy: solution.remedy, result: undefined };
      }
    }
    runs.push(run);
  }
  const { gapFreezingInClimb, ...statistics } = refreezeStatistics(times, runs);
  const ratio = humidityRatio(vapourPressureFromDewPoint(outside.tempDewPoint), site.pressure);
  return {
    status: "completed",
    remedy: "",
    result: {
      ...statistics,
      meltsSnow: falling !== "nothing" && request.tempSkin > KELVIN_OF_ZERO_CELSIUS,
      tempWetBulb: tempWetBulb(outside.tempAir, ratio, site.pressure),
      climb: climb &&
        profile && {
          freezingLevel: freezingLevel(profile, climb.cruiseAltitude),
          tempCruise: profile.tempAt(climb.cruiseAltitude),
          tempColdest: coldestBelow(profile, climb.cruiseAltitude),
          gapFreezing: gapFreezingInClimb,
        },
      members: draws.members,
      cautions: cautionsFor(request, climb && profile && coldestBelow(profile, climb.cruiseAltitude)),
      assumptions: assumptionsFor(request),
    },
  };
}

function check(request: RefreezeRequest): void {
  const { outside, climb } = request;
  requireGap(request.gap);
  requireSite(request.site);
  requireMoistAir("outside", outside.tempAir, outside.tempDewPoint);
  requireInside("outside.windSpeed", outside.windSpeed, 0, 80, "m/s");
  requireInside("outside.cloudCover", outside.cloudCover, 0, 1, "");
  for (const name of ["tempSkin", "tempInside", "tempGap"] as const) {
    const value = request[name];
    if (value !== undefined) requireInside(name, value, 213.15, 323.15, "K");
  }
  requireInside("film", request.film, 0, 2, "kg/m2");
  requireInside("timeOutside", request.timeOutside, 0, 86_400, "s");
  if (!["nothing", "snow", "rain"].includes(request.falling)) {
    throw new RangeError(`unknown falling: ${request.falling} (expected nothing, snow or rain)`);
  }
  if (climb !== undefined) requireClimb(climb);
}

/** @param tempColdest [K] of the air in the climb, where there is one */
function cautionsFor(
  { falling, panel, tempInside, tempSkin }: RefreezeRequest,
  tempColdest: number | undefined,
): Caution[] {
  const c = AIRFRAME_CAUTIONS;
  const falls = falling !== "nothing";
  const warmWing = isOverFuel(panel) && (tempInside ?? tempSkin) > KELVIN_OF_ZERO_CELSIUS;
  return [
    c.dryBeforeOut,
    c.hinges,
    ...(falls && tempSkin > KELVIN_OF_ZERO_CELSIUS ? [c.coolBeforeSnow] : []),
    ...(falls && warmWing ? [c.warmFuel] : []),
    ...(falling === "rain" ? [c.clearIce] : []),
    ...(tempColdest !== undefined && tempColdest < KELVIN_OF_ZERO_CELSIUS ? [c.climbColder] : []),
    c.clean,
    c.inspect,
  ];
}

function assumptionsFor({ panel, gap, tempInside, tempGap, climb }: RefreezeRequest): Finding[] {
  return [
    finding("panel-taken", { name: panel.name, origin: panel.origin }),
    finding("gap-taken", { name: gap.name, origin: gap.origin }),
    finding("weather-constant-no-sun", {}),
    ...(tempInside === undefined ? [finding("inside-as-skin", {})] : []),
    ...(tempGap === undefined ? [finding("fittings-as-skin", {})] : []),
    ...(climb === undefined
      ? []
      : [
          ...(climb.sounding === undefined ? [finding("standard-lapse", {})] : []),
          finding("climb-damp-no-cloud", {}),
        ]),
    finding("no-supercooling", {}),
  ];
}
