import {
  dynamicViscosityOil,
  GENERIC_OILS,
  kinematicViscosityOil,
  type Oil,
  SAE_J300_WINTER,
  viscosityOfWaltherZ,
  waltherFit,
  waltherFitOil,
  waltherViscosity,
  waltherZ,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { type Mark, relative, type ValidationCase, type ValidationGroup } from "./case.js";

const D341 = "ASTM D341, formula evaluated apart";
const WORKSHEET = "public worksheet 'Viscosity vs Temperature Calculator', after ASTM D341";
const CALCULATED: Mark = "computed from the published formula";
const SAME_FORMULA = "same formula in double precision";
const DIGITS = "half the last digit printed";

/** id, A, B, then kinematic viscosity [mm2/s] at 20, 0, -10, -15, -20, -25, -30 °C */
const GENERIC = [
  ["sae-50", 8.633318, 3.310984, 823.9, 4840, 14766, 27714, 54944, 115760, 260970],
  ["sae-40", 8.875194, 3.421832, 514.1, 2839, 8383, 15473, 30171, 62525, 138680],
  ["sae-20w-50", 7.902317, 3.027583, 512.4, 2273, 5727, 9608, 16812, 30811, 59433],
  ["sae-15w-50", 7.436592, 2.847913, 373.9, 1403, 3161, 4971, 8095, 13698, 24186],
] as const;
const GENERIC_TEMPS = [20, 0, -10, -15, -20, -25, -30] as const;

const LINE_D341 = () => waltherFit(kelvinFromCelsius(40), 32e-6, kelvinFromCelsius(100), 5.4e-6);
/** The worksheet adds 273, not 273.15, to °C. */
const LINE_WORKSHEET = () => waltherFit(40 + 273, 32e-6, 100 + 273, 5.4e-6);
export const OIL_VALIDATION: ValidationGroup = {
  title: "oil",
  part: "physics",
  cases: [
    line("A", WORKSHEET, "published", 9.5259, 0.6e-4, () => LINE_WORKSHEET().a),
    line("B", WORKSHEET, "published", 3.7449, 0.6e-4, () => LINE_WORKSHEET().b),
    line(
      "viscosity at 80 °C",
      WORKSHEET,
      "published",
      8.5,
      0.05,
      () => waltherViscosity(LINE_WORKSHEET(), 353) * 1e6,
    ),
    line("A", D341, CALCULATED, 9.53081512, 1e-8, () => LINE_D341().a),
    line("B", D341, CALCULATED, 3.74657842, 1e-8, () => LINE_D341().b),
    ...(
      [
        [80, 8.533215],
        [20, 86.27786],
        [0, 335.99962],
        [-20, 2291.4717],
      ] as const
    ).map(([celsius, expected]) =>
      line(
        `viscosity at ${celsius} °C`,
        D341,
        CALCULATED,
        expected,
        relative(expected, 1e-6),
        () => waltherViscosity(LINE_D341(), kelvinFromCelsius(celsius)) * 1e6,
      ),
    ),
    ...(
      [
        [0.5, 1.280661, 0.500055],
        [1, 1.721928, 0.999949],
        [1.5, 2.20462, 1.500142],
        [2, 2.700754, 2.000172],
        [5, 5.7, 5],
      ] as const
    ).flatMap(([nu, z, back]): ValidationCase[] => [
      full(`Z of ${nu} mm2/s`, "-", z, () => waltherZ(nu * 1e-6)),
      full(
        `viscosity of the Z of ${nu} mm2/s`,
        "mm2/s",
        back,
        () => viscosityOfWaltherZ(waltherZ(nu * 1e-6)) * 1e6,
      ),
    ]),
    ...GENERIC.flatMap(([id, a, b, ...viscosities]): ValidationCase[] => [
      line(`A of ${id}`, D341, CALCULATED, a, 0.6e-6, () => waltherFitOil(generic(id)).a),
      line(`B of ${id}`, D341, CALCULATED, b, 0.6e-6, () => waltherFitOil(generic(id)).b),
      ...viscosities.map((nu, i) =>
        line(
          `viscosity of ${id} at ${GENERIC_TEMPS[i]} °C`,
          D341,
          CALCULATED,
          nu,
          relative(nu, 2e-4),
          () => kinematicViscosityOil(generic(id), kelvinFromCelsius(GENERIC_TEMPS[i]!)) * 1e6,
        ),
      ),
    ]),
    ...(["sae-20w-50", "sae-15w-50"] as const).map((id): ValidationCase => {
      const limits = SAE_J300_WINTER[generic(id).winterGrade!];
      return {
        name: `viscosity of ${id} in its cranking test, against the limit`,
        source: "SAE J300 (2013 and later)",
        mark: "published",
        unit: "Pa s",
        expected: limits.viscosityCranking,
        tolerance: relative(limits.viscosityCranking, 0.12),
        toleranceReason:
          "a composite oil by its low-shear Walther line; the test is at high shear and the oil need only pass",
        got: () => dynamicViscosityOil(generic(id), limits.tempCranking),
      };
    }),
  ],
};

function generic(id: string): Oil {
  return GENERIC_OILS.find((oil) => oil.id === id)!;
}

function line(
  name: string,
  source: string,
  mark: Mark,
  expected: number,
  tolerance: number,
  got: () => number,
): ValidationCase {
  return {
    name: `Walther line: ${name}`,
    source,
    mark,
    unit: /^[AB]( |$)/.test(name) ? "-" : "mm2/s",
    expected,
    tolerance,
    toleranceReason: DIGITS,
    got,
  };
}

function full(name: string, unit: string, expected: number, got: () => number): ValidationCase {
  return {
    name,
    source: D341,
    mark: CALCULATED,
    unit,
    expected,
    tolerance: 1e-6,
    toleranceReason: SAME_FORMULA,
    got,
  };
}
