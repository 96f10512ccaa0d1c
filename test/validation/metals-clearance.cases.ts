import { diametralClearance, METALS, type ThermalExpansion } from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const BY_HAND = "linear expansion by hand, nominal diameter times the difference of the coefficients";
const NOMINAL = "the hand calculation uses one nominal diameter for both parts";

/** One coefficient [1e-6/K] at all temperatures. */
const flat = (mean: number): ThermalExpansion => ({
  cold: mean * 1e-6,
  warm: [{ to: 573.15, mean: mean * 1e-6 }],
});

export const CLEARANCE_VALIDATION: ValidationGroup = {
  title: "clearances",
  part: "physics",
  cases: [
    ...(
      [
        [-20, 0.03816],
        [-30, 0.0327],
        [-40, 0.02724],
        [80, 0.09276],
      ] as const
    ).map(([t, expected]) =>
      clearance(`60 mm A356 bore on steel, 0.060 mm at 20 °C, at ${t} °C`, expected, 5e-5, () =>
        clearanceAt(60, 0.06, METALS["aluminium-a356-t6"].expansion, METALS["steel-4140"].expansion, t),
      ),
    ),
    ...(
      [
        [-30, 0.3468],
        [200, 0.1315],
      ] as const
    ).map(([t, expected]) =>
      clearance(
        `130 mm 4032 piston in steel barrel, 0.300 mm at 20 °C, both at ${t} °C`,
        expected,
        1.2e-3,
        () => clearanceAt(130, 0.3, flat(12.3), flat(19.5), t),
      ),
    ),
    ...(
      [
        [20, 13.6],
        [40, 27.3],
        [60, 41],
      ] as const
    ).map(
      ([fall, expected]): ValidationCase => ({
        name: `loss of clearance of a 60 mm aluminium bore (23.0) on steel (11.7) over ${fall} K`,
        source: BY_HAND,
        mark: "computed from the published formula",
        unit: "micrometres",
        expected,
        tolerance: 0.4,
        toleranceReason: "printed rounded, from 13.56 per 20 K",
        got: () =>
          1000 *
          (clearanceAt(60, 0, flat(23), flat(11.7), 20) -
            clearanceAt(60, 0, flat(23), flat(11.7), 20 - fall)),
      }),
    ),
  ],
};

/** [mm] clearance at `t` [°C] of a fit with `clearance20` [mm] at 20 °C, both parts alike warm. */
function clearanceAt(
  nominal: number,
  clearance20: number,
  bore: ThermalExpansion,
  shaft: ThermalExpansion,
  t: number,
): number {
  const temp = kelvinFromCelsius(t);
  return (
    1000 *
    diametralClearance(
      { diameter: nominal / 1000, expansion: bore, temp },
      { diameter: (nominal - clearance20) / 1000, expansion: shaft, temp },
    )
  );
}

function clearance(name: string, expected: number, tolerance: number, got: () => number): ValidationCase {
  return {
    name,
    source: BY_HAND,
    mark: "computed from the published formula",
    unit: "mm",
    expected,
    tolerance,
    toleranceReason: NOMINAL,
    got,
  };
}
