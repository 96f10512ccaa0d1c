import { installationById } from "../../src/aircraft/index.js";
import { dynamicViscosityOil } from "../../src/properties/index.js";
import { batterySource } from "../../src/starting/battery-source.js";
import {
  CRANKING_REFERENCE_OIL,
  CRANKING_REFERENCE_SPEED,
  compressionPressure,
  crankingDrag,
  crankingTorque,
  FILM_EXPONENT,
} from "../../src/starting/cranking-drag.js";
import { celsiusFromFahrenheit, kelvinFromCelsius } from "../../src/units/index.js";
import { calibration, caseOf, type Mark, type ValidationCase, type ValidationGroup } from "./case.js";

const CHART = "workshop chart of power needed by the engine";
const HALF_CHARGED = "workshop chart of half-charged batteries";

const flooded = installationById("four-carburettor-160").battery;
const drag = crankingDrag({ displacement_l: 5.5, compression_ratio: 8.5 });

export const CRANKING_VALIDATION: ValidationGroup = {
  title: "cranking and its battery",
  part: "physics",
  cases: [
    ...(
      [
        [32, 155],
        [0, 210],
        [-20, 350],
      ] as const
    ).map(([f, expected]) =>
      calibration(
        percent(
          `drag at ${f} °F over that at 80 °F, SAE 10W-30`,
          CHART,
          "published",
          expected,
          0.1 * expected,
          "the chart names neither engine nor oil",
          () => torqueAt(f) / torqueAt(80),
        ),
      ),
    ),
    ...(
      [
        [80, 46],
        [32, 32],
        [0, 21],
      ] as const
    ).map(([f, expected]) =>
      percent(
        `power of a half-charged battery at ${f} °F over that of a full one at 80 °F`,
        HALF_CHARGED,
        "from memory",
        expected,
        3,
        "resistance is taken to go as 1/charge, whatever the temperature",
        () => greatestPower(f, 0.5) / greatestPower(80, 1),
      ),
    ),
    calibration(
      caseOf(
        "exponent of viscosity in friction: 44 % less friction for 67 % less viscosity, ln 0.56/ln 0.33",
        "Burke et al., IMechE review, hot engine 50 to 80 °C",
        "published",
        "1",
        0.52,
        0.05,
        "another engine and a running one",
        () => FILM_EXPONENT.usual,
      ),
    ),
    caseOf(
      "work of a polytropic compression 8.5:1 over the swept volume, integrated in 10 000 steps",
      "p V^1.3 constant from 101.325 kPa",
      "computed from the published formula",
      "kPa",
      344.626,
      0.01,
      "printed digits",
      () => compressionPressure(8.5) / 1000,
    ),
  ],
};

/** [N m] at 100 rpm with the reference oil. */
function torqueAt(f: number): number {
  return crankingTorque(
    drag,
    dynamicViscosityOil(CRANKING_REFERENCE_OIL, fahrenheit(f)),
    CRANKING_REFERENCE_SPEED,
  );
}

function greatestPower(f: number, charge: number): number {
  const { openVoltage, resistance } = batterySource(flooded, { system_v: 12 }, fahrenheit(f), charge);
  return openVoltage ** 2 / (4 * resistance);
}

function percent(
  name: string,
  source: string,
  mark: Mark,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  return caseOf(name, source, mark, "%", expected, tolerance, toleranceReason, () => 100 * got());
}

function fahrenheit(value: number): number {
  return kelvinFromCelsius(celsiusFromFahrenheit(value));
}
