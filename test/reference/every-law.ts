import { UniformTable } from "../../src/numerics/index.js";
import { GENERIC_OILS, kinematicViscosityOil } from "../../src/properties/index.js";
import { type SolveResult, solve } from "../../src/solver/index.js";
import { checkedNetwork, createThermalSystem } from "../../src/thermal/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { type Description, DURATION, describeProblem } from "./cases.mjs";

const OIL = GENERIC_OILS[0];
const WARM = kinematicViscosityOil(OIL, kelvinFromCelsius(50));

/** What the catalogue does not use today: radiation between a part and the sky, ice that melts, a film to an input. */
const NETWORK = checkedNetwork({
  parts: [
    { name: "pad", heatCapacity: 200 },
    { name: "oil", heatCapacity: 8000, heatCapacitySlope: 20 },
    { name: "case", heatCapacity: 12_000 },
    { name: "air", heatCapacity: 1500 },
    { name: "skin", heatCapacity: 5000, latentHeat: 3e5 },
  ],
  inputs: ["outside", "sky", "skin_factor", "draught"],
  links: [
    { name: "pad-oil", from: "pad", to: "oil", law: "conduction", parameters: [] },
    { name: "oil-case", from: "oil", to: "case", law: "free-convection", parameters: [], filmFactor: film() },
    {
      name: "oil-outside",
      from: "oil",
      to: "outside",
      law: "conduction",
      parameters: [],
      filmFactor: film(),
    },
    { name: "case-air", from: "case", to: "air", law: "free-convection", parameters: [] },
    { name: "air-skin", from: "air", to: "skin", law: "free-convection", parameters: [] },
    {
      name: "skin-outside",
      from: "skin",
      to: "outside",
      law: "conduction",
      parameters: [],
      factorInput: "skin_factor",
    },
    { name: "skin-sky", from: "skin", to: "sky", law: "radiation", parameters: [] },
    {
      name: "air-outside",
      from: "air",
      to: "outside",
      law: "ventilation",
      parameters: [],
      windInput: "draught",
    },
  ],
  sources: [
    { name: "pad", part: "pad", parameters: [], limiter: { senses: "oil", setPoint: 320, width: 4 } },
    { name: "case", part: "case", parameters: [] },
  ],
});

const CONDUCTANCE = Float64Array.of(1.1, 8, 0.3, 9, 14, 1, 5, 6);
const ON = { conductance: CONDUCTANCE, power: Float64Array.of(220, 300) };
const OFF = { conductance: CONDUCTANCE, power: Float64Array.of(0, 0) };

const HOUR = 3600;
const BOUNDS = [0, 5 * HOUR, 9.5 * HOUR, 20 * HOUR, 31 * HOUR, 40.25 * HOUR, DURATION];
/** Outside, sky, factor and draught at the bounds: the skin goes through melting and back more than once. */
const INPUTS = [
  [262, 245, 8, 2],
  [270, 255, 12, 0],
  [276, 270, 10, 4],
  [268, 250, 16, 9],
  [271, 265, 14, 1],
  [279, 275, 6, 0],
  [264, 240, 9, 3],
];

/** The network above over two days, for our solver and as data. */
export function everyLawRun(sampleTimes: readonly number[]): {
  readonly description: Description;
  readonly advance: (tolerance: number) => SolveResult;
} {
  const stretchOf = (t: number) => BOUNDS.findLastIndex((bound) => bound <= t);
  const valuesAt = (t: number) => (stretchOf(t) % 2 === 1 ? ON : OFF);
  const initial = Float64Array.of(262, 265, 262, 262, 262);
  const inputsAt = (t: number) => Float64Array.from(INPUTS[BOUNDS.indexOf(t)]);
  const description = describeProblem({
    name: "every-law",
    network: NETWORK,
    oil: OIL,
    valuesIn: (values: typeof ON) => values,
    writeInputs: (_, t, out) => out.set(inputsAt(t)),
    configurationAt: valuesAt,
    bounds: BOUNDS,
    initial,
    sampleTimes,
  });
  const system = createThermalSystem(NETWORK, 1, new Float64Array(NETWORK.parts.length).fill(1));
  const advance = (tolerance: number) =>
    solve({
      system,
      initial,
      start: 0,
      end: DURATION,
      tolerance: { absolute: tolerance, relative: 1e-9 },
      jumps: BOUNDS.slice(1, -1),
      sampleTimes,
      onStretch(from, to) {
        system.configure(valuesAt(from));
        system.setInputs(from, to, inputsAt(from), inputsAt(to));
      },
    });
  return { description, advance };
}

function film(): UniformTable {
  const factor = (temp: number) => (WARM / kinematicViscosityOil(OIL, temp)) ** 0.25;
  return new UniformTable(factor, kelvinFromCelsius(-70), kelvinFromCelsius(250), 160);
}
