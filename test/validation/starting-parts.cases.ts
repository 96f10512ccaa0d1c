import { type Fit, installationById } from "../../src/aircraft/index.js";
import { GENERIC_OILS } from "../../src/properties/index.js";
import { waterSolubilityOil } from "../../src/starting/case-vapour.js";
import { clearanceOf, explainWhy, shutDownTemps } from "../../src/starting/index.js";
import { oilFitness, oilPressureDelay } from "../../src/starting/oil-fitness.js";
import { celsiusFromFahrenheit, celsiusFromKelvin, kelvinFromCelsius } from "../../src/units/index.js";
import { calibration, caseOf, type ValidationGroup } from "./case.js";

const cessnaClass = installationById("four-carburettor-160");
const generic = (id: string) => GENERIC_OILS.find((o) => o.id === id)!;

export const STARTING_PARTS_VALIDATION: ValidationGroup = {
  title: "starting: oil, fits, warm engine",
  part: "physics",
  cases: [
    caseOf(
      "growth of the shipped 130 mm barrel, 20 to 90 °C, over that of steel",
      "11.7e-6/K of nitriding steel (6.5e-6/F), by hand",
      "computed from the published formula",
      "mm",
      0.10647,
      1e-4,
      "printed digits",
      () =>
        clearanceBetween(cessnaClass.clearances.piston, 90, 20) -
        clearanceBetween(cessnaClass.clearances.piston, 20, 20),
    ),
    calibration(
      caseOf(
        "time to oil pressure of a thick 5W-30 (12.5 mm2/s at 100 °C) at -25 °C",
        "SAE abstract, 2.0 l engine at -20 to -30 °C: more than 23 s",
        "published",
        "s",
        23,
        11,
        "a lower bound from one engine; the function itself is a range of a factor of two",
        () =>
          oilPressureDelay({ ...generic("sae-15w-50"), nu40: 72e-6, nu100: 12.5e-6 }, kelvinFromCelsius(-25))
            .usual,
      ),
    ),
    ...(
      [
        ["sae-15w-50", -20],
        ["sae-20w-50", -15],
      ] as const
    ).map(([id, expected]) =>
      caseOf(
        `coldest cranking of generic ${id} by its own grade's limit`,
        "SAE J300: temperature of the grade's cranking test",
        "published",
        "°C",
        expected,
        1.5,
        "generic data sheet values; a real oil of the grade passes at this temperature by definition",
        () => celsiusFromKelvin(oilFitness(generic(id), 260).crankingLimit.temp),
      ),
    ),
    caseOf(
      "oil after cruise at 10 °F outside",
      "trade article: a four-cylinder trainer reached only 140 °F",
      "published",
      "°C",
      60,
      6,
      "cruise, against a shut-down after descent and taxi",
      () => celsiusFromKelvin(shutDownTemps(cessnaClass, fahrenheit(10)).get("oil")!),
    ),
    caseOf(
      "oil of a radial engine after a flight on a mild day",
      "M-14P manual pp. 31, 33: oil-in 40 to 65 °C",
      "published",
      "°C",
      52.5,
      12.5,
      "span of the manual",
      () =>
        celsiusFromKelvin(
          shutDownTemps(installationById("radial-nine-360"), kelvinFromCelsius(0)).get("oil")!,
        ),
    ),
    caseOf(
      "water that engine oil dissolves at 20 °C",
      "trade texts on water in lubricants: 200 to 600 ppm unnoticed, 400 ppm in fresh motor oil",
      "published",
      "ppm",
      400,
      200,
      "span of the texts",
      () => 1e6 * waterSolubilityOil(kelvinFromCelsius(20)),
    ),
    caseOf(
      "frost point of a METAR dew point of -20 °C",
      "Murphy & Koop 2005 and Hyland & Wexler 1983, evaluated independently",
      "computed from the published formula",
      "°C",
      -17.95,
      0.01,
      "printed digits",
      () => explainWhy("frost-point", -20, cessnaClass).value,
    ),
  ],
};

function clearanceBetween(f: Fit, outerC: number, innerC: number): number {
  return 1000 * clearanceOf(f, kelvinFromCelsius(outerC), kelvinFromCelsius(innerC));
}

function fahrenheit(value: number): number {
  return kelvinFromCelsius(celsiusFromFahrenheit(value));
}
