import { type Fit, installationById } from "../../src/aircraft/index.js";
import { GENERIC_OILS, type MetalId } from "../../src/properties/index.js";
import { waterSolubilityOil } from "../../src/starting/case-vapour.js";
import { fuelStart } from "../../src/starting/fuel-start.js";
import { clearanceOf, explainWhy, oilGradeAdvice, shutDownTemps } from "../../src/starting/index.js";
import { oilFitness, oilPressureDelay } from "../../src/starting/oil-fitness.js";
import {
  celsiusFromFahrenheit,
  celsiusFromKelvin,
  kelvinFromCelsius,
  PASCAL_OF_PSI,
} from "../../src/units/index.js";
import type { Mark, ValidationCase, ValidationGroup } from "./case.js";

const AP42 = "AP-42 chapter 7.1 formula, S = 2, evaluated independently";
const BY_HAND = "linear expansion by hand, nominal diameter times the difference of the coefficients";
const NOMINAL = "the hand calculation uses one nominal diameter for both parts";
const SI_1014M = "Lycoming Service Instruction 1014M (1995)";
const cessnaClass = installationById("four-carburettor-160");
const generic = (id: string) => GENERIC_OILS.find((o) => o.id === id)!;

export const STARTING_PARTS_VALIDATION: ValidationGroup = {
  title: "starting: fuel, oil, fits, warm engine",
  cases: [
    ...(
      [
        [7, -42.8],
        [5.5, -36.8],
      ] as const
    ).map(([psi, expected]) =>
      number(
        `coldest avgas of ${psi} psi whose vapour burns (1.4 vol %)`,
        AP42,
        "computed from the published formula",
        "°C",
        expected,
        0.1,
        "printed digits",
        () => celsiusFromKelvin(avgas(psi, 0).tempLeanLimit),
      ),
    ),
    ...(
      [
        [7, -40, 1.676],
        [7, 0, 5.49],
        [7, 60, 23.11],
        [5.5, -20, 2.224],
        [5.5, 20, 6.828],
      ] as const
    ).map(([psi, f, kpa]) =>
      number(
        `vapour over avgas of ${psi} psi at ${f} °F`,
        AP42,
        "computed from the published formula",
        "vol %",
        Number(((100 * kpa) / 101.325).toFixed(3)),
        0.005,
        "printed digits of the pressure",
        () => 100 * avgas(psi, celsiusFromFahrenheit(f)).vapourFraction,
      ),
    ),
    ...(
      [
        [-20, 0.03816],
        [-30, 0.0327],
        [-40, 0.02724],
        [80, 0.09276],
      ] as const
    ).map(([c, expected]) =>
      number(
        `60 mm A356 case on 4340 shaft, 0.060 mm at 20 °C, both at ${c} °C`,
        BY_HAND,
        "computed from the published formula",
        "mm",
        expected,
        5e-5,
        NOMINAL,
        () => clearanceAt(fitOf(60, 0.06, "aluminium-a356-t6", "steel-4340"), c),
      ),
    ),
    number(
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
    number(
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
    ...(
      [
        ["sae-15w-50", -20],
        ["sae-20w-50", -15],
      ] as const
    ).map(([id, expected]) =>
      number(
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
    number(
      "generic SAE 50 flows down to",
      "data sheets of aviation grade 100: pour point -18 to -24 °C",
      "from memory",
      "°C",
      -21,
      3,
      "span of the data sheets",
      () => celsiusFromKelvin(oilFitness(generic("sae-50"), 260).pumpingLimit.temp),
    ),
    ...(
      [
        ["SAE 30", { hotGrade: "30" }, 0, true],
        ["SAE 50", { hotGrade: "50" }, 5, false],
        ["15W-50", { winterGrade: "15W", hotGrade: "50" }, -20, true],
        ["SAE 60", { hotGrade: "60" }, 85, true],
        ["SAE 60", { hotGrade: "60" }, 75, false],
      ] as const
    ).map(([name, oil, f, listed]) =>
      number(
        `${name} among the grades listed for ${f} °F (1 yes, 0 no)`,
        SI_1014M,
        "published",
        "1",
        listed ? 1 : 0,
        0,
        "a table",
        () => (oilGradeAdvice(oil, fahrenheit(f)).listed ? 1 : 0),
      ),
    ),
    number(
      "oil after cruise at 10 °F outside",
      "trade article: a four-cylinder trainer reached only 140 °F",
      "published",
      "°C",
      60,
      6,
      "cruise, against a shut-down after descent and taxi",
      () => celsiusFromKelvin(shutDownTemps(cessnaClass, fahrenheit(10)).get("oil")!),
    ),
    number(
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
    number(
      "water that engine oil dissolves at 20 °C",
      "trade texts on water in lubricants: 200 to 600 ppm unnoticed, 400 ppm in fresh motor oil",
      "published",
      "ppm",
      400,
      200,
      "span of the texts",
      () => 1e6 * waterSolubilityOil(kelvinFromCelsius(20)),
    ),
    number(
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

function avgas(psi: number, celsius: number) {
  return fuelStart({ grade: "avgas", reid_kpa: (psi * PASCAL_OF_PSI) / 1000 }, kelvinFromCelsius(celsius));
}

function fitOf(diameter_mm: number, clearance_mm: number, outer_metal: MetalId, inner_metal: MetalId): Fit {
  return { diameter_mm, clearance_mm, outer_metal, inner_metal };
}

/** [mm] */
function clearanceAt(f: Fit, celsius: number): number {
  return clearanceBetween(f, celsius, celsius);
}

function clearanceBetween(f: Fit, outerC: number, innerC: number): number {
  return 1000 * clearanceOf(f, kelvinFromCelsius(outerC), kelvinFromCelsius(innerC));
}

function number(
  name: string,
  source: string,
  mark: Mark,
  unit: string,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  return { name, source, mark, unit, expected, tolerance, toleranceReason, got };
}

function fahrenheit(value: number): number {
  return kelvinFromCelsius(celsiusFromFahrenheit(value));
}
