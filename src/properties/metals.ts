import { kelvinFromCelsius } from "../units/index.js";
import type { ThermalExpansion } from "./thermal-expansion.js";

/** How a metal found in engines expands, and who says so. */
export interface Metal {
  readonly expansion: ThermalExpansion;
  readonly origin: string;
}

const ASM = "ASM Handbook vol. 2";
const CALLISTER = "Callister, Materials Science and Engineering, Table B.6";
const FROM_MEMORY = "from memory of handbooks";

/** Piston, crankcase and head alloys, the textbook ones they are compared with, steels, irons and the rest. */
export const METALS = {
  "aluminium-4032-t6": metal({ cold: 18.0, 100: 19.5, 200: 20.2, 300: 21.0 }, `${ASM}, from memory`),
  "aluminium-2618-t61": metal(
    { cold: 20.6, 100: 22.3, 200: 23.2, 300: 24.1 },
    `${ASM}, from memory, and MIL-HDBK-5`,
  ),
  "aluminium-alsi12-piston": metal(
    { 100: 20.0, 200: 21.0, 300: 22.0 },
    "piston maker's materials page for G-AlSi12MgCuNi, middle of spans 1 wide",
  ),
  "aluminium-a356-t6": metal({ 100: 21.4, 300: 23.2 }, "matweb.com, Aluminum Association data"),
  "aluminium-356": metal({ 100: 21.5 }, `${CALLISTER}; substech.com prints 21.4`),
  "aluminium-1050": metal({ cold: 21.8, 100: 23.6, 200: 24.5, 300: 25.5 }, `${ASM} p. 62`),
  "aluminium-pure": metal({ cold: 21.8, 100: 23.6, 200: 24.5, 300: 25.5 }, `${ASM} p. 62, 1050`),
  "aluminium-2024-t6": metal({ 100: 22.9 }, CALLISTER),
  "aluminium-195-cast": metal(
    { 100: 23.0 },
    "user's manual table of material expansion coefficients, 195: 12.8e-6/F",
  ),
  "steel-4140": metal({ 100: 12.3 }, "mill data page, 6.83e-6/F from 68 to 212 F"),
  "steel-4340": metal({ 100: 12.3, 200: 12.7 }, "asm.matweb.com M434AE"),
  "steel-4130": metal({ 100: 12.2 }, `${FROM_MEMORY}; 11.2 is quoted too`),
  "steel-nitriding": metal(
    { 100: 11.7 },
    "wisetool.com, nitriding steels 6.5e-6/F; sources span 11.5 to 12.2",
  ),
  "iron-grey": metal({ 100: 10.8 }, `wisetool.com, grey irons 6e-6/F; ${CALLISTER} prints 11.4`),
  "iron-ductile-60-40-18": metal({ 100: 11.2 }, CALLISTER),
  "iron-ductile-80-55-06": metal({ 100: 10.6 }, CALLISTER),
  copper: metal({ 100: 17.0 }, `${CALLISTER}, C11000`),
  "magnesium-az31b": metal({ 100: 26.0 }, CALLISTER),
  "magnesium-az91d": metal({ 100: 26.0 }, CALLISTER),
} satisfies Record<string, Metal>;

export type MetalId = keyof typeof METALS;

/** Means [1e-6/K] from 20 °C to the temperature [°C] of each key; `cold` is -50 to 20 °C. */
function metal(means: { readonly cold?: number; readonly [celsius: number]: number }, origin: string): Metal {
  const { cold, ...table } = means;
  const warm = Object.entries(table).map(([celsius, mean]) => ({
    to: kelvinFromCelsius(Number(celsius)),
    mean: mean * 1e-6,
  }));
  return { expansion: cold === undefined ? { warm } : { cold: cold * 1e-6, warm }, origin };
}
