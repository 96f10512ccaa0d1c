import {
  diametralClearance,
  METALS,
  type ThermalExpansion,
  thermalGrowth,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import type { Mark, ValidationCase, ValidationGroup } from "./case.js";

const BY_HAND = "linear expansion by hand, nominal diameter times the difference of the coefficients";
const NOMINAL = "the hand calculation uses one nominal diameter for both parts";
const PRACTICE: Mark = "common practice, no published source";
const COLD = kelvinFromCelsius(-23);

/** One coefficient [1e-6/K] at all temperatures. */
const flat = (mean: number): ThermalExpansion => ({
  cold: mean * 1e-6,
  warm: [{ to: 573.15, mean: mean * 1e-6 }],
});

export const CLEARANCE_VALIDATION: ValidationGroup = {
  title: "clearances",
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
    {
      name: "growth of a 132.3 mm aluminium piston from -23 °C to running heat, taken as 190 °C",
      source: "shop figure 0.53 mm",
      mark: PRACTICE,
      unit: "mm",
      expected: 0.53,
      tolerance: 0.08,
      toleranceReason:
        "piston somewhere in 180 to 200 °C (0.03 mm) and alloy from 4032 to AlSi12 (0.03 mm), figure rounded",
      got: () => thermalGrowth(132.3, METALS["aluminium-4032-t6"].expansion, COLD, kelvinFromCelsius(190)),
    },
    {
      name: "growth of a 133.4 mm steel barrel from -23 °C to running heat, taken as 90 °C",
      source:
        "shop figure 0.15 mm; at the piston's 180 to 200 °C steel would grow 0.33 to 0.36 mm, so it means a cooler barrel",
      mark: PRACTICE,
      unit: "mm",
      expected: 0.15,
      tolerance: 0.05,
      toleranceReason: "mean barrel temperature somewhere in 50 to 110 °C (0.05 mm)",
      got: () => thermalGrowth(133.4, METALS["steel-nitriding"].expansion, COLD, kelvinFromCelsius(90)),
    },
    {
      name: "aluminium over steel expansion, cold range",
      source: "rule: aluminium parts move about twice as much as steel ones",
      mark: PRACTICE,
      unit: "1",
      expected: 2,
      tolerance: 0.5,
      toleranceReason: "alloys from 1.5 (4032 on 4340) to 1.9 (pure aluminium on nitriding steel)",
      got: () =>
        thermalGrowth(1, METALS["aluminium-a356-t6"].expansion, COLD, kelvinFromCelsius(20)) /
        thermalGrowth(1, METALS["steel-4340"].expansion, COLD, kelvinFromCelsius(20)),
    },
    ...(["aluminium-4032-t6", "aluminium-2618-t61", "aluminium-1050"] as const).map(
      (id): ValidationCase => ({
        name: `${METALS[id].name}: cold-range mean over that of 20 to 100 °C`,
        source: "ASM Handbook vol. 2: 7 to 8 % smaller",
        mark: id === "aluminium-1050" ? "published" : "from memory",
        unit: "1",
        expected: 0.925,
        tolerance: 0.0055,
        toleranceReason: "7 to 8 %, rounded coefficients",
        got: () =>
          thermalGrowth(1, METALS[id].expansion, kelvinFromCelsius(-50), kelvinFromCelsius(20)) /
          70 /
          (thermalGrowth(1, METALS[id].expansion, kelvinFromCelsius(20), kelvinFromCelsius(100)) / 80),
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
