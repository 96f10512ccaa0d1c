import { createHeatResponse, type HeatResponse, type ReadResponse, type Steps } from "../response/index.js";
import type { Draws } from "../simulation/index.js";
import type { PlanRequest } from "./request.js";
import type { Carriers } from "./spread.js";
import { whatIfScenario } from "./what-if.js";

/**
 * How few members answer to heat in any wind: played with the forecast's wind times a few factors, read between them, so
 * that a wind that is being moved plays nothing anew.
 */
export interface WindRange {
  readonly carriers: Carriers;
  /** Of the few. */
  readonly draws: Draws;
  responseAt(windFactor: number): ReadResponse;
  /** Plays all there is to read. */
  fill(): Steps<void>;
}

/**
 * Factors played; a wind beyond them is played itself. Closer together where less wind changes more. Project judgement,
 * held to 0.5 K by `test/planning/wind-range.test.ts`.
 */
const PLAYED = [0.25, 0.6, 1, 1.5, 2.2];

/** @param request with the wind as it is forecast */
export function createWindRange(request: PlanRequest, carriers: Carriers, draws: Draws): WindRange {
  const { scenario, heaters } = request;
  const nodes = new Map<number, HeatResponse>();

  function played(windFactor: number): HeatResponse {
    const known = nodes.get(windFactor);
    if (known !== undefined) return known;
    const changed = windFactor === 1 ? scenario : whatIfScenario(scenario, { windFactor });
    const response = createHeatResponse({ scenario: changed, heaters }, draws);
    if (PLAYED.includes(windFactor)) nodes.set(windFactor, response);
    return response;
  }

  return {
    carriers,
    draws,
    responseAt(windFactor) {
      const next = PLAYED.findIndex((factor) => factor >= windFactor);
      if (next <= 0 || PLAYED[next] === windFactor) return played(windFactor);
      const [a, b] = [PLAYED[next - 1], PLAYED[next]];
      // A laminar film goes with the square root of the wind (Incropera eq. 7.30, from memory), and temperatures nearly straight with
      // their films.
      const weight = (Math.sqrt(windFactor) - Math.sqrt(a)) / (Math.sqrt(b) - Math.sqrt(a));
      return between(played(a), played(b), weight);
    },
    *fill() {
      for (const factor of PLAYED) yield* played(factor).fill();
    },
  };
}

function between(a: HeatResponse, b: HeatResponse, weight: number): ReadResponse {
  const { parts, members } = a;
  const other = new Float64Array(parts.length * members);
  const otherEnergy = new Float64Array(members);
  const mix = (out: Float64Array, from: Float64Array) => {
    for (let k = 0; k < out.length; k++) out[k] += weight * (from[k] - out[k]);
  };
  return {
    parts,
    members,
    temps(plugIn, t, out) {
      a.temps(plugIn, t, out);
      b.temps(plugIn, t, other);
      mix(out, other);
    },
    energy(plugIn, t, out) {
      a.energy(plugIn, t, out);
      b.energy(plugIn, t, otherEnergy);
      mix(out, otherEnergy);
    },
  };
}
