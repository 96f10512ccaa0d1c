import { add, createRowLayout, createRowMemory, mul, rowKernel, WORD } from "../numerics/index.js";
import type { EnsembleSystem } from "../solver/index.js";
import { createStores } from "./capacity.js";
import { layoutOf } from "./layout.js";
import { compileLinks, type Loop } from "./links.js";
import type { Network } from "./network.js";
import { placesOf, rowsAt } from "./places.js";
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
  sourcePowers(temps: Float64Array, out: Float64Array): void;
}

/** Inputs from their straight lines. */
const RUN_INPUT = rowKernel(
  { input: "row", atStart: "row", rate: "row" } as const,
  ["sinceStart"],
  ({ input, atStart, rate, sinceStart }, { set }) => set(input, add(atStart, mul(rate, sinceStart))),
);
const MULTIPLY = rowKernel(
  { result: "row", net: "row", inverse: "row" } as const,
  [],
  ({ result, net, inverse }, { set }) => set(result, mul(net, inverse)),
);

/** What all systems work in, one at a time. */
const bench = createRowMemory();
let atBench: ThermalSystem | undefined;

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
  const sources = compileSources(network, layout, members);
  const stores = createStores(network.parts, members, capacityFactors);
  const parts = network.parts.length;
  const rowBytes = members * WORD;
  const partRows = parts * members;
  const inputRows = network.inputs.length * members;
  const linkRows = network.links.length * members;
  const nonzeroRows = layout.pattern.column.length * members;

  const runInput = bench.bind(RUN_INPUT);
  const multiply = bench.bind(MULTIPLY);
  const lists = createRowLayout();
  const places = placesOf(network, layout.pattern.column.length, members, lists);
  const links = compileLinks(network, layout, places, lists, bench);
  const runInputs = lists.list(
    RUN_INPUT,
    network.inputs.map((_, i) => [places.temp(parts + i), places.inputAtStart(i), places.rate(parts + i)]),
  );
  const products = lists.list(MULTIPLY, [[places.result(0), places.net(0), places.inverse(0)]]);

  /** Numbers of the configuration, and the inputs' straight lines: what has to be brought to the bench. */
  let conductance: Float64Array = new Float64Array(linkRows);
  let power: Float64Array = new Float64Array(network.sources.length * members);
  let working = sources;
  const inputsAtStart = new Float64Array(inputRows);
  const inputRates = new Float64Array(inputRows);
  let stretchStart = 0;
  let rows = rowsAtBench();

  function rowsAtBench() {
    const take = (place: number, count: number) => rowsAt(bench, place, count);
    return {
      temp: take(places.temp(0), partRows + inputRows),
      rate: take(places.rate(0), partRows + inputRows),
      net: take(places.net(0), partRows + inputRows),
      inputsAtStart: take(places.inputAtStart(0), inputRows),
      conductance: take(places.conductance(0), linkRows),
      inForce: take(places.inForce(0), linkRows),
      flow: take(places.flow(0), linkRows),
      inverse: take(places.inverse(0), partRows),
      result: take(places.result(0), partRows),
      jacobian: take(places.jacobian(0), nonzeroRows),
    };
  }

  function comeToBench(): void {
    if (atBench === system) return;
    atBench = system;
    bench.install(lists);
    rows = rowsAtBench();
    putConductance();
    rows.inverse.set(stores.inverse);
    rows.inputsAtStart.set(inputsAtStart);
    rows.rate.set(inputRates, partRows);
  }

  function putConductance(): void {
    rows.conductance.set(conductance);
    rows.inForce.set(conductance);
  }

  function play({ run, passes: { at, count } }: Loop): void {
    run(at, count, 0, rowBytes);
  }

  function load(t: number, y: Float64Array): void {
    comeToBench();
    const { temp, inverse } = rows;
    temp.set(y);
    runInput(runInputs.at, runInputs.count, 0, rowBytes, t - stretchStart);
    for (const loop of links.inForce) play(loop);
    stores.update(temp, inverse);
  }

  /** Net heat by heat capacity. */
  function finish(out: Float64Array): void {
    multiply(products.at, 1, 0, partRows * WORD);
    out.set(rows.result);
  }

  const system: ThermalSystem = {
    size: parts,
    members,
    pattern: layout.pattern,
    range: POSSIBLE,
    configure(values) {
      conductance = values.conductance;
      power = values.power;
      working = sources.filter(({ source }) => power.subarray(source, source + members).some((p) => p !== 0));
      if (atBench === system) putConductance();
    },
    setInputs(from, to, atFrom, atTo) {
      stretchStart = from;
      inputsAtStart.set(atFrom);
      for (let k = 0; k < inputRows; k++) inputRates[k] = (atTo[k] - atFrom[k]) / (to - from);
      if (atBench !== system) return;
      rows.inputsAtStart.set(inputsAtStart);
      rows.rate.set(inputRates, partRows);
    },
    derivative(t, y, dydt) {
      load(t, y);
      rows.net.fill(0);
      for (const loop of links.flows) play(loop);
      addPowers(working, members, power, rows.temp, rows.net);
      finish(dydt);
    },
    linearise(t, y, into) {
      load(t, y);
      for (const loop of links.slopes) play(loop);
      play(links.filmSlopes);
      const { temp, net, inverse, jacobian } = rows;
      net.fill(0);
      jacobian.fill(0);
      for (const loop of links.jacobian) play(loop);
      addPowers(working, members, power, temp, net);
      addPowerSlopes(working, members, power, temp, inverse, jacobian);
      finish(into.slope);
      stores.addSlopes(temp, net, inverse, layout.diagonal, jacobian);
      into.jacobian.set(jacobian);
      net.fill(0);
      play(links.rates);
      for (const loop of links.inChange) play(loop);
      for (const loop of links.flowsOfChange) play(loop);
      finish(into.slopeInTime);
    },
    heatFlows(t, temps, out) {
      load(t, temps);
      for (const loop of links.slopes) play(loop);
      out.set(rows.flow);
    },
    sourcePowers(temps, out) {
      for (const { source, senses, limiter } of sources) {
        for (let m = 0; m < members; m++)
          out[source + m] = powerLeft(limiter, power[source + m], temps[senses + m]);
      }
    },
  };
  return system;
}
