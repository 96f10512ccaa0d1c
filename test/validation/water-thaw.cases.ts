import {
  evaporationFluxAshraePool,
  humidityRatio,
  LATENT_HEAT_FUSION,
  latentHeatVaporisation,
  PRESSURE_STANDARD,
  saturationPressureOverLiquid,
  snowMeltByVapourKojimaLaminar,
  snowMeltByVapourKojimaTurbulent,
  snowMeltKojimaCalm,
  snowMeltKojimaLaminar,
  snowMeltKojimaTurbulent,
  tempWetBulb,
  vapourPressureFromRelativeHumidity,
} from "../../src/properties/index.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR } from "../../src/units/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const KOJIMA = "Kojima, Seppyo 18(1) 1956, evaluated by hand for a 1 m surface";
const POOL = "ASHRAE pool equation at the adiabatic wet bulb, evaluated apart";
const ROUNDING = "half the last digit printed";

type Melt = (tempAir: number) => number;
const calm: Melt = (tempAir) => snowMeltKojimaCalm(tempAir, 1);
const laminar: Melt = (tempAir) => snowMeltKojimaLaminar(tempAir, 1, 1);
const turbulent: Melt = (tempAir) => snowMeltKojimaTurbulent(tempAir, 1, 3);

/** °C, relative humidity, then hours to dry 0.2 mm in air at rest, 0.5 and 2 m/s */
const FILM = [
  [10, 0.5, 5.2, 3.6, 1.9],
  [15, 0.5, 4.4, 3.0, 1.6],
  [20, 0.4, 3.0, 2.1, 1.1],
  [20, 0.6, 4.8, 3.3, 1.7],
] as const;

export const THAW_VALIDATION: ValidationGroup = {
  title: "melting and drying",
  cases: [
    ...(
      [
        [10, 0.12],
        [15, 0.2],
        [20, 0.28],
      ] as const
    ).map(([t, m]) => melt("calm", calm, t, m, 0.005)),
    ...(
      [
        [10, 0.4],
        [15, 0.6],
        [20, 0.8],
      ] as const
    ).map(([t, m]) => melt("1 m/s laminar", laminar, t, m, 0.005)),
    ...(
      [
        [10, 1.3],
        [15, 1.95],
        [20, 2.6],
      ] as const
    ).map(([t, m]) => melt("3 m/s turbulent", turbulent, t, m, 0.01)),
    coefficient("calm, 10 °C", calm, 10, 1.1, 0.05),
    coefficient("calm, 20 °C", calm, 20, 1.3, 0.05),
    coefficient("1 m/s laminar", laminar, 15, 3.7, 0.05),
    coefficient("3 m/s turbulent", turbulent, 15, 12, 0.1),
    {
      name: "hours to melt 5 kg/m2 at 15 °C by calm convection alone",
      source: KOJIMA,
      mark: "computed from the published formula",
      unit: "h",
      expected: 25,
      tolerance: 1,
      toleranceReason: "given as about 25 h",
      got: () => 5 / (calm(kelvinFromCelsius(15)) * SECONDS_OF_HOUR),
    },
    vapour("laminar, 1 m/s, 10 mb", 0.2808, () => snowMeltByVapourKojimaLaminar(1000, 1, 1)),
    vapour("laminar, 1 m/s, 4 mb: snow loses vapour", -0.1512, () =>
      snowMeltByVapourKojimaLaminar(400, 1, 1),
    ),
    vapour("turbulent, 3 m/s, 10 mb", 0.759157, () => snowMeltByVapourKojimaTurbulent(1000, 1, 3)),
    ...FILM.flatMap(([t, rh, calmHours, slow, fast]) => [
      film(t, rh, 0, calmHours),
      film(t, rh, 0.5, slow),
      film(t, rh, 2, fast),
    ]),
  ],
};

function melt(what: string, of: Melt, t: number, expected: number, tolerance: number): ValidationCase {
  return {
    name: `snow melt at ${t} °C, ${what}`,
    source: KOJIMA,
    mark: "computed from the published formula",
    unit: "kg/(m2 h)",
    expected,
    tolerance,
    toleranceReason: ROUNDING,
    got: () => of(kelvinFromCelsius(t)) * SECONDS_OF_HOUR,
  };
}

function coefficient(what: string, of: Melt, t: number, expected: number, tolerance: number): ValidationCase {
  return {
    name: `heat transfer coefficient behind snow melt, ${what}`,
    source: KOJIMA,
    mark: "computed from the published formula",
    unit: "W/(m2 K)",
    expected,
    tolerance,
    toleranceReason: ROUNDING,
    got: () => (of(kelvinFromCelsius(t)) * LATENT_HEAT_FUSION) / t,
  };
}

function vapour(what: string, expected: number, got: () => number): ValidationCase {
  return {
    name: `snow melt by vapour, ${what}`,
    source: KOJIMA,
    mark: "computed from the published formula",
    unit: "kg/(m2 h)",
    expected,
    tolerance: 1e-5,
    toleranceReason: "same formula",
    got: () => got() * SECONDS_OF_HOUR,
  };
}

function film(t: number, relativeHumidity: number, windSpeed: number, expected: number): ValidationCase {
  return {
    name: `drying of 0.2 mm water in ${t} °C, ${100 * relativeHumidity} %, ${windSpeed} m/s`,
    source: POOL,
    mark: "computed from the published formula",
    unit: "h",
    expected,
    tolerance: 0.05 + 0.025 * expected,
    toleranceReason:
      "half the last digit printed and 0.1 K of wet bulb; against nature the equation is good to a factor of 2",
    got: () => {
      const air = kelvinFromCelsius(t);
      const pressureVapour = vapourPressureFromRelativeHumidity(relativeHumidity, air);
      const bulb = tempWetBulb(air, humidityRatio(pressureVapour, PRESSURE_STANDARD), PRESSURE_STANDARD);
      const flux = evaporationFluxAshraePool(
        saturationPressureOverLiquid(bulb),
        pressureVapour,
        windSpeed,
        latentHeatVaporisation(bulb),
      );
      return 0.2 / flux / SECONDS_OF_HOUR;
    },
  };
}
