import {
  type AwayDocument,
  awayDocument,
  isRecord,
  jsonOf,
  type Overrides,
  type ReadScenario,
} from "./documents/index.js";
import { drawnFrom, type Outcome, type PipelineOptions, scenarioFrom } from "./pipeline.js";
import { stayAway } from "./planning/index.js";
import { allCriteria } from "./readiness/index.js";

/** [0..1] chance aimed at when the document wants nothing; project judgement. */
const USUAL_CHANCE = 0.9;

/** Away from power: whether it starts at the return the document wants, how long it stays ready, what would bridge the gap. */
export function awayFromDocument(source: unknown, options: PipelineOptions = {}): Outcome<AwayDocument> {
  const { overrides = {} } = options;
  const read = scenarioFrom(withoutPower(source), { ...options, overrides: readable(source, overrides) });
  if (!read.ok) return { status: "refused", issues: read.issues };
  const told = saidAloud(read, source);
  const context = drawnFrom(told);
  const wish = told.want?.wish;
  const chance = overrides.chance ?? wish?.chance ?? USUAL_CHANCE;
  const report = stayAway({
    scenario: told.scenario,
    criteria: allCriteria(told.scenario.installation, { heaters: [], covers: [] }, told.limits),
    draws: context.draws,
    chance,
    ...(wish === undefined ? {} : { back: wish.departure, coverOffBefore: wish.coverOffBefore }),
  });
  if (report.status !== "judged") return report;
  return { status: "completed", result: awayDocument(report, chance, context) };
}

/** Nothing heats here, whatever the document plugs in. */
function withoutPower(source: unknown): unknown {
  const json = jsonOf(source);
  if (!json.ok || !isRecord(json.value)) return source;
  const { want, events, ...rest } = json.value;
  return {
    ...rest,
    plugged_in: [],
    ...(isRecord(want) ? { want: { ...want, heaters: [] } } : want === undefined ? {} : { want }),
    ...(Array.isArray(events) ? { events: events.filter((event) => !isHeating(event)) } : {}),
  };
}

function isHeating(event: unknown): boolean {
  return isRecord(event) && (event.do === "plug_in" || event.do === "unplug");
}

/** A chance alone names no return: it is no wish that could be read. */
function readable(source: unknown, overrides: Overrides): Overrides {
  const json = jsonOf(source);
  const isWished = json.ok && isRecord(json.value) && json.value.want !== undefined;
  if (isWished || overrides.departure !== undefined) return overrides;
  return { ...overrides, chance: undefined };
}

/** The assumptions as they hold without power. */
function saidAloud(read: ReadScenario, source: unknown): ReadScenario {
  const json = jsonOf(source);
  const document = json.ok && isRecord(json.value) ? json.value : {};
  const { plugged_in = [], events = [] } = document;
  const heats =
    (Array.isArray(plugged_in) && plugged_in.length > 0) || (Array.isArray(events) && events.some(isHeating));
  const assumptions = read.assumptions.filter((text) => !text.startsWith("The heater is unplugged "));
  if (heats) assumptions.push("There is no power here: every heater of the document is taken as off.");
  return { ...read, assumptions };
}
