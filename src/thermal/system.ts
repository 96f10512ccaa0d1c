import { WORD } from "../numerics/index.js";
import type { EnsembleSystem } from "../solver/index.js";
import { createHeatCapacities } from "./capacity.js";
import { compileNetwork } from "./compiled-network.js";
import type { Loop } from "./loops.js";
import type { Network } from "./network.js";
import { addPowerSlopes, addPowers, writePowersLeft } from "./sources.js";
import { createSystemNumbers, type MemberValues } from "./system-numbers.js";
import { type WorkspaceRows, workspace } from "./workspace.js";

/**
 * [K] No part of an aircraft on the ground is colder or hotter: steps that end there come of a stage far from the solution,
 * where neither a thermostat nor a film says what it would. Project judgement: far outside what any weather or heater
 * of an aircraft that is not on fire brings about.
 */
const POSSIBLE = [120, 2000] as const;

/** An ensemble of equal networks with different numbers, ready for the solver. */
export interface ThermalSystem extends EnsembleSystem {
  /** Switches to the numbers of another configuration. */
  configure(values: MemberValues): void;
  /** Sets the inputs (inputs x members) at both ends of the time stretch [from, to]; between them they run linearly. */
  setInputs(from: number, to: number, atFrom: Float64Array, atTo: Float64Array): void;
  /** Writes every link's heat flow [W] (links x members), positive from `from` to `to`. */
  heatFlows(t: number, temps: Float64Array, out: Float64Array): void;
  /** Writes every source's power [W] (sources x members) after its limiter. */
  sourcePowers(temps: Float64Array, out: Float64Array): void;
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
  const compiled = compileNetwork(network, members, workspace);
  const { layout, sources, links, runInput, runInputs, multiply, products } = compiled;
  const heatCapacities = createHeatCapacities(network.parts, members, capacityFactors);
  const numbers = createSystemNumbers(compiled, heatCapacities.inverse);
  const rowBytes = members * WORD;
  const partBytes = network.parts.length * rowBytes;

  function play({ run, passes: { at, count } }: Loop): void {
    run(at, count, 0, rowBytes);
  }

  /** Temperatures, inputs and what follows from them, for all that is written next. */
  function load(t: number, y: Float64Array): WorkspaceRows {
    const rows = numbers.bringIn();
    rows.temp.set(y);
    runInput(runInputs.at, runInputs.count, 0, rowBytes, t - numbers.stretchStart);
    for (const loop of links.inForce) play(loop);
    heatCapacities.update(rows.temp, rows.inverse);
    return rows;
  }

  /** Net heat by heat capacity. */
  function finish({ result }: WorkspaceRows, out: Float64Array): void {
    multiply(products.at, 1, 0, partBytes);
    out.set(result);
  }

  return {
    size: network.parts.length,
    members,
    pattern: layout.pattern,
    range: POSSIBLE,
    configure: numbers.configure,
    setInputs: numbers.setInputs,
    derivative(t, y, dydt) {
      const rows = load(t, y);
      rows.net.fill(0);
      for (const loop of links.flows) play(loop);
      addPowers(numbers.working, members, numbers.power, rows.temp, rows.net);
      finish(rows, dydt);
    },
    linearise(t, y, into) {
      const rows = load(t, y);
      for (const loop of links.slopes) play(loop);
      play(links.filmSlopes);
      const { temp, net, inverse, jacobian } = rows;
      const { working, power } = numbers;
      net.fill(0);
      jacobian.fill(0);
      for (const loop of links.jacobian) play(loop);
      addPowers(working, members, power, temp, net);
      addPowerSlopes(working, members, power, temp, inverse, jacobian);
      finish(rows, into.slope);
      heatCapacities.addSlopes(temp, net, inverse, layout.diagonal, jacobian);
      into.jacobian.set(jacobian);
      net.fill(0);
      play(links.rates);
      for (const loop of links.inChange) play(loop);
      for (const loop of links.flowsOfChange) play(loop);
      finish(rows, into.slopeInTime);
    },
    heatFlows(t, temps, out) {
      const rows = load(t, temps);
      for (const loop of links.slopes) play(loop);
      out.set(rows.flow);
    },
    sourcePowers: (temps, out) => writePowersLeft(sources, members, numbers.power, temps, out),
  };
}
