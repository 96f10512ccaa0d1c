import {
  DISTILLATION_SLOPE_AVGAS,
  DISTILLATION_SLOPE_MOGAS,
  densityAvgas,
  FLAMMABILITY_GASOLINE,
  fuelVapourPressureAp42,
  PRESSURE_STANDARD,
  startingMixture,
  tempOfFuelVapourFraction,
} from "../../src/properties/index.js";
import {
  celsiusFromFahrenheit,
  celsiusFromKelvin,
  kelvinFromCelsius,
  PASCAL_OF_PSI,
} from "../../src/units/index.js";
import { caseOf, type Mark, type ValidationCase, type ValidationGroup } from "./case.js";

const AP42 = "EPA AP-42 Table 7.1-2, as in a transcription naming it";
const FORMULA = "AP-42 equation evaluated apart";
const CALCULATED: Mark = "computed from the published formula";
const DIGITS = "half the last digit printed";

/** Reid vapour pressure [psi], then psi at 40, 50, 60, 70, 80, 90, 100 °F: as printed, and by the equation. */
const MOGAS = [
  [13, [4.7, 5.7, 6.9, 8.3, 9.9, 11.7, 13.8], [4.7, 5.73, 6.94, 8.33, 9.94, 11.79, 13.89]],
  [10, [3.4, 4.2, 5.2, 6.2, 7.4, 8.8, 10.5], [3.46, 4.25, 5.18, 6.26, 7.52, 8.98, 10.64]],
  [7, [2.3, 2.9, 3.5, 4.3, 5.2, 6.2, 7.4], [2.28, 2.83, 3.48, 4.25, 5.15, 6.2, 7.42]],
] as const;

/** Reid vapour pressure [psi], °F, then kPa of avgas by the equation. */
const AVGAS = [
  [7, -40, 1.676],
  [7, -20, 3.116],
  [7, 0, 5.49],
  [7, 20, 9.226],
  [7, 60, 23.11],
  [7, 100, 50.77],
  [5.5, -40, 1.171],
  [5.5, -20, 2.224],
  [5.5, 0, 3.993],
  [5.5, 20, 6.828],
  [5.5, 100, 39.79],
] as const;

export const FUEL_VAPOUR_VALIDATION: ValidationGroup = {
  title: "fuel and its vapour",
  part: "physics",
  cases: [
    ...MOGAS.flatMap(([rvp, printed, formula]) =>
      printed.flatMap((expected, i) => {
        const f = 40 + 10 * i;
        const name = `vapour pressure of gasoline, Reid ${rvp} psi, at ${f} °F`;
        const got = () => psi(rvp, DISTILLATION_SLOPE_MOGAS, f);
        const reason = "table printed to 0.1 psi and built from charts";
        return [
          caseOf(`${name}, table`, AP42, "published", "psi", expected, 0.05 + 0.025 * expected, reason, got),
          caseOf(`${name}, equation`, FORMULA, CALCULATED, "psi", formula[i]!, 0.0051, DIGITS, got),
        ];
      }),
    ),
    ...AVGAS.map(([rvp, f, kilopascal]) =>
      caseOf(
        `vapour pressure of avgas, Reid ${rvp} psi, at ${f} °F`,
        FORMULA,
        CALCULATED,
        "kPa",
        kilopascal,
        2e-4 * kilopascal + 5e-4,
        DIGITS,
        () => (psi(rvp, DISTILLATION_SLOPE_AVGAS, f) * PASCAL_OF_PSI) / 1000,
      ),
    ),
    limit("lean", 7, -42.8, 0.06, CALCULATED, FORMULA, DIGITS),
    limit("lean", 5.5, -36.8, 0.06, CALCULATED, FORMULA, DIGITS),
    limit("rich", 7, -10.6, 0.06, CALCULATED, FORMULA, DIGITS),
    limit("rich", 5.5, -4.0, 0.06, CALCULATED, FORMULA, DIGITS),
    limit(
      "rich",
      7,
      -7,
      4,
      "published",
      "MIL-HDBK-1022A 2.3.1.1: vapour space of gasoline too rich above 20 °F",
      "a rule of thumb for all gasolines",
    ),
    limit(
      "rich",
      5.5,
      -7,
      4,
      "published",
      "MIL-HDBK-1022A 2.3.1.1: vapour space of gasoline too rich above 20 °F",
      "a rule of thumb for all gasolines",
    ),
    limit(
      "lean",
      7,
      -43,
      3,
      "published",
      "flash point about -43 °C, SKYbrary, Ignition of Fuels",
      "flash points of gasolines span -46 to -40 °C",
    ),

    caseOf(
      "fuel offered at -20 °F over 60 °F, Reid 7 psi",
      `${FORMULA}: 3.352/0.452`,
      CALCULATED,
      "1",
      7.416,
      0.01,
      "three digits printed",
      () =>
        startingMixture(
          gasoline(7, DISTILLATION_SLOPE_AVGAS),
          fahrenheit(-20),
          PRESSURE_STANDARD,
          fahrenheit(60),
        ).offeredRatio,
    ),
    caseOf(
      "change of avgas density",
      "public article on avgas: about -0.1 % per K",
      "published",
      "%/K",
      -0.1,
      0.05,
      "one digit printed",
      () => 100 * (densityAvgas(kelvinFromCelsius(16)) / densityAvgas(kelvinFromCelsius(15)) - 1),
    ),
  ],
};

function limit(
  side: keyof typeof FLAMMABILITY_GASOLINE,
  rvp: number,
  expected: number,
  tolerance: number,
  mark: Mark,
  source: string,
  toleranceReason: string,
): ValidationCase {
  const name = `${side} limit over avgas, Reid ${rvp} psi, sea level`;
  return caseOf(name, source, mark, "°C", expected, tolerance, toleranceReason, () =>
    celsiusFromKelvin(
      tempOfFuelVapourFraction(
        gasoline(rvp, DISTILLATION_SLOPE_AVGAS),
        FLAMMABILITY_GASOLINE[side],
        14.696 * PASCAL_OF_PSI,
      ),
    ),
  );
}

function gasoline(rvp: number, distillationSlope: number) {
  return { reidVapourPressure: rvp * PASCAL_OF_PSI, distillationSlope };
}

function psi(rvp: number, slope: number, f: number): number {
  return fuelVapourPressureAp42(gasoline(rvp, slope), fahrenheit(f)) / PASCAL_OF_PSI;
}

function fahrenheit(value: number): number {
  return kelvinFromCelsius(celsiusFromFahrenheit(value));
}
