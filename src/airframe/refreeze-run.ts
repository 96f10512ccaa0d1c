import { vapourPressureFromDewPoint } from "../properties/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import type { WeatherMoment, WeatherSeries } from "../weather/index.js";
import { TRANSFER_LOG_SD } from "./air-film.js";
import type { Climb, TemperatureProfile } from "./climb.js";
import { evenTimes, type SmallSolution } from "./integrate.js";
import { type OpenAirModel, openAirModel } from "./open-air.js";
import type { Surroundings } from "./panel-rows.js";
import type { RefreezeRequest } from "./refreeze.js";
import { saturationPressureAtSurface } from "./saturation.js";
import { wingWeather } from "./wing-weather.js";

/** Standard normals of one member. */
export interface RefreezeDraw {
  readonly transfer: number;
  readonly dewPoint: number;
  readonly sky: number;
}

/** One member's three stretches: outside, in the climb, and what opening the doors first would do. */
export interface RefreezeRun {
  readonly model: OpenAirModel;
  readonly outdoors: SmallSolution;
  readonly climb: SmallSolution | undefined;
  readonly indoors: SmallSolution | undefined;
}

/** Sample times of the stretches [s]: from roll-out, from take-off. */
export interface RefreezeTimes {
  readonly outdoors: Float64Array;
  /** Index in `outdoors` of the take-off. */
  readonly takeOff: number;
  readonly climb: Float64Array;
}

/** [s] looked ahead outside, and level flight after the climb. */
const HORIZON = 6 * SECONDS_OF_HOUR;
const LEVEL = 1800;
/** [s] between samples. */
const SAMPLING = 60;
/** [m/s] air over a wing behind open doors. Project judgement. */
const DOOR_DRAUGHT = 0.5;

export function refreezeTimes({ timeOutside, climb }: RefreezeRequest): RefreezeTimes {
  const before = evenTimes(0, Math.max(timeOutside, SAMPLING), SAMPLING);
  const after = evenTimes(before[before.length - 1], HORIZON, SAMPLING).subarray(1);
  const outdoors = Float64Array.of(...before, ...after);
  return {
    outdoors,
    takeOff: timeOutside === 0 ? 0 : before.length - 1,
    climb: climb === undefined ? new Float64Array(1) : evenTimes(0, climbing(climb) + LEVEL, SAMPLING),
  };
}

/** One member outside, in the climb and, when something falls, behind open doors. */
export function refreezeRun(
  request: RefreezeRequest,
  times: RefreezeTimes,
  profile: TemperatureProfile | undefined,
  draw: RefreezeDraw,
): RefreezeRun {
  const { panel, gap, outside, site, climb, falling, tempSkin } = request;
  const model = openAirModel({
    panel,
    gap,
    conditions: { tempFilm: 0.5 * (outside.tempAir + tempSkin), pressure: site.pressure },
    transferFactor: Math.exp(TRANSFER_LOG_SD * draw.transfer),
  });
  const temps = { skin: tempSkin, inside: request.tempInside ?? tempSkin, gap: request.tempGap ?? tempSkin };
  const initial = model.initial(temps, request.film);
  const outdoors = model.run(initial, times.outdoors, wingWeather(constant(outside), site, draw).write);
  const leaving = times.takeOff * model.rows;
  const atTakeOff = outdoors.samples.slice(leaving, leaving + model.rows);
  const flown = climb !== undefined && profile !== undefined && outdoors.status === "completed";
  return {
    model,
    outdoors,
    climb: flown
      ? model.run(atTakeOff, times.climb, alongClimb(climb, profile, outside), bendsOf(climb, profile))
      : undefined,
    indoors:
      falling === "nothing"
        ? undefined
        : model.run(initial, times.outdoors, behindOpenDoors(outside, tempSkin)),
  };
}

function climbing(climb: Climb): number {
  return (climb.cruiseAltitude - climb.elevation) / climb.rate;
}

function bendsOf(climb: Climb, profile: TemperatureProfile): number[] {
  const end = climbing(climb);
  const corners = profile.altitude.map((altitude) => (altitude - climb.elevation) / climb.rate);
  return [...corners.filter((t) => t < end), end];
}

/** Air along the climb, then level: no drier than the ground's air, and never above saturation; sky and sun left out. */
function alongClimb(climb: Climb, profile: TemperatureProfile, outside: WeatherMoment) {
  const pressureGround = vapourPressureFromDewPoint(outside.tempDewPoint);
  return (t: number, around: Surroundings) => {
    const altitude = Math.min(climb.cruiseAltitude, climb.elevation + climb.rate * t);
    const tempAir = profile.tempAt(altitude);
    around.tempAir = tempAir;
    around.pressureVapour = Math.min(pressureGround, saturationPressureAtSurface(tempAir));
    around.windSpeed = climb.airspeed;
    around.tempAbove = tempAir;
    around.tempBelow = tempAir;
  };
}

/** Outside air over the wing while walls and roof are still half warm. */
function behindOpenDoors(outside: WeatherMoment, tempSkin: number) {
  const tempShell = 0.5 * (outside.tempAir + tempSkin);
  const pressureVapour = vapourPressureFromDewPoint(outside.tempDewPoint);
  return (_: number, around: Surroundings) => {
    around.tempAir = outside.tempAir;
    around.pressureVapour = pressureVapour;
    around.windSpeed = DOOR_DRAUGHT;
    around.tempAbove = tempShell;
    around.tempBelow = tempShell;
  };
}

function constant(moment: WeatherMoment): WeatherSeries {
  return {
    time: Float64Array.of(0),
    tempAir: Float64Array.of(moment.tempAir),
    windSpeed: Float64Array.of(moment.windSpeed),
    tempDewPoint: Float64Array.of(moment.tempDewPoint),
    cloudCover: Float64Array.of(moment.cloudCover),
    origin: "constant",
    assumptions: [],
  };
}
