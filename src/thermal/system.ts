import type { EnsembleSystem } from "../solver/index.js";
import { createStores } from "./capacity.js";
import type { LinkSlopes } from "./laws.js";
import { layoutOf } from "./layout.js";
import { compileLinks, type LinkSet, modulate } from "./links.js";
import type { Network } from "./network.js";
import { addFilmSlopes, addRates, addSlopes } from "./slopes.js";
import { addPowerSlopes, addPowers, compileSources, powerLeft } from "./sources.js";

/**
 * [K] No part of an aircraft on the ground is colder or hotter: steps that end there come of a stage far from the solution,
 * where neither a thermostat nor a film says what it would. Project judgement: far outside what any weather or heater
 * of an aircraft that is not on fire brings about.
 */
const POSSIBLE = [120, 2000] as const;

/** The network's numbers for every member: [row][member] as everywhere. */
export interface MemberValues {
  /** [W/K] links x members. */
  readonly conductance: Float64Array;
  /** [W] sources x members. */
  readonly power: Float64Array;
}

/** An ensemble of equal networks with different numbers, ready for the solver. */
export interface ThermalSystem extends EnsembleSystem {
  /** Switches to the numbers of another configuration. */
  configure(values: MemberValues): void;
  /** Sets the inputs (inputs x members) at both ends of the time stretch [from, to]; between them they run linearly. */
  setInputs(from: number, to: number, atFrom: Float64Array, atTo: Float64Array): void;
  /** Writes every link's heat flow [W] (links x members), positive from `from` to `to`. */
  heatFlows(t: number, temps: Float64Array, out: Float64Array): void;
  /** Writes every source's power [W] (sources x members) after its limiter. */
  sourcePowers(t: number, temps: Float64Array, out: Float64Array): void;
}

/**
 * Compiles a network for `members` members.
 * @param capacityFactors multipliers of the heat capacities, parts x members [1]
 */
export function createThermalSystem(
  network: Network,
  members: number,
  capacityFactors: Float64Array,
): ThermalSystem {
  const layout = layoutOf(network);
  const links = compileLinks(network, layout, members);
  const sources = compileSources(network, layout, members);
  const stores = createStores(network.parts, members, capacityFactors);
  const { inverse } = stores;
  const partRows = network.parts.length * members;
  const rows = partRows + network.inputs.length * members;
  const linkRows = network.links.length * members;

  /** Temperatures of the parts, then the inputs. */
  const temp = new Float64Array(rows);
  /** How fast the inputs change; zero in the rows of the parts. */
  const rate = new Float64Array(rows);
  const inputsAtStart = new Float64Array(rows - partRows);
  let stretchStart = 0;
  /** Numbers of the configuration. */
  let conductance: Float64Array = new Float64Array(linkRows);
  let power: Float64Array = new Float64Array(network.sources.length * members);
  /** Conductances in force, and their change in time where an input multiplies them. */
  const inForce = { members, temp, conductance: new Float64Array(linkRows) };
  const inChange = { members, temp, conductance: new Float64Array(linkRows) };
  /** Net heat into each part [W]; what goes into an input ends in that input's row, which nobody reads. */
  const net = new Float64Array(rows);
  const slopes: LinkSlopes = {
    flow: new Float64Array(linkRows),
    byFrom: new Float64Array(linkRows),
    byTo: new Float64Array(linkRows),
    byWind: new Float64Array(linkRows),
  };

  function load(t: number, y: Float64Array, { modulated }: LinkSet): void {
    loadTemps(temp, y, inputsAtStart, rate, t - stretchStart);
    for (const link of modulated) modulate(link, members, temp, temp, conductance, inForce.conductance);
  }

  function linearise({ groups, modulated }: LinkSet): void {
    for (const group of groups) group.law.writeSlopes(group, inForce, slopes);
    for (const link of modulated) addFilmSlopes(link, members, temp, slopes);
  }

  return {
    size: network.parts.length,
    members,
    pattern: layout.pattern,
    range: POSSIBLE,
    configure(values) {
      conductance = values.conductance;
      power = values.power;
      inForce.conductance.set(conductance);
    },
    setInputs(from, to, atFrom, atTo) {
      stretchStart = from;
      inputsAtStart.set(atFrom);
      for (let k = 0; k < inputsAtStart.length; k++) rate[partRows + k] = (atTo[k] - atFrom[k]) / (to - from);
    },
    derivative(t, y, dydt) {
      load(t, y, links.all);
      stores.update(temp);
      net.fill(0);
      for (const group of links.all.groups) group.law.addFlows(group, inForce, net);
      addPowers(sources, members, power, temp, net);
      multiply(net, inverse, dydt);
    },
    jacobian(t, y, values, dydt) {
      load(t, y, links.all);
      stores.update(temp);
      linearise(links.all);
      net.fill(0);
      values.fill(0);
      for (const target of links.targets) addSlopes(target, members, slopes, inverse, net, values);
      addPowers(sources, members, power, temp, net);
      addPowerSlopes(sources, members, power, temp, inverse, values);
      multiply(net, inverse, dydt);
      stores.addSlopes(temp, net, layout.diagonal, values);
    },
    timeDerivative(t, y, dfdt) {
      load(t, y, links.timeDependent);
      stores.update(temp);
      net.fill(0);
      linearise(links.timeDependent);
      for (const group of links.timeDependent.groups) addRates(group, members, slopes, rate, net);
      for (const link of links.multiplied.modulated) {
        modulate(link, members, temp, rate, conductance, inChange.conductance);
      }
      for (const group of links.multiplied.groups) group.law.addFlows(group, inChange, net);
      multiply(net, inverse, dfdt);
    },
    heatFlows(t, temps, out) {
      load(t, temps, links.all);
      for (const group of links.single) {
        const [to] = group.to;
        net.fill(0, to, to + members);
        group.law.addFlows(group, inForce, net);
        out.set(net.subarray(to, to + members), group.link[0]);
      }
    },
    sourcePowers(t, temps, out) {
      load(t, temps, links.all);
      for (const { source, senses, limiter } of sources) {
        for (let m = 0; m < members; m++)
          out[source + m] = powerLeft(limiter, power[source + m], temp[senses + m]);
      }
    },
  };
}

/** Temperatures from the state, inputs from their straight lines. */
function loadTemps(
  temp: Float64Array,
  y: Float64Array,
  inputsAtStart: Float64Array,
  rate: Float64Array,
  sinceStart: number,
): void {
  const parts = y.length;
  for (let k = 0; k < parts; k++) temp[k] = y[k];
  for (let k = 0; k < inputsAtStart.length; k++) {
    const row = (parts + k) | 0;
    temp[row] = inputsAtStart[k] + rate[row] * sinceStart;
  }
}

function multiply(net: Float64Array, inverseCapacity: Float64Array, out: Float64Array): void {
  for (let k = 0; k < out.length; k++) out[k] = net[k] * inverseCapacity[k];
}
