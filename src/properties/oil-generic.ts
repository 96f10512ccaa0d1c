import { kelvinFromCelsius } from "../units/index.js";
import type { Oil } from "./oil.js";

const ORIGIN =
  "Composite of published data sheets, from memory: viscosity at 40 °C to about 10 %, pour point to about 6 K. Not one " +
  "product's data; replace it with your oil's data sheet.";

/**
 * Generic aircraft piston-engine oils, to start from until the data sheet of the oil in the engine is
 * entered.
 */
export const GENERIC_OILS: readonly Oil[] = [
  {
    id: "sae-30",
    name: "SAE 30 straight (aviation grade 65)",
    hotGrade: "30",
    nu40: 95e-6,
    nu100: 11e-6,
    density15: 880,
    pourPoint: kelvinFromCelsius(-24),
    origin: ORIGIN,
  },
  {
    id: "sae-40",
    name: "SAE 40 straight (aviation grade 80)",
    hotGrade: "40",
    nu40: 145e-6,
    nu100: 14.7e-6,
    density15: 884,
    pourPoint: kelvinFromCelsius(-21),
    origin: ORIGIN,
  },
  {
    id: "sae-50",
    name: "SAE 50 straight (aviation grade 100)",
    hotGrade: "50",
    nu40: 220e-6,
    nu100: 19.8e-6,
    density15: 887,
    pourPoint: kelvinFromCelsius(-18),
    origin: ORIGIN,
  },
  {
    id: "sae-20w-50",
    name: "SAE 20W-50 multigrade, mineral",
    winterGrade: "20W",
    hotGrade: "50",
    nu40: 165e-6,
    nu100: 19.5e-6,
    density15: 876,
    pourPoint: kelvinFromCelsius(-30),
    origin: ORIGIN,
  },
  {
    id: "sae-15w-50",
    name: "SAE 15W-50 multigrade, part synthetic",
    winterGrade: "15W",
    hotGrade: "50",
    nu40: 135e-6,
    nu100: 19e-6,
    density15: 862,
    pourPoint: kelvinFromCelsius(-39),
    origin: ORIGIN,
  },
];
