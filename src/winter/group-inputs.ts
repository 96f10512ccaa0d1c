import { type Configuration, INPUT_NAMES } from "../aircraft/index.js";
import type { Forcing } from "../simulation/index.js";

/** Weather around a group: common to all draws, or one for each. */
export interface Surrounding {
  readonly forcing: Forcing;
  readonly each: boolean;
}

/** Inputs kept: both ends of a stretch in the few configurations there are. */
const KEPT = 8;

/** Writes the inputs (inputs x members) of groups of `each` draws at a time, one configuration and surrounding a group. */
export function inputWriter(each: number, members: number) {
  const drawn = new Float64Array(INPUT_NAMES.length * each);
  const sharedInputs = inputsLatelyUsed();
  return (
    configurations: readonly Configuration[],
    surroundings: readonly Surrounding[],
    t: number,
    out: Float64Array,
  ): void => {
    configurations.forEach((configuration, g) => {
      const { forcing, each: perDraw } = surroundings[g]!;
      if (perDraw) forcing.write(configuration, t, drawn);
      const shared = perDraw ? undefined : sharedInputs(forcing, configuration, t);
      for (let i = 0; i < INPUT_NAMES.length; i++) {
        const at = i * members + g * each;
        if (shared === undefined) out.set(drawn.subarray(i * each, (i + 1) * each), at);
        else out.fill(shared[i]!, at, at + each);
      }
    });
  };
}

/** What is common to all draws is worked out once a time and configuration: groups share it, and so do neighbouring stretches. */
function inputsLatelyUsed() {
  const lately: { forcing: Forcing; configuration: Configuration; t: number; inputs: Float64Array }[] = [];
  let next = 0;
  return (forcing: Forcing, configuration: Configuration, t: number): Float64Array => {
    const known = lately.find(
      (one) => one.t === t && one.configuration === configuration && one.forcing === forcing,
    );
    if (known !== undefined) return known.inputs;
    const inputs = new Float64Array(INPUT_NAMES.length);
    forcing.write(configuration, t, inputs);
    lately[next] = { forcing, configuration, t, inputs };
    next = (next + 1) % KEPT;
    return inputs;
  };
}
