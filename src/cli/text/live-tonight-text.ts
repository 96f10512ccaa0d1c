import type { PlanDocument } from "../../index.js";
import { type ScenarioDocument, scenarioOf } from "../../index.js";
import type { BaseState } from "../../logbook/index.js";
import { fitting, type Style } from "../style.js";
import { tonightText } from "./tonight-text.js";

/** The night of a base that is kept, as `tonight` tells one. */
export function liveTonightText(state: BaseState, plans: readonly PlanDocument[], style: Style): string[] {
  const [first] = plans;
  const scenarios = [...state.aircraft.keys()].flatMap((id) => {
    const scenario = scenarioOf(state, id, { now: Date.parse(first.start.time), from: "now" });
    return scenario.ok ? [withHours(scenario.document())] : [];
  });
  const base = { name: state.setUp.name, notice: state.setUp.notice ?? "", scenarios };
  return tonightText(base, plans, style).map((line) => fitting(line, style));
}

/** Points by hours from the full hour of the start. */
function withHours(document: ScenarioDocument): ScenarioDocument {
  const start = HOUR * Math.floor(Date.parse(document.start) / HOUR);
  const points = (document.weather.points ?? [])
    .map(({ time = "", ...point }) => ({ ...point, at_h: (Date.parse(time) - start) / HOUR }))
    .filter(({ at_h }) => at_h >= 0 && at_h <= 24);
  return { ...document, weather: { points } };
}

const HOUR = 3_600_000;
