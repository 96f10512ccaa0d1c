import { kelvinFromCelsius } from "../units/index.js";
import type { Metal } from "./metal.js";
import { ALUMINIUM_ALLOYS } from "./metals-aluminium.js";
import type { ThermalExpansion } from "./thermal-expansion.js";

const CALLISTER = "Callister, Materials Science and Engineering, Table B.6";
const INCROPERA = "Incropera et al., Fundamentals of Heat and Mass Transfer, Table A.1";
const FROM_MEMORY = "from memory of handbooks";

/** Steels, irons and the rest. */
const OTHER_METALS = {
  "steel-4140": {
    name: "AISI 4140 steel",
    density: 7850,
    heatCapacity: 477,
    conductivity: 42.6,
    expansion: to100(12.3),
    origins: {
      density: "mill data page, 0.284 lb/in3",
      heatCapacity: "mill data page, 0.114 Btu/(lb F)",
      conductivity: `${FROM_MEMORY}; the mill data page prints 51.9, high for an alloyed steel`,
      expansion: "mill data page, 6.83e-6/F from 68 to 212 F",
    },
  },
  "steel-4340": {
    name: "AISI 4340 steel, crankshaft class",
    density: 7850,
    heatCapacity: 470,
    conductivity: 44,
    expansion: {
      warm: [
        { to: kelvinFromCelsius(100), mean: 12.3e-6 },
        { to: kelvinFromCelsius(200), mean: 12.7e-6 },
      ],
    },
    origins: {
      density: "asm.matweb.com M434AE",
      heatCapacity: "makeitfrom.com, 4340",
      conductivity: "makeitfrom.com, 4340 (44 to 44.5)",
      expansion: "asm.matweb.com M434AE",
    },
  },
  "steel-4130": {
    name: "AISI 4130 steel",
    density: 7850,
    heatCapacity: 477,
    conductivity: 42.7,
    expansion: to100(12.2),
    origins: {
      density: FROM_MEMORY,
      heatCapacity: FROM_MEMORY,
      conductivity: FROM_MEMORY,
      expansion: `${FROM_MEMORY}; 11.2 is quoted too`,
    },
  },
  "steel-nitriding": {
    name: "nitriding steel, 1 % aluminium, barrel class",
    density: 7800,
    heatCapacity: 470,
    conductivity: 43,
    expansion: to100(11.7),
    origins: {
      density: `${FROM_MEMORY}, low confidence`,
      heatCapacity: `middle of 460 to 480, ${FROM_MEMORY}, low confidence`,
      conductivity: `middle of 35 to 52, ${FROM_MEMORY}, low confidence`,
      expansion: "wisetool.com, nitriding steels 6.5e-6/F; sources span 11.5 to 12.2",
    },
  },
  "iron-grey": {
    name: "grey cast iron",
    density: 7200,
    heatCapacity: 490,
    conductivity: 49,
    expansion: to100(10.8),
    origins: {
      density: FROM_MEMORY,
      heatCapacity: FROM_MEMORY,
      conductivity: `middle of 46 to 52, ${FROM_MEMORY}`,
      expansion: `wisetool.com, grey irons 6e-6/F; ${CALLISTER} prints 11.4`,
    },
  },
  "iron-ductile-60-40-18": {
    name: "ductile iron 60-40-18",
    density: 7100,
    heatCapacity: 500,
    conductivity: 36,
    expansion: to100(11.2),
    origins: {
      density: FROM_MEMORY,
      heatCapacity: `middle of 460 to 540, ${FROM_MEMORY}`,
      conductivity: FROM_MEMORY,
      expansion: CALLISTER,
    },
  },
  "iron-ductile-80-55-06": {
    name: "ductile iron 80-55-06",
    density: 7100,
    heatCapacity: 500,
    conductivity: 36,
    expansion: to100(10.6),
    origins: {
      density: FROM_MEMORY,
      heatCapacity: `middle of 460 to 540, ${FROM_MEMORY}`,
      conductivity: FROM_MEMORY,
      expansion: CALLISTER,
    },
  },
  copper: {
    name: "copper, pure",
    density: 8933,
    heatCapacity: 385,
    conductivity: 401,
    expansion: to100(17.0),
    origins: {
      density: INCROPERA,
      heatCapacity: INCROPERA,
      conductivity: INCROPERA,
      expansion: `${CALLISTER}, C11000`,
    },
  },
  "magnesium-az31b": {
    name: "magnesium AZ31B, wrought",
    density: 1770,
    heatCapacity: 1040,
    conductivity: 96,
    expansion: to100(26.0),
    origins: {
      density: FROM_MEMORY,
      heatCapacity: `inside 1024 to 1050, ${FROM_MEMORY}`,
      conductivity: FROM_MEMORY,
      expansion: CALLISTER,
    },
  },
  "magnesium-az91d": {
    name: "magnesium AZ91D, die cast",
    density: 1810,
    heatCapacity: 1040,
    conductivity: 72,
    expansion: to100(26.0),
    origins: {
      density: FROM_MEMORY,
      heatCapacity: `inside 1024 to 1050, ${FROM_MEMORY}`,
      conductivity: FROM_MEMORY,
      expansion: CALLISTER,
    },
  },
} satisfies Record<string, Metal>;

/** All metals by id. */
export const METALS = { ...ALUMINIUM_ALLOYS, ...OTHER_METALS } satisfies Record<string, Metal>;

export type MetalId = keyof typeof METALS;

/** A single mean from 20 to 100 °C, [1e-6/K]. */
function to100(mean: number): ThermalExpansion {
  return { warm: [{ to: kelvinFromCelsius(100), mean: mean * 1e-6 }] };
}
