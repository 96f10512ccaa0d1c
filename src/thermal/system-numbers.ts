import type { CompiledNetwork } from "./compiled-network.js";
import type { CompiledSource } from "./sources.js";
import { giveWorkspaceTo, isCurrent, type WorkspaceRows, workspaceRows } from "./workspace.js";

/** The network's numbers for every member: [row][member] as everywhere. */
export interface MemberValues {
  /** [W/K] links x members. */
  readonly conductance: Float64Array;
  /** [W] sources x members. */
  readonly power: Float64Array;
}

/** Numbers of the configuration in force, and the inputs' straight lines: what has to be brought into the workspace. */
export interface SystemNumbers {
  /** [W] sources x members. */
  power: Float64Array;
  /** Sources with any power. */
  working: readonly CompiledSource[];
  /** [s] from when on the inputs run along their lines. */
  stretchStart: number;
  configure(values: MemberValues): void;
  setInputs(from: number, to: number, atFrom: Float64Array, atTo: Float64Array): void;
  /** The system's rows, with its own numbers in them. */
  bringIn(): WorkspaceRows;
}

/** @param inverse [K/J] reciprocal heat capacities, parts x members */
export function createSystemNumbers(compiled: CompiledNetwork, inverse: Float64Array): SystemNumbers {
  const { network, members, lists, sources } = compiled;
  const inputRows = network.inputs.length * members;
  const partRows = network.parts.length * members;
  let conductance: Float64Array = new Float64Array(network.links.length * members);
  const inputsAtStart = new Float64Array(inputRows);
  const inputRates = new Float64Array(inputRows);
  let rows = workspaceRows(compiled);

  function putConductance(): void {
    rows.conductance.set(conductance);
    rows.inForce.set(conductance);
  }

  function putInputs(): void {
    rows.inputsAtStart.set(inputsAtStart);
    rows.rate.set(inputRates, partRows);
  }

  const numbers: SystemNumbers = {
    power: new Float64Array(network.sources.length * members),
    working: sources,
    stretchStart: 0,
    configure({ conductance: ofLinks, power }) {
      conductance = ofLinks;
      numbers.power = power;
      numbers.working = sources.filter(({ source }) =>
        power.subarray(source, source + members).some((p) => p !== 0),
      );
      if (isCurrent(lists)) putConductance();
    },
    setInputs(from, to, atFrom, atTo) {
      numbers.stretchStart = from;
      inputsAtStart.set(atFrom);
      for (let k = 0; k < inputRows; k++) inputRates[k] = (atTo[k] - atFrom[k]) / (to - from);
      if (isCurrent(lists)) putInputs();
    },
    bringIn() {
      if (isCurrent(lists)) return rows;
      giveWorkspaceTo(lists);
      rows = workspaceRows(compiled);
      putConductance();
      rows.inverse.set(inverse);
      putInputs();
      return rows;
    },
  };
  return numbers;
}
