import { areaInSeries, finConductanceInfinite, stackFlow } from "../../src/properties/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const ROD =
  "Incropera, Fundamentals of Heat and Mass Transfer, 6th ed., Example 3.9 (infinite fin, eq. 3.80)";
const STACK = "ASHRAE Handbook Fundamentals, natural ventilation: Q = Cd A sqrt(2 g H dT/T), evaluated apart";
const DIAMETER = 0.005;

export const FIN_STACK_VALIDATION: ValidationGroup = {
  title: "propeller blades as fins, air drawn through the cowl",
  part: "physics",
  cases: [
    rod("copper", 398, 8.3),
    rod("2024 aluminium", 180, 5.6),
    rod("AISI 316 steel", 14, 1.6),
    stack("1 m2, 1 m high, 10 K at 300 K, Cd 0.6", 0.4851, () => stackFlow(1, 1, 10, 300)),
    stack("0.03 m2 and 0.04 m2 in series, 0.5 m high, 40 K at 273.15 K, Cd 0.6", 0.01726, () =>
      stackFlow(areaInSeries(0.03, 0.04), 0.5, 40, 273.15),
    ),
  ],
};

function rod(metal: string, conductivity: number, expected: number): ValidationCase {
  return {
    name: `heat down a long rod of 5 mm, ${metal}, 100 W/(m2 K), root 75 K above the air`,
    source: ROD,
    mark: "from memory",
    unit: "W",
    expected,
    tolerance: 0.05,
    toleranceReason: "half the last digit printed",
    got: () =>
      75 * finConductanceInfinite(100, Math.PI * DIAMETER, conductivity, (Math.PI * DIAMETER ** 2) / 4),
  };
}

function stack(name: string, expected: number, got: () => number): ValidationCase {
  return {
    name: `stack flow through ${name}`,
    source: STACK,
    mark: "computed from the published formula",
    unit: "m3/s",
    expected,
    tolerance: 10 ** Math.floor(Math.log10(expected) - 3) / 2,
    toleranceReason: "half the last digit",
    got,
  };
}
