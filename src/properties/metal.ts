import type { ThermalExpansion } from "./thermal-expansion.js";

/** Properties near 20 °C of a metal found in engines, each with its origin. */
export interface Metal {
  readonly name: string;
  /** [kg/m3] */
  readonly density: number;
  /** [J/(kg K)] */
  readonly heatCapacity: number;
  /** [W/(m K)] */
  readonly conductivity: number;
  readonly expansion: ThermalExpansion;
  readonly origins: {
    readonly density: string;
    readonly heatCapacity: string;
    readonly conductivity: string;
    readonly expansion: string;
  };
}
