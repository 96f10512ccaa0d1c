import {
  METALS,
  type Metal,
  type MetalId,
  RANGE_THERMAL_EXPANSION,
  TEMP_REFERENCE_LENGTH,
  thermalStrain,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import type { Mark, ValidationCase, ValidationGroup } from "./case.js";

const TABLE_17_1 = "public table of material expansion coefficients (17-1)";
const CALLISTER = "Callister, Table B.6";

/** Alloy, source, mean expansion near room temperature [1e-6/K], spread between sources. */
const CROSS_EXPANSION: readonly (readonly [MetalId, string, number, number])[] = [
  ["aluminium-4032-t6", `${TABLE_17_1}, 10.8e-6/F`, 19.4, 0.2],
  ["aluminium-356", `${TABLE_17_1}, 12.0e-6/F`, 21.5, 0.2],
  ["aluminium-a356-t6", `${CALLISTER}, 356.0`, 21.5, 0.2],
  ["aluminium-2024-t6", `${TABLE_17_1}, 2024`, 22.8, 0.2],
  ["aluminium-alsi12-piston", `${TABLE_17_1}, D132`, 20.5, 0.6],
  ["aluminium-pure", `${CALLISTER}, alloy 1100`, 23.6, 0.2],
  ["copper", `${TABLE_17_1}, pure copper`, 16.5, 0.6],
  ["steel-4140", "AISI 4340, asm.matweb.com", 12.3, 0.2],
  ["steel-4130", "AISI 4340, asm.matweb.com", 12.3, 1.1],
  ["steel-nitriding", "AISI 4340, asm.matweb.com", 12.3, 0.8],
  ["iron-grey", `${CALLISTER}, grey irons`, 11.4, 0.7],
  ["iron-ductile-60-40-18", "grey irons, wisetool.com", 10.8, 0.7],
];

export const METALS_VALIDATION: ValidationGroup = {
  title: "metals",
  part: "physics",
  cases: [
    ...CROSS_EXPANSION.map(([id, source, mean, spread]) =>
      ofMetal(
        id,
        "expansion near room temperature against another source",
        source,
        "published",
        "1e-6/K",
        mean,
        spread,
        "spread between handbooks and alloys",
        (metal) => meanTo(metal, 100),
      ),
    ),
  ],
};

/** [1e-6/K], over the span from 20 °C. */
function meanTo(metal: Metal, t: number): number {
  const temp = Math.max(kelvinFromCelsius(t), RANGE_THERMAL_EXPANSION.min);
  return (1e6 * thermalStrain(metal.expansion, temp)) / (temp - TEMP_REFERENCE_LENGTH);
}

function ofMetal(
  id: MetalId,
  what: string,
  source: string,
  mark: Mark,
  unit: string,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  of: (metal: Metal) => number,
): ValidationCase {
  return {
    name: `${id}: ${what}`,
    source,
    mark,
    unit,
    expected,
    tolerance,
    toleranceReason,
    got: () => of(METALS[id]),
  };
}
