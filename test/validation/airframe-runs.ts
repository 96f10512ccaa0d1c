import { airFilm } from "../../src/airframe/air-film.js";
import { timeLastAbove } from "../../src/airframe/crossing.js";
import { vapourPerHeatTransfer } from "../../src/airframe/evaporation.js";
import { PANELS, type Panel } from "../../src/airframe/index.js";
import { evenTimes, integrate } from "../../src/airframe/integrate.js";
import { panelFaceSize } from "../../src/airframe/panel-faces.js";
import { panelModel } from "../../src/airframe/panel-model.js";
import { PANEL_ROW, PANEL_SUMS, panelScales, type Surroundings } from "../../src/airframe/panel-rows.js";
import {
  evaporationFluxAshraePool,
  humidityRatio,
  latentHeatVaporisation,
  saturationPressureOverLiquid,
  tempWetBulb,
} from "../../src/properties/index.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR } from "../../src/units/index.js";

const PRESSURE = 101_325;

/** An upper skin 1 m along the wind with nothing inside, so that only its own face counts. */
export const LONE_SKIN: Panel = {
  ...PANELS["aluminium-painted"],
  chord: 1,
  span: 50,
  inside: { heatCapacity: 1000, coefficientUpper: 0, coefficientLower: 0 },
};

interface SkinRun {
  readonly ice: number;
  readonly water: number;
  readonly temp: number;
  readonly around: Surroundings;
  /** Of the vapour; and on the convection coefficient. */
  readonly vapour: number;
  readonly transferFactor: number;
  readonly hours: number;
}

/** [h] until the upper skin carries less than 5 g/m2, and its temperature [K] half way to that. */
function bareAfter({ ice, water, temp, around, vapour, transferFactor, hours }: SkinRun) {
  const conditions = { tempFilm: around.tempAir, pressure: PRESSURE };
  const perHeat = vapour * vapourPerHeatTransfer(conditions);
  const model = panelModel({
    panel: LONE_SKIN,
    conditions,
    transferFactor,
    evaporation: (convection) => perHeat * convection,
    waterHeld: water,
  });
  const times = evenTimes(0, hours * SECONDS_OF_HOUR, 300);
  const { samples } = integrate({
    initial: model.initial(temp, temp, { ice, water }),
    scales: panelScales(model.size),
    sums: PANEL_SUMS,
    start: 0,
    sampleTimes: times,
    derivative: (_, y, dydt) => model.writeRates(y, around, dydt),
  });
  const at = (s: number, row: number) => samples[s * model.size + row];
  const mass = times.map((_, s) => at(s, PANEL_ROW.iceUpper) + at(s, PANEL_ROW.waterUpper));
  const time = timeLastAbove(times, mass, 0.005);
  const half = times.findLastIndex((t) => t <= 0.5 * time);
  return { hours: time / SECONDS_OF_HOUR, temp: at(half, PANEL_ROW.tempUpper) };
}

/** [h] to melt `mass` [kg/m2] of snow at 0 °C in air at `t` [°C] whose vapour neither condenses nor evaporates. */
export function hoursToMelt(mass: number, t: number, windSpeed: number): number {
  const tempAir = kelvinFromCelsius(t);
  return bareAfter({
    ice: mass,
    water: 0,
    temp: kelvinFromCelsius(0),
    around: { tempAir, pressureVapour: 611, windSpeed, tempAbove: tempAir, tempBelow: tempAir },
    vapour: 0,
    transferFactor: 1,
    hours: 12,
  }).hours;
}

/**
 * A film of 0.2 mm in air at `t` [°C], with no heat but the air's: surroundings at the wet bulb. Convection is scaled so
 * that the analogy gives the evaporation of the pool equation.
 */
export function dryingFilm(t: number, relativeHumidity: number, windSpeed: number) {
  const tempAir = kelvinFromCelsius(t);
  const pressureVapour = relativeHumidity * saturationPressureOverLiquid(tempAir);
  const bulb = tempWetBulb(tempAir, humidityRatio(pressureVapour, PRESSURE), PRESSURE);
  const conditions = { tempFilm: tempAir, pressure: PRESSURE };
  const film = airFilm("up", panelFaceSize(LONE_SKIN), conditions);
  const pool = evaporationFluxAshraePool(1, 0, windSpeed, latentHeatVaporisation(bulb));
  const run = bareAfter({
    ice: 0,
    water: 0.2,
    temp: bulb,
    around: { tempAir, pressureVapour, windSpeed, tempAbove: bulb, tempBelow: bulb },
    vapour: 1,
    transferFactor: pool / (vapourPerHeatTransfer(conditions) * film(bulb - tempAir, windSpeed)),
    hours: 10,
  });
  return { ...run, bulb };
}
