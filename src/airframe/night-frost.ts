import { type Finding, finding } from "../findings/index.js";
import type { SolveStatus } from "../solver/index.js";
import { requireInside } from "../units/index.js";
import { cutSeries, type WeatherSeries } from "../weather/index.js";
import { TRANSFER_LOG_SD } from "./air-film.js";
import { AIRFRAME_CAUTIONS, type Caution } from "./caution.js";
import { type Band, type BandSeries, drawsOf, type Ensemble, type TimeBand } from "./ensemble.js";
import { vapourPerHeatTransfer } from "./evaporation.js";
import { frostStatistics } from "./frost-statistics.js";
import { evenTimes, integrate } from "./integrate.js";
import { isOverFuel, type Panel, type WingCover } from "./panel.js";
import { panelModel } from "./panel-model.js";
import { PANEL_SUMS, panelScales } from "./panel-rows.js";
import { requireSite, requireWeather, type WingSite, weatherMembers, wingWeather } from "./wing-weather.js";

export interface FrostRequest {
  readonly weather: WeatherSeries;
  /** [s since epoch] and [s]: the night to look at, up to the wanted departure. */
  readonly start: number;
  readonly duration: number;
  readonly site: WingSite;
  readonly panel: Panel;
  readonly cover?: WingCover;
  /** [K] of the skin and of what is inside (fuel) at the start; the air's when absent. */
  readonly tempSkin?: number;
  readonly tempInside?: number;
  /** Absent: one member, everything in the middle. */
  readonly ensemble?: Ensemble;
}

/** "none" is the smallest word for the chance, never a clearance. */
export type FrostVerdict = "none" | "possible" | "likely";

/** Frost on one face of the skin. */
export interface FaceFrost {
  readonly verdict: FrostVerdict;
  /** [0..1] of the members with frost at any time, and at the end. */
  readonly chance: number;
  readonly chanceAtEnd: number;
  /** [s since epoch] first frost. */
  readonly first: TimeBand;
  /** [s] with frost on the face. */
  readonly duration: Band;
  /** [kg/m2] of frost and of dew at the end, and the most frost of the night. */
  readonly frostAtEnd: Band;
  readonly dewAtEnd: Band;
  readonly mostFrost: Band;
  /** [K] most that the skin falls below the air. */
  readonly mostBelowAir: Band;
}

export interface FrostReport {
  /** "completed", or why the calculation stopped; then `remedy` says what to do and there are no results. */
  readonly status: SolveStatus;
  readonly remedy: string;
  readonly result: FrostResult | undefined;
}

export interface FrostResult {
  readonly upper: FaceFrost;
  readonly lower: FaceFrost;
  readonly members: number;
  readonly series: FrostSeries;
  readonly cautions: readonly Caution[];
  /** What was taken for granted. */
  readonly assumptions: readonly Finding[];
}

/** Every intermediate over the night. */
export interface FrostSeries {
  /** [s since epoch] */
  readonly time: Float64Array;
  /** [K] */
  readonly tempAir: BandSeries;
  /** [K] below which a surface collects frost (or dew above 0 °C). */
  readonly tempCondensation: BandSeries;
  readonly tempSky: BandSeries;
  /** [m/s] at the wing */
  readonly windSpeed: BandSeries;
  readonly tempUpper: BandSeries;
  readonly tempLower: BandSeries;
  readonly tempInside: BandSeries;
  /** [kg/m2] */
  readonly iceUpper: BandSeries;
  readonly waterUpper: BandSeries;
  readonly iceLower: BandSeries;
  readonly waterLower: BandSeries;
  /** [kg/m2] on the outside of the cover, when there is one. */
  readonly iceCover: BandSeries | undefined;
}

/** [s] between samples. */
const SAMPLING = 600;
/** [kg/m2] of dew a wing holds before it runs off, 0.2 mm. Project judgement. */
const DEW_HELD = 0.2;

/**
 * Frost and dew on a wing through a night: both skins cool to sky, ground and air, and collect vapour by the heat-mass
 * analogy wherever they are colder than the frost point (dew point above 0 °C); dew that is cooled freezes. Sunshine,
 * falling snow, freezing rain and drifting fog are not counted.
 */
