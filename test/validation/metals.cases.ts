import {
  METALS,
  type Metal,
  type MetalId,
  RANGE_THERMAL_EXPANSION,
  TEMP_REFERENCE_LENGTH,
  thermalStrain,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { type Mark, relative, type ValidationCase, type ValidationGroup } from "./case.js";

const DATA_BOOK = "Heat and Mass Transfer Data Book, property values of metals at 20 °C";
const ISO_10456 = "ISO 10456 generic material, as in the ht package";
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

    ...against("aluminium-4032-t6", `${DATA_BOOK}, silumin`, 2659, 867, 136.8, 0.03),
    ...against("aluminium-a356-t6", ISO_10456, 2800, 880, 160, 0.1),
    ...against("copper", ISO_10456, 8900, 380, 380, 0.06),
    ...against("steel-4140", ISO_10456, 7800, 450, 50, 0.16),
    ...against("steel-4340", ISO_10456, 7800, 450, 50, 0.16),
    ...against("iron-grey", `${DATA_BOOK}, cast iron`, 7272, 420, 52, 0.18),
  ],
};

/** [1e-6/K], over the span from 20 °C. */
function meanTo(metal: Metal, t: number): number {
  const temp = Math.max(kelvinFromCelsius(t), RANGE_THERMAL_EXPANSION.min);
  return (1e6 * thermalStrain(metal.expansion, temp)) / (temp - TEMP_REFERENCE_LENGTH);
}

function against(
  id: MetalId,
  source: string,
  density: number,
  heatCapacity: number,
  conductivity: number,
  fraction: number,
): ValidationCase[] {
  const reason = "another alloy of the class: widest of the three spreads";
  const compare = (what: string, unit: string, expected: number, of: (metal: Metal) => number) =>
    ofMetal(
      id,
      `${what} against its class`,
      source,
      "published",
      unit,
      expected,
      relative(expected, fraction),
      reason,
      of,
    );
  return [
    compare("density", "kg/m3", density, (metal) => metal.density),
    compare("heat capacity", "J/(kg K)", heatCapacity, (metal) => metal.heatCapacity),
    compare("conductivity", "W/(m K)", conductivity, (metal) => metal.conductivity),
  ];
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
  const metal: Metal = METALS[id];
  return {
    name: `${metal.name}: ${what}`,
    source,
    mark,
    unit,
    expected,
    tolerance,
    toleranceReason,
    got: () => of(metal),
  };
}
