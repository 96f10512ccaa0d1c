import { nightSkyEmissivity } from "../../src/airframe/night-sky.js";
import {
  cloudFactorWalton,
  STEFAN_BOLTZMANN,
  skyEmissivityIdsoJackson,
  skyEmissivityNight,
  skyEmissivityPrata,
  skyTemperature,
  tempDewPointFromVapourPressure,
  vapourPressureFromRelativeHumidity,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const APART = "formula evaluated apart";

/** [°C] air, relative humidity [1], [Pa], measured [W/m2] from a clear sky: hours' means of one night. */
const ALAMOSA = [
  [-9.84, 0.585, 77_346, 186.1],
  [-14.78, 0.749, 77_487, 179.1],
  [-17.88, 0.753, 77_541, 170.8],
  [-22.67, 0.761, 77_614, 165.6],
] as const;

/** The clearest days' means. */
const COL_DE_PORTE = [
  [-2.8, 0.59, 86_500, 212],
  [-2.9, 0.41, 86_500, 210],
  [-5.9, 0.9, 86_500, 214],
] as const;

export const RADIATION_SKY_VALIDATION: ValidationGroup = {
  title: "sky",
  part: "physics",
  cases: [
    ...ALAMOSA.map(
      (one): ValidationCase => ({
        ...longWave(one),
        source: "NOAA SURFRAD, Alamosa, 37.70 N, 2317 m, 1 January 2016 UTC (slv16001)",
        tolerance: 5,
        toleranceReason: "the radiometer's own error; the two forms were chosen with this night in view",
        isCalibration: true,
      }),
    ),
    ...COL_DE_PORTE.map(
      (one): ValidationCase => ({
        ...longWave(one),
        source:
          "Morin et al., Earth Syst. Sci. Data 4 (2012) 13: Col de Porte, 1325 m, means of clear winter days",
        tolerance: 12,
        toleranceReason: "a day's mean with sun in it; some cloud would add 5 to 10 W/m2",
      }),
    ),
    emissivity("Prata 1996", "air and dew point 0 °C", 0.74477, () => skyEmissivityPrata(273.15, 273.15)),
    emissivity("Idso and Jackson 1969", "air -20.15 °C", 0.80872, () => skyEmissivityIdsoJackson(253)),
    {
      name: "temperature of a clear sky as a black body, air 20 °C, dew point 10 °C, below the air",
      source: "mean of Berdahl and Martin 1984, Li et al. 2017, Clark and Allen 1978: emissivity 0.802",
      mark: "computed from the published formula",
      unit: "K",
      expected: 293.15 * (1 - 0.802 ** 0.25),
      tolerance: 4,
      toleranceReason: "the three forms differ by 0.04 in emissivity, 4 K of sky",
      got: () => 293.15 - skyTemperature(293.15, 283.15, 0),
    },
    ...(
      [
        [0, 1],
        [2, 1.03304],
        [5, 1.0595],
        [8, 1.09856],
        [10, 1.154],
      ] as const
    ).map(
      ([tenths, expected]): ValidationCase => ({
        name: `cloud factor at ${tenths} tenths`,
        source: `EnergyPlus Engineering Reference, ${APART}`,
        mark: "computed from the published formula",
        unit: "-",
        expected,
        tolerance: 1e-9,
        toleranceReason: "exact decimal fractions",
        got: () => cloudFactorWalton(tenths / 10),
      }),
    ),

    {
      name: "emissivity of an overcast night sky, dew point -10 °C",
      source: "Unsworth and Monteith, Q. J. R. Meteorol. Soc. 101 (1975) 13-24: 0.84 and 0.16 of a clear sky",
      mark: "from memory",
      unit: "1",
      expected: 0.957,
      tolerance: 0.06,
      toleranceReason: "low cloud; high cloud lets an overcast sky stay colder",
      got: () => nightSkyEmissivity(kelvinFromCelsius(-8), kelvinFromCelsius(-10), 1, 101_325).middle,
    },
  ],
};

function longWave([t, humidity, pressure, expected]: readonly [number, number, number, number]) {
  const tempAir = kelvinFromCelsius(t);
  const vapour = vapourPressureFromRelativeHumidity(humidity, tempAir);
  return {
    name: `long-wave from a clear night sky, air ${t} °C, ${(100 * humidity).toFixed(0)} %, ${(pressure / 100).toFixed(0)} hPa`,
    mark: "published" as const,
    unit: "W/m2",
    expected,
    got: () =>
      skyEmissivityNight(tempAir, tempDewPointFromVapourPressure(vapour), pressure) *
      STEFAN_BOLTZMANN *
      tempAir ** 4,
  };
}

function emissivity(form: string, at: string, expected: number, got: () => number): ValidationCase {
  return {
    name: `emissivity of a clear sky, ${at}`,
    source: `${form}, ${APART}`,
    mark: "computed from the published formula",
    unit: "1",
    expected,
    tolerance: 2e-5,
    toleranceReason: "five digits",
    got,
  };
}