export function nightFrost(request: FrostRequest): FrostReport {
  const { panel, cover, site, ensemble, start, duration } = request;
  requireSite(site);
  requireInside("duration", duration, 600, 5 * 86_400, "s");
  requireInside("start", start, 0, 1e11, "s since epoch");
  if (request.tempSkin !== undefined) requireInside("tempSkin", request.tempSkin, 203.15, 333.15, "K");
  if (request.tempInside !== undefined) requireInside("tempInside", request.tempInside, 203.15, 333.15, "K");
  requireWeather(request.weather);
  const cut = cutSeries(request.weather, start, start + duration);
  if (!cut.ok) {
    const { place, expected, received } = cut.issues[0]!;
    throw new RangeError(`invalid start or duration: ${place} ${received} (expected ${expected})`);
  }
  const weather = cut.series;
  const draws = drawsOf(["dewPoint", "sky", "transfer"], ensemble, "night frost");
  const around = { tempAir: 0, pressureVapour: 0, windSpeed: 0, tempAbove: 0, tempBelow: 0 };
  const conditions = { tempFilm: mean(weather.tempAir), pressure: site.pressure };
  const perHeat = vapourPerHeatTransfer(conditions);
  const time = evenTimes(start, duration, SAMPLING);
  const states: Float64Array[] = [];
  const winds = weatherMembers(weather, ensemble).map((member, m) =>
    wingWeather(member, site, { dewPoint: draws.dewPoint[m], sky: draws.sky[m] }),
  );
  for (const [m, wing] of winds.entries()) {
    const model = panelModel({
      panel,
      cover,
      conditions,
      transferFactor: Math.exp(TRANSFER_LOG_SD * draws.transfer[m]),
      evaporation: (convection) => perHeat * convection,
      waterHeld: DEW_HELD,
    });
    wing.write(start, around);
    const tempSkin = request.tempSkin ?? around.tempAir;
    const solution = integrate({
      initial: model.initial(tempSkin, request.tempInside ?? tempSkin, {}),
      scales: panelScales(model.size),
      sums: PANEL_SUMS,
      start,
      sampleTimes: time,
      bends: wing.bends,
      derivative(t, y, dydt) {
        wing.write(t, around);
        model.writeRates(y, around, dydt);
      },
    });
    if (solution.status !== "completed") {
      return { status: solution.status, remedy: solution.remedy, result: undefined };
    }
    states.push(solution.samples);
  }
  const statistics = frostStatistics(time, states, winds, cover !== undefined);
  return {
    status: "completed",
    remedy: "",
    result: {
      ...statistics,
      members: draws.members,
      cautions: cautionsFor(request, statistics),
      assumptions: assumptionsFor(request, weather),
    },
  };
}

/** To look is asked for at any chance; what frost does stands beside a chance of it. */
function cautionsFor(
  { cover, panel }: FrostRequest,
  { upper, lower }: Pick<FrostResult, "upper" | "lower">,
): Caution[] {
  const { clean, inspect, rough, coverSweats, underTank } = AIRFRAME_CAUTIONS;
  return [
    inspect,
    ...(upper.chance + lower.chance > 0 ? [clean, rough] : []),
    ...(cover === undefined ? [] : [coverSweats]),
    ...(isOverFuel(panel) && lower.chance > 0 ? [underTank] : []),
  ];
}

function assumptionsFor(
  { panel, cover, tempSkin, tempInside, site }: FrostRequest,
  weather: WeatherSeries,
): Finding[] {
  return [
    finding("panel-taken", { name: panel.name, origin: panel.origin }),
    ...(cover === undefined ? [] : [finding("wing-cover-taken", { origin: cover.origin })]),
    ...(tempSkin === undefined ? [finding("skin-at-air", {})] : []),
    ...(tempInside === undefined ? [finding("inside-as-skin", {})] : []),
    ...(site.skyView < 1 ? [] : [finding("open-sky", {})]),
    finding("ground-at-air", {}),
    finding("no-sun-or-snowfall", {}),
    ...weather.assumptions.map(({ text }) => text),
  ];
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
