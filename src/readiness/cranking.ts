import { type Installation, originOf } from "../aircraft/index.js";
import { type CrankingSpread, crankingModel, crankingSpread, USUAL_CRANKING } from "../starting/index.js";
import { type CriterionMaker, type EnsembleState, named, rowOf } from "./criterion.js";

/** Tries that should be in the battery: starters rest after three (training deck: 3 x 10 s, then 5 min). */
const TRIES_LEAST = 3;

const SPEED_SOURCE =
  "starter line against drag of films, compression and dry friction (held to a workshop chart, 100 to 350 %), battery by " +
  "its cold cranking rating; drag, exponent and battery spread over the cases";

/** How fast it spins: speeds [rad/s] of all members, and the model and spreads they come from. */
function crankingOf(installation: Installation, charge: number | undefined) {
  const model = crankingModel(installation, charge);
  const spreads = spreadPool();
  const speedsOf = (state: EnsembleState, out: Float64Array) => {
    const { temps, members } = state;
    const barrels = rowOf(state, "barrels") * members;
    const crankshaft = rowOf(state, "crankshaft") * members;
    const oil = rowOf(state, "oil") * members;
    const battery = rowOf(state, "battery") * members;
    const spread = spreads(members);
    for (let m = 0; m < members; m++) {
      out[m] = model.speed(
        temps[barrels + m],
        temps[crankshaft + m],
        temps[oil + m],
        temps[battery + m],
        spread[m],
      );
    }
  };
  return { model, spreads, speedsOf };
}

export const crankingSpeed: CriterionMaker = ({ installation, charge }) => {
  const { model, speedsOf } = crankingOf(installation, charge);
  return [
    {
      ...named("cranking-speed", {}),
      quantity: "rotational-speed",
      direction: "at-least",
      judged: "at-start",
      limit: model.speedMin,
      source: `${SPEED_SOURCE}; limit: ${originOf(installation.origins, "cranking.speed_min_rpm")}`,
      values: speedsOf,
    },
  ];
};

/** How often the battery can spin it. */
export const tries: CriterionMaker = ({ installation, charge }) => {
  const { model, spreads, speedsOf } = crankingOf(installation, charge);
  return [
    {
      ...named("tries", {}),
      quantity: "count",
      direction: "at-least",
      judged: "at-start",
      limit: TRIES_LEAST,
      advisory: true,
      source:
        "charge of the cold cranking test itself (30 s at the rated current) scaled by capacity; 5 s a try: Lycoming SI 1505; " +
        "three tries, then rest: training deck for starters",
      values(state, out) {
        speedsOf(state, out);
        const battery = rowOf(state, "battery") * state.members;
        const spread = spreads(state.members);
        for (let m = 0; m < out.length; m++) {
          const temp = state.temps[battery + m];
          out[m] = out[m] > 0 ? model.tries(model.current(out[m], temp, spread[m]), temp) : 0;
        }
      },
    },
  ];
};

/** Spreads by member, made once; a single member is the middle estimate. */
function spreadPool(): (members: number) => readonly CrankingSpread[] {
  const single = [USUAL_CRANKING];
  const pool: CrankingSpread[] = [];
  return (members) => {
    if (members === 1) return single;
    while (pool.length < members) pool.push(crankingSpread(pool.length));
    return pool;
  };
}
