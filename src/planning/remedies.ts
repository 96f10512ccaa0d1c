import { COVERS, type Cover, HEATERS, type Heater, type Installation } from "../aircraft/index.js";
import { temperatureCriteria } from "../readiness/index.js";
import { applyChange, type Draws, type Scenario } from "../simulation/index.js";
import { createChanceFinder } from "./chance.js";
import type { Remedy } from "./plan.js";
import type { PlanRequest } from "./request.js";
import type { Steps } from "./steps.js";

/** [s] grid of the trial runs. */
const TRIAL_STEP = 1800;

/**
 * Tries what a user could change about a departure that cannot be met: covers not used, better heaters, a hangar, the
 * next hours. Each change is run at the earliest plug-in; nothing is listed that does not raise the chance.
 */
export function* triedRemedies(request: PlanRequest, draws: Draws, earliest: number): Steps<Remedy[]> {
  const index = Math.ceil(earliest / TRIAL_STEP);
  const chanceOf = (changed: PlanRequest) => {
    const finder = createChanceFinder(changed, TRIAL_STEP, draws);
    return finder.candidate(changed.heaters.length > 0 ? index : undefined).verdict.chance;
  };
  const now = chanceOf(request);
  const remedies: Remedy[] = [];
  for (const trial of [...coverChanges(request), ...heaterChanges(request), ...placeChanges(request)]) {
    yield;
    const chance = chanceOf(trial.change(request));
    if (chance > now + WORTH_NAMING) {
      remedies.push({ text: trial.text, chance, plugIn: index * TRIAL_STEP });
    }
  }
  return remedies.sort((a, b) => b.chance - a.chance);
}

/** Rise of the chance below which a change is not worth naming: within the noise of the trial. */
const WORTH_NAMING = 0.03;

interface Trial {
  readonly text: string;
  readonly change: (request: PlanRequest) => PlanRequest;
}

function coverChanges({ scenario }: PlanRequest): Trial[] {
  const fitted = scenario.initial.configuration.coversOn;
  return COVERS.filter((cover) => !fitted.has(cover.id) && cover.id !== "improvised-quilt").map((cover) => ({
    text: `put on now: ${cover.name}`,
    change: (request) => ({ ...request, scenario: withCover(request.scenario, cover) }),
  }));
}

function heaterChanges({ scenario, heaters }: PlanRequest): Trial[] {
  const power = (h: Heater) => h.elements.reduce((sum, e) => sum + e.power_w, h.duct?.power_w ?? 0);
  const used = scenario.kit.heaters
    .filter((h) => heaters.includes(h.id))
    .reduce((sum, h) => sum + power(h), 0);
  return HEATERS.filter(
    (h) => power(h) > used && !heaters.includes(h.id) && fits(h, scenario.installation),
  ).map((heater) => ({
    text: `heat with: ${heater.name}`,
    change: (request) => withHeater(request, heater),
  }));
}

function fits(heater: Heater, { cylinders, cooling }: Installation): boolean {
  if (heater.cylinders !== undefined && heater.cylinders !== cylinders) return false;
  return cooling === "liquid" || heater.elements.every((e) => e.target !== "coolant");
}

function placeChanges({ scenario }: PlanRequest): Trial[] {
  if (scenario.initial.configuration.place === "hangar") return [];
  const degrees = Math.round(scenario.site.tempHangar - 273.15);
  return [
    {
      text: `bring it into the hangar (${degrees} °C) now`,
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
