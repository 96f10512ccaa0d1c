import { UniformTable } from "../../src/numerics/index.js";
import { checkedNetwork, type Network } from "../../src/thermal/index.js";

const FILM = new UniformTable((t) => Math.exp((t - 300) / 60), 200, 420, 100);

/** A small network that uses every law, input, limiter and heat store there is. */
export const EXAMPLE: Network = checkedNetwork({
  parts: [
    { name: "pad", heatCapacity: 200 },
    { name: "oil", heatCapacity: 8000, heatCapacitySlope: 20, parameter: "stores" },
    { name: "case", heatCapacity: 12_000, parameter: "stores" },
    { name: "air", heatCapacity: 1500 },
    { name: "skin", heatCapacity: 5000, latentHeat: 3e5 },
  ],
  inputs: ["outside", "sky", "skin_factor", "draught"],
  links: [
    { name: "pad-oil", from: "pad", to: "oil", law: "conduction", parameters: [] },
    {
      name: "oil-case",
      from: "oil",
      to: "case",
      law: "free-convection",
      parameters: [],
      filmFactor: FILM,
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
    {
      name: "outside-case",
      from: "outside",
      to: "case",
      law: "ventilation",
      parameters: [],
      windInput: "draught",
    },
    {
      name: "oil-outside",
      from: "oil",
      to: "outside",
      law: "free-convection",
      parameters: [],
      factorInput: "skin_factor",
      filmFactor: FILM,
    },
  ],
  sources: [
    { name: "pad", part: "pad", parameters: [], limiter: { senses: "oil", setPoint: 320, width: 4 } },
    { name: "case", part: "case", parameters: [] },
  ],
});

export const CONDUCTANCE = [1.1, 8, 9, 7, 1, 5, 14, 0.4, 0.05];
export const POWER = [220, 30];
/** Inputs at both ends of a stretch of an hour: everything changes. */
export const INPUTS_FROM = [250, 235, 16, 2];
export const INPUTS_TO = [246, 228, 22, 9];
