import { openCircuitVoltage, tempFreezingElectrolyte } from "../../src/properties/index.js";
import { celsiusFromFahrenheit, celsiusFromKelvin } from "../../src/units/index.js";
import { FREEZING_TABLES } from "./battery-freezing-tables.js";
import { calibration, caseOf, type ValidationGroup } from "./case.js";

const BCI = "charge table of the Battery Council International, 80 °F";

export const ACID_VALIDATION: ValidationGroup = {
  title: "lead-acid",
  part: "physics",
  cases: [
    ...(
      [
        [12.65, 1.265],
        [12.45, 1.225],
        [12.24, 1.19],
        [12.06, 1.155],
        [11.89, 1.12],
      ] as const
    ).map(([voltage, gravity]) =>
      caseOf(
        `open-circuit voltage at ${gravity}`,
        `${BCI}, against the rule gravity + 0.84 a cell`,
        "published",
        "V",
        voltage,
        0.14,
        "rule of thumb, within 0.14 V of the table",
        () => openCircuitVoltage(gravity, 6),
      ),
    ),
    ...FREEZING_TABLES.flatMap(({ source, points, allowance }) =>
      points.map(([gravity, f]) =>
        calibration(
          caseOf(
            `freezing of ${gravity} acid`,
            source,
            "published",
            "°C",
            celsiusFromFahrenheit(f),
            allowance,
            "the curve keeps the warm side of these tables",
            () => celsiusFromKelvin(tempFreezingElectrolyte(gravity)),
          ),
        ),
      ),
    ),
  ],
};
