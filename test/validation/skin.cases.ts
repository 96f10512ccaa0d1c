import { airFilm } from "../../src/airframe/air-film.js";
import { vapourPerHeatTransfer } from "../../src/airframe/evaporation.js";
import { PANELS, type Panel } from "../../src/airframe/index.js";
import { integrate } from "../../src/airframe/integrate.js";
import { nightSkyEmissivity, nightSkyTemperature } from "../../src/airframe/night-sky.js";
import { EMISSIVITY_WET } from "../../src/airframe/panel-faces.js";
import { panelModel } from "../../src/airframe/panel-model.js";
import { PANEL_ROW, PANEL_SUMS, panelScales } from "../../src/airframe/panel-rows.js";
import {
  radiationCoefficient,
  STEFAN_BOLTZMANN,
  tempDewPointFromVapourPressure,
  vapourPressureFromRelativeHumidity,
} from "../../src/properties/index.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR } from "../../src/units/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const PAINTED = PANELS["aluminium-painted"];
const PRESSURE = 101_325;
/** Nothing behind it: snow on the ground, a plate on foam. */
const INSULATED = { heatCapacity: 1000, coefficientUpper: 0, coefficientLower: 0 };
const SNOW: Panel = { ...PAINTED, emissivity: EMISSIVITY_WET, inside: INSULATED };
const BOX: Panel = { ...PAINTED, emissivity: 0.95, chord: 0.6, span: 0.6 };
const PLATE: Panel = { ...PAINTED, chord: 0.5, span: 1 };

interface Night {
  /** [°C] air */
  readonly t: number;
  readonly relativeHumidity: number;
  /** [m/s] at the skin */
  readonly wind: number;
}

/** [K] that the upper skin lies below the air after a night under a black body of `tempAbove` [K]. */
function below(panel: Panel, { t, relativeHumidity, wind }: Night, tempAbove: number): number {
  const tempAir = kelvinFromCelsius(t);
  const conditions = { tempFilm: tempAir, pressure: PRESSURE };
  const perHeat = vapourPerHeatTransfer(conditions);
  const model = panelModel({
    panel,
    conditions,
    transferFactor: 1,
    evaporation: (convection) => perHeat * convection,
    waterHeld: 0.2,
  });
  const pressureVapour = vapourPressureFromRelativeHumidity(relativeHumidity, tempAir);
  const around = { tempAir, pressureVapour, windSpeed: wind, tempAbove, tempBelow: tempAir };
  const { samples } = integrate({
    initial: model.initial(tempAir, tempAir, {}),
    scales: panelScales(model.size),
    sums: PANEL_SUMS,
    start: 0,
    sampleTimes: Float64Array.of(0, 8 * SECONDS_OF_HOUR),
    derivative: (_, y, dydt) => model.writeRates(y, around, dydt),
  });
  return tempAir - samples[model.size + PANEL_ROW.tempUpper];
}

function belowSky(panel: Panel, night: Night, cloud: number): number {
  const tempAir = kelvinFromCelsius(night.t);
  const vapour = vapourPressureFromRelativeHumidity(night.relativeHumidity, tempAir);
  const dewPoint = tempDewPointFromVapourPressure(vapour);
  const { middle } = nightSkyEmissivity(tempAir, dewPoint, cloud, PRESSURE);
  return below(panel, night, nightSkyTemperature(middle, tempAir));
}

/** [°C] air, relative humidity, [W/m2] measured long-wave, [m/s] wind, [°C] measured skin: days' means. */
const SNOW_SKIN = [
  [-5.9, 0.9, 214, 1.1, -15.3],
  [-2.8, 0.59, 212, 0.5, -15.4],
  [-2.9, 0.41, 210, 0.5, -16.1],
  [-10.4, 0.77, 224, 1.3, -13.5],
] as const;

/** [m] side and [W] behind the heated one of two plates, and [K] that it was warmer. */
const HEATED = { side: 0.305, power: 9.5, horizontal: 8.3, vertical: 11 } as const;
const STICKNEY = "Stickney and Baer 2002: two aluminium plates of 12 in outdoors, 9.5 W behind one";

export const SKIN_VALIDATION: ValidationGroup = {
  title: "skins under the night sky",
  part: "physics",
  cases: [
    ...SNOW_SKIN.map(
      ([t, relativeHumidity, longWave, wind, skin]): ValidationCase => ({
        name: `snow's skin below the air, ${t} °C, ${100 * relativeHumidity} %, ${longWave} W/m2 from above, ${wind} m/s`,
        source: "Morin et al., Earth Syst. Sci. Data 4 (2012) 13: Col de Porte, days' means",
        mark: "published",
        unit: "K",
        expected: t - skin,
        tolerance: 2.5,
        toleranceReason: "a day's mean, with what sun the snow takes and what the ground gives",
        got: () => below(SNOW, { t, relativeHumidity, wind }, (longWave / STEFAN_BOLTZMANN) ** 0.25),
      }),
    ),
    ...[0.3, 1, 2].map((wind) =>
      range(
        `painted thin plate below the air on a humid summer night (22 °C, 90 %), ${wind} m/s`,
        "Byun 2004, abstract: at most 5 K",
        [0, 5],
        () => belowSky(PLATE, { t: 22, relativeHumidity: 0.9, wind }, 0),
      ),
    ),
    ...[0.5, 1, 2].flatMap((wind) => [
      range(
        `black aluminium on an air box below the air on a clear night (15 °C, 60 %), ${wind} m/s`,
        "IMECE 2013, abstract: 3 to 8 K",
        [3, 8],
        () => belowSky(BOX, { t: 15, relativeHumidity: 0.6, wind }, 0),
      ),
      range(
        `black aluminium on an air box below the air, heavy overcast (15 °C, 70 %), ${wind} m/s`,
        "IMECE 2013, abstract: 1 to 4 K",
        [1, 4],
        () => belowSky(BOX, { t: 15, relativeHumidity: 0.7, wind }, 1),
      ),
    ]),
    heatedPlate("horizontal", "up", HEATED.side / 4),
    heatedPlate("vertical", "side", HEATED.side),
  ],
};

/** A published span, as its middle and half its width. */
function range(
  name: string,
  source: string,
  [least, most]: readonly [number, number],
  got: () => number,
): ValidationCase {
  return {
    name,
    source,
    mark: "published",
    unit: "K",
    expected: (least + most) / 2,
    tolerance: (most - least) / 2,
    toleranceReason: "the published span; the nights' wind and humidity are not told",
    got,
  };
}

/** Convection and radiation together, from the power and how much warmer the heated plate is. */
function heatedPlate(
  lie: "horizontal" | "vertical",
  facing: "up" | "side",
  stillAir: number,
): ValidationCase {
  const conditions = { tempFilm: kelvinFromCelsius(10), pressure: PRESSURE };
  const film = airFilm(facing, { alongWind: HEATED.side, stillAir }, conditions);
  const at = (wind: number) => film(-2, wind) + radiationCoefficient(283.15, 283.15, 0.9);
  return {
    name: `convection and radiation of a ${lie} plate outdoors at night`,
    source: STICKNEY,
    mark: "published",
    unit: "W/(m2 K)",
    expected: HEATED.power / HEATED.side ** 2 / HEATED[lie],
    tolerance: 3.5,
    toleranceReason:
      "wind is not told: 0.2 m/s and 2 m/s are 3.5 W/(m2 K) either side of 0.8 m/s, taken here",
    got: () => at(0.8),
  };
}
