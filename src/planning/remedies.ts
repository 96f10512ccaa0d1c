import { COVERS, type Cover, HEATERS, type Heater, type Installation } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import { temperatureCriteria } from "../readiness/index.js";
import { type Steps, stepFrom, timeOf } from "../response/index.js";
import { applyChange, type Draws, type Scenario } from "../simulation/index.js";
import { celsiusFromKelvin } from "../units/index.js";
import { type Candidate, createChanceFinder } from "./chance.js";
import { heatingSpan, isTooSmall, prepareRequest } from "./heater-use.js";
import type { Remedy } from "./plan.js";
import type { PlanRequest } from "./request.js";

/** [s] grid of the trial runs. */
const TRIAL_STEP = 1800;

/**
 * Tries what a user could change about a departure that cannot be met: covers not used, better heaters, a hangar. Each is
 * run at the earliest plug-in that its own limits allow, and nothing is listed that they forbid or that does not raise the
 * chance. What reaches the wanted chance comes first, the least trouble before the most.
 */
export function* triedRemedies(request: PlanRequest, draws: Draws): Steps<Remedy[]> {
  const now = best(request, request, draws)?.verdict.chance ?? 0;
  const remedies: (Remedy & { readonly trouble: number })[] = [];
  for (const trial of [...coverChanges(request), ...heaterChanges(request), ...placeChanges(request)]) {
    yield;
    const { text, trouble } = trial;
    const found = best(trial.change(request), request, draws);
    if (found === undefined || found.verdict.tooHot.length > 0) continue;
    const { plugIn, attended, verdict } = found;
    const { chance } = verdict;
    if (chance > now + WORTH_NAMING) remedies.push({ text, trouble, attended, chance, plugIn });
  }
  const reaches = ({ chance }: Remedy) => chance >= request.wish.chance;
  return remedies
    .sort((a, b) => {
      if (reaches(a) !== reaches(b)) return reaches(a) ? -1 : 1;
      return reaches(a) && a.trouble !== b.trouble ? a.trouble - b.trouble : b.chance - a.chance;
    })
    .map(({ trouble: _, ...remedy }) => remedy);
}

/** Rise of the chance below which a change is not worth naming: within the noise of the trial. */
const WORTH_NAMING = 0.03;

/** A change at its earliest plug-in; whether somebody must stay with what heats then. */
type Tried = Candidate & { readonly attended: boolean };

/** The earliest plug-in that is allowed; undefined where heaters are wanted and none may be used. */
function best(changed: PlanRequest, original: PlanRequest, draws: Draws): Tried | undefined {
  const request = settleAnew(changed, original);
  const { scenario, heaters } = request;
  const finder = createChanceFinder(request, TRIAL_STEP, draws);
  const attended = scenario.kit.heaters.some(
    (h) => h.attended && (heaters.includes(h.id) || scenario.initial.configuration.heatersOn.has(h.id)),
  );
  if (heaters.length === 0)
    return changed.heaters.length === 0 ? { ...finder.candidate(undefined), attended } : undefined;
  const { earliest, latest } = heatingSpan(request);
  const index = stepFrom(finder.grid, earliest);
  return timeOf(finder.grid, index) <= latest ? { ...finder.candidate(index), attended } : undefined;
}

/** Place and heaters have changed, so limits are settled anew; what goes off now has been on all the same. */
function settleAnew({ settled: _, ...changed }: PlanRequest, { settled }: PlanRequest): PlanRequest {
  const request = prepareRequest(changed);
  const { barred = [], heating = settled?.heating } = request.settled ?? {};
  return { ...request, settled: { barred, heating } };
}

interface Trial {
  readonly text: Finding;
  /** Rank of what it asks of people. */
  readonly trouble: number;
  readonly change: (request: PlanRequest) => PlanRequest;
}

function coverChanges({ scenario }: PlanRequest): Trial[] {
  const fitted = scenario.initial.configuration.coversOn;
  return COVERS.filter((cover) => !fitted.has(cover.id) && cover.id !== "improvised-quilt").map((cover) => ({
    text: finding("help-cover", { cover: cover.name }),
    trouble: 0,
    change: (request) => ({ ...request, scenario: withCover(request.scenario, cover) }),
  }));
}

function heaterChanges({ scenario, heaters }: PlanRequest): Trial[] {
  const power = (h: Heater) => h.elements.reduce((sum, e) => sum + e.power_w, h.duct?.power_w ?? 0);
  const used = scenario.kit.heaters
    .filter((h) => heaters.includes(h.id))
    .reduce((sum, h) => sum + power(h), 0);
  return HEATERS.filter(
    (h) => power(h) > used && !heaters.includes(h.id) && maySuggest(h, scenario.installation),
  ).map((heater) => ({
    text: finding("help-heater", { heater: heater.name }),
    trouble: heater.duct?.energy === "fuel" ? 4 : heater.attended ? 3 : 2,
    change: (request) => withHeater(request, heater),
  }));
}

function maySuggest(heater: Heater, installation: Installation): boolean {
  const { cylinders, cooling } = installation;
  if (heater.rejected !== undefined || isTooSmall(installation, heater)) return false;
  if (heater.cylinders !== undefined && heater.cylinders !== cylinders) return false;
  return cooling === "liquid" || heater.elements.every((e) => e.target !== "coolant");
}

function placeChanges({ scenario }: PlanRequest): Trial[] {
  if (scenario.initial.configuration.place === "hangar") return [];
  return [
    {
      text: finding("help-hangar", { air_c: celsiusFromKelvin(scenario.site.tempHangar) }),
      trouble: 1,
      change: (request) => ({
        ...request,
        scenario: changed(request.scenario, { do: "move", to: "hangar" }),
      }),
    },
  ];
}

function withCover(scenario: Scenario, cover: Cover): Scenario {
  const carried = scenario.kit.covers.filter((c) => c.id !== cover.id);
  const kit = { ...scenario.kit, covers: [...carried, cover] };
  return changed({ ...scenario, kit }, { do: "cover-on", covers: [cover.id] });
}

function withHeater(request: PlanRequest, heater: Heater): PlanRequest {
  const { scenario } = request;
  const kit = {
    ...scenario.kit,
    heaters: [...scenario.kit.heaters.filter((h) => h.id !== heater.id), heater],
  };
  const surface = temperatureCriteria(scenario.installation, { heaters: [heater], covers: [] }).filter((c) =>
    c.id.startsWith("surface:"),
  );
  const criteria = [...request.criteria.filter((c) => !surface.some((s) => s.id === c.id)), ...surface];
  return { ...request, scenario: { ...scenario, kit }, heaters: [heater.id], criteria };
}

function changed(scenario: Scenario, change: Parameters<typeof applyChange>[1]): Scenario {
  const configuration = applyChange(scenario.initial.configuration, change);
  return { ...scenario, initial: { ...scenario.initial, configuration } };
}
