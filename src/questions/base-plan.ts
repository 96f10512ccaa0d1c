import {
  basePlanDocument,
  type ReadBase,
  type ReadBaseAircraft,
  readBaseDocument,
} from "../base-documents/index.js";
import { type BaseAircraft, planBase, type SolveMilp } from "../base-plan/index.js";
import { type BasePlanDocument, overriddenAirframe } from "../documents/index.js";
import { createRandom } from "../numerics/index.js";
import { allCriteria } from "../readiness/index.js";
import { posteriorOf, usedKit } from "../scenario/index.js";
import { type Draws, drawEnsemble } from "../simulation/index.js";
import { localText } from "../weather/index.js";
import type { Outcome, QuestionOptions } from "./question.js";

// A whole base: document -> every aircraft's scenario and draws -> one plan -> document.

export interface BasePlanOptions extends QuestionOptions {
  /** Solves the mixed-integer programs: given by the shell, which loads the solver. */
  readonly solveMilp: SolveMilp;
}

/** One plan for all aircraft of a base document. */
export async function basePlanFromDocument(
  source: unknown,
  { solveMilp, overrides = {}, readFile, onProgress }: BasePlanOptions,
): Promise<Outcome<BasePlanDocument>> {
  const { members, seed, taf, metar } = overrides;
  const asked = overriddenAirframe(source, { members, seed, taf, metar });
  const base = readBaseDocument(asked, readFile === undefined ? {} : { readFile });
  if (!base.ok) return { status: "refused", issues: base.issues };
  const [{ read: first }] = base.aircraft;
  const { weather } = drawEnsemble({ ...first.ensemble, weather: first.scenario.weather });
  const nights = new Map<number, boolean>();
  const atNight = (t: number): boolean => {
    const known = nights.get(t) ?? isNight(Number(localText(base.start + t, base.zone).slice(11, 13)));
    nights.set(t, known);
    return known;
  };
  const plan = await planBase({
    aircraft: base.aircraft.map((one) => requested(one, base, weather)),
    parked: base.parked,
    limits: base.limits,
    solveMilp,
    isNight: atNight,
    ...(onProgress === undefined ? {} : { onProgress }),
  });
  if (plan.status !== "planned") return plan;
  return { status: "completed", result: basePlanDocument(plan, base) };
}

function requested(one: ReadBaseAircraft, base: ReadBase, weather: Draws["weather"]): BaseAircraft {
  const { id, read, circuits, switched, connected, carts, told } = one;
  const { scenario, want, limits } = read;
  if (want === undefined) throw new Error(`${id} is planned without being wanted`);
  const { members, seed } = base.ensemble;
  const posterior = posteriorOf(read);
  // Aircraft differ from their descriptions each in its own way, and share the error of one forecast.
  const own = drawEnsemble({
    members,
    seed: Math.floor(2 ** 31 * createRandom(seed).stream(`aircraft ${id}`).uniform()),
    weather: scenario.weather,
    ...(posterior === undefined ? {} : { posterior }),
    ...(read.ensemble.correction === undefined ? {} : { correction: read.ensemble.correction }),
  });
  return {
    id,
    name: read.name,
    plan: {
      scenario,
      wish: want.wish,
      heaters: want.heaters,
      criteria: allCriteria(scenario.installation, usedKit(read), limits),
      draws: { ...own, weather },
    },
    circuits,
    switched,
    connected,
    carts,
    told,
  };
}

/** [h] local: work between them is night work; project judgement. */
const NIGHT = { from: 22, to: 6 };

function isNight(hour: number): boolean {
  return hour >= NIGHT.from || hour < NIGHT.to;
}
