import { kelvinFromCelsius } from "../units/index.js";
import type { Metal } from "./metal.js";
import type { ThermalExpansion } from "./thermal-expansion.js";

const ASM = "ASM Handbook vol. 2";
const ASM_FROM_MEMORY = `${ASM}, from memory`;
const INCROPERA = "Incropera et al., Fundamentals of Heat and Mass Transfer, Table A.1";
const PISTON_MAKER = "piston maker's materials page for G-AlSi12MgCuNi";
const NIKKEIKIN = "nikkeikin.com, basic data of aluminium alloys";
const MATWEB = "matweb.com, Aluminum Association data";

/** Piston, crankcase and head alloys, and the textbook ones they are compared with. */
export const ALUMINIUM_ALLOYS = {
  "aluminium-4032-t6": {
    name: "aluminium 4032-T6, forged piston",
    density: 2680,
    heatCapacity: 864,
    conductivity: 140,
    expansion: means({ cold: 18.0, 100: 19.5, 200: 20.2, 300: 21.0 }),
    origins: {
      density: NIKKEIKIN,
      heatCapacity: ASM_FROM_MEMORY,
      conductivity: `${NIKKEIKIN}; 150 annealed`,
      expansion: ASM_FROM_MEMORY,
    },
  },
  "aluminium-2618-t61": {
    name: "aluminium 2618-T61, forged piston",
    density: 2760,
    heatCapacity: 875,
    conductivity: 150,
    expansion: means({ cold: 20.6, 100: 22.3, 200: 23.2, 300: 24.1 }),
    origins: {
      density: NIKKEIKIN,
      heatCapacity: ASM_FROM_MEMORY,
      conductivity: `${NIKKEIKIN}; 146 quoted too`,
      expansion: `${ASM_FROM_MEMORY} and MIL-HDBK-5`,
    },
  },
  "aluminium-alsi12-piston": {
    name: "aluminium AlSi12CuMgNi, cast piston",
    density: 2700,
    heatCapacity: 963,
    conductivity: 134,
    expansion: means({ 100: 20.0, 200: 21.0, 300: 22.0 }),
    origins: {
      density: PISTON_MAKER,
      heatCapacity: `${PISTON_MAKER}, 0.23 cal/(g K) at 100 °C`,
      conductivity: `${PISTON_MAKER}, 0.32 cal/(s cm K)`,
      expansion: `${PISTON_MAKER}, middle of spans 1 wide`,
    },
  },
  "aluminium-a356-t6": {
    name: "aluminium A356.0-T6, sand cast crankcase or head",
    density: 2670,
    heatCapacity: 963,
    conductivity: 151,
    expansion: means({ 100: 21.4, 300: 23.2 }),
    origins: { density: MATWEB, heatCapacity: MATWEB, conductivity: MATWEB, expansion: MATWEB },
  },
  "aluminium-356": {
    name: "aluminium 356.0, permanent mould",
    density: 2680,
    heatCapacity: 963,
    conductivity: 167,
    expansion: means({ 100: 21.5 }),
    origins: {
      density: "substech.com, 356.0",
      heatCapacity: "substech.com, 356.0",
      conductivity: "substech.com, 356.0",
      expansion: "Callister, Materials Science and Engineering, Table B.6; substech.com prints 21.4",
    },
  },
  "aluminium-1050": {
    name: "aluminium 1050-O, shape of the expansion curve",
    density: 2705,
    heatCapacity: 900,
    conductivity: 231,
    expansion: means({ cold: 21.8, 100: 23.6, 200: 24.5, 300: 25.5 }),
    origins: {
      density: `${ASM} p. 62`,
      heatCapacity: `${ASM} p. 62`,
      conductivity: `${ASM} p. 62`,
      expansion: `${ASM} p. 62`,
    },
  },
  "aluminium-pure": {
    name: "aluminium, pure",
    density: 2702,
    heatCapacity: 903,
    conductivity: 237,
    expansion: means({ cold: 21.8, 100: 23.6, 200: 24.5, 300: 25.5 }),
    origins: {
      density: INCROPERA,
      heatCapacity: INCROPERA,
      conductivity: INCROPERA,
      expansion: `${ASM} p. 62, 1050`,
    },
  },
  "aluminium-2024-t6": {
    name: "aluminium 2024-T6",
    density: 2770,
    heatCapacity: 875,
    conductivity: 177,
    expansion: means({ 100: 22.9 }),
    origins: {
      density: INCROPERA,
      heatCapacity: INCROPERA,
      conductivity: INCROPERA,
      expansion: "Callister, Materials Science and Engineering, Table B.6",
    },
  },
  "aluminium-195-cast": {
    name: "aluminium 195, cast, 4.5 % copper",
    density: 2790,
    heatCapacity: 883,
    conductivity: 168,
    expansion: means({ 100: 23.0 }),
    origins: {
      density: INCROPERA,
      heatCapacity: INCROPERA,
      conductivity: INCROPERA,
      expansion: "user's manual table of material expansion coefficients, 195: 12.8e-6/F",
    },
  },
} satisfies Record<string, Metal>;

/** Means [1e-6/K] from 20 °C to the temperature [°C] of each key; `cold` is -50 to 20 °C. */
function means(table: { readonly cold?: number; readonly [celsius: number]: number }): ThermalExpansion {
  const { cold, ...warm } = table;
  const ranges = Object.entries(warm).map(([celsius, mean]) => ({
    to: kelvinFromCelsius(Number(celsius)),
    mean: mean * 1e-6,
  }));
  return cold === undefined ? { warm: ranges } : { cold: cold * 1e-6, warm: ranges };
}
