import {
  chargeVoltageLeadAcid,
  openCircuitVoltage,
  selfDischargeRate,
  specificGravityCorrected,
  specificGravityFromStateOfCharge,
  stateOfChargeFromOpenCircuitVoltage,
  stateOfChargeFromSpecificGravity,
  tempFreezingElectrolyte,
} from "../../src/properties/index.js";
import { celsiusFromFahrenheit, celsiusFromKelvin, kelvinFromCelsius } from "../../src/units/index.js";
import { FREEZING_TABLES } from "./battery-freezing-tables.js";
import type { Mark, ValidationCase, ValidationGroup } from "./case.js";

const BCI = "charge table of the Battery Council International, 80 °F";
const TABLE = "table value";
const CHARGER = "logwell.com charge voltage table";
const DISCOVER = "discoverbattery.com Tables 7 and 8";
const STANDING = "US Army TM 9-6140-200-14 p. 4-14";

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
      of(
        `state of charge at ${voltage} V`,
        BCI,
        "published",
        "%",
        charge,
        0.1,
        TABLE,
        () => 100 * stateOfChargeFromOpenCircuitVoltage(voltage, fahrenheit(80), 6),
      ),
      of(
        `state of charge at ${gravity}`,
        BCI,
        "published",
        "%",
        charge,
        0.1,
        TABLE,
        () => 100 * stateOfChargeFromSpecificGravity(gravity),
      ),
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
    of(
      "hydrometer correction at 0 °F",
      DISCOVER,
      "published",
      "1",
      -0.032,
      5e-4,
      "half the last digit printed",
      () => specificGravityCorrected(1.265, fahrenheit(0)) - 1.265,
    ),
    of(
      "hydrometer correction over 10 °F",
      `${DISCOVER}; US Army TM 5-1185 Table IV`,
      "published",
      "1",
      -0.004,
      1e-9,
      TABLE,
      () => specificGravityCorrected(1.2, fahrenheit(70)) - 1.2,
    ),
    of(
      "hydrometer correction over 3 °F",
      "US Navy: 0.001 per 3 °F",
      "published",
      "1",
      -0.001,
      3e-4,
      "the Navy corrects by a sixth less than the Army",
      () => specificGravityCorrected(1.2, fahrenheit(77)) - 1.2,
    ),
    of(
      "state of charge at 12.432 V and 0 °F, which is 12.24 V at 80 °F",
      `${DISCOVER}: -0.192 V`,
      "published",
      "%",
      50,
      0.1,
      TABLE,
      () => 100 * stateOfChargeFromOpenCircuitVoltage(12.24 + 0.192, fahrenheit(0), 6),
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
    ...(
      [
        [100, 0.0025],
        [80, 0.001],
        [50, 0.0003],
      ] as const
    ).map(([f, expected]) =>
      of(
        `loss of specific gravity a day at ${f} °F`,
        STANDING,
        "published",
        "1/day",
        expected,
        1e-9,
        TABLE,
        () => 86400 * selfDischargeRate(fahrenheit(f)),
      ),
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
