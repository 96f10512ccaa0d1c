import { COVERS, HEATERS, INSTALLATIONS, installationById } from "../../aircraft/index.js";
import {
  type DocumentIssue,
  issueText,
  type ScenarioDocument,
  type ToldDocument,
} from "../../documents/index.js";
import type { Said } from "../../findings/index.js";
import { type LogOptions, readTemperatureLog, type TemperatureLog } from "../../learning/index.js";
import {
  type BaseState,
  eventsToCsv,
  eventsToJson,
  type LogbookEvent,
  readBaseSetUp,
  readEvents,
  type WantedDeparture,
} from "../../logbook/index.js";
import {
  awayFor,
  frostFromDocument,
  kitFromDocument,
  type LiveEstimate,
  learnFromDocument,
  type Outcome,
  planFromDocument,
  thawFromDocument,
  winterFromDocument,
} from "../../questions/index.js";
import type { AircraftScenario } from "../../scenario/index.js";
import { explainWhy, type WhyTopic, whyTopics } from "../../starting/index.js";
import { PLACES } from "../../weather/index.js";
import {
  demoOpening,
  deriveBase,
  estimateNow,
  hoursAhead,
  scenarioOf,
  scenariosTogether,
} from "../data/base.js";
import { historyOf } from "./history.js";
import type { ReplanAsk, ReplanAsked, ReplanPart } from "./protocol.js";
import { Refused } from "./refused.js";
import { Replanning } from "./replan.js";
import { baseView, coverView, forecastWeather, heaterView } from "./views.js";

type Progress = (done?: number) => boolean;
interface At {
  readonly aircraft: string;
  /** [ms] */
  readonly now: number;
}
interface OfDocument {
  readonly document: unknown;
}

let state: BaseState | undefined;
let logbook: readonly LogbookEvent[] = [];
const replanning = new Replanning();

/**
 * What the page may ask, by name. A task answers in one piece, in pieces between which other questions are let in, or
 * later; a new kind of work is a function here, and a line in protocol.ts where it is long or quick.
 */
export const TASKS = {
  /** Engines and kit to choose from. */
  catalogue: (_: Record<never, never>) => ({
    engines: INSTALLATIONS.map(({ id, name, cylinders }) => ({ id, name, cylinders })),
    heaters: HEATERS.map(heaterView),
    covers: COVERS.map(coverView),
  }),
  /** The demo base as events, beginning at `now`. */
  demo: ({ now }: { readonly now: number }) => demoOpening(now).events,
  /** Takes the logbook in; everything asked later is about it. */
  open({ events, now }: { readonly events: readonly LogbookEvent[]; readonly now: number }) {
    logbook = events;
    state = deriveBase(events);
    return baseView(opened(), now);
  },
  /** Events of a file that somebody brings, and what is wrong with the others. */
  read({ text }: { readonly text: string }) {
    const { events, issues } = readEvents(text);
    return { events, issues: issues.map(issueText) };
  },
  export: ({ events, form }: { readonly events: readonly LogbookEvent[]; readonly form: "csv" | "json" }) =>
    form === "csv" ? eventsToCsv(events) : eventsToJson(events),
  /** Plans while departures, covers or the wind are moved: parts come as they are known, the answer says that all came. */
  replan: (ask: ReplanAsk, _: Progress, tell: (part: ReplanPart) => void) =>
    replanning.replan(
      {
        state: opened(),
        departure: (asked, now) => departureOf(asked, now)?.departure,
        hoursAhead: (now) => hoursAhead(opened(), now),
        scenario: (asked, options) =>
          scenarioFor(asked.id, { ...options, departure: departureOf(asked, options.now) }).aircraft,
      },
      ask,
      tell,
    ),
  // Documents of their own, as the command line takes them; the answers are its `--json`.
  thaw: ({ document }: OfDocument, onProgress: Progress) =>
    resultOf(thawFromDocument(document, { onProgress })),
  planOf: ({ document }: OfDocument, onProgress: Progress) =>
    resultOf(planFromDocument(document, { onProgress })),
  kit: ({ document }: OfDocument, onProgress: Progress) =>
    resultOf(kitFromDocument(document, { onProgress })),
  /** `files`: texts of the files that the document names. */
  winter: (
    { document, files }: OfDocument & { readonly files: Readonly<Record<string, string>> },
    onProgress: Progress,
  ) => resultOf(winterFromDocument(document, { onProgress, readFile: (name) => fileOf(files, name) })),
  learn: ({ document, log }: OfDocument & { readonly log: TemperatureLog }, onProgress: Progress) =>
    resultOf(learnFromDocument(document, log, { onProgress })),
  /** The scenario of an aircraft as the logbook has it, for documents made of it. */
  scenario: ({ aircraft, now }: At) => scenarioFor(aircraft, { now }).document(),
  /** The same for a time that is over, with what the logbook says was done in it: for what was logged then. */
  history: (ask: Parameters<typeof historyOf>[2]) => historyOf(opened(), logbook, ask),
  /** Invented places whose winters can be made. */
  places: (_: Record<never, never>) => PLACES.map(({ id, name }) => ({ id, name })),
  /** What is wrong with a set-up, before it is kept; empty when nothing is. */
  readSetUp({ base }: { readonly base: unknown }): readonly DocumentIssue[] {
    const reading = readBaseSetUp(base);
    return reading.ok ? [] : reading.issues;
  },
  /** A temperature log of a file, or the questions that it leaves open. */
  log: ({ text, options }: { readonly text: string; readonly options?: LogOptions }) =>
    readTemperatureLog(text, options),
  /** Questions that can be answered of an engine, and one answer. */
  topics: ({ engine }: { readonly engine: string }) => whyTopics(installationById(engine)),
  why: ({
    engine,
    topic,
    tempC,
  }: {
    readonly engine: string;
    readonly topic: WhyTopic;
    readonly tempC: number;
  }) => explainWhy(topic, tempC, installationById(engine)),
  now({ aircraft, now }: At) {
    const { estimate, reasons } = knownOf(aircraft, now);
    if (estimate === undefined) throw new Refused(reasons);
    return estimate.now;
  },
  away: (ask: AwayQuestion) => resultOf(awayFor(awayScenario(ask))),
  /** Frost on an aluminium wing outside, through the time the forecast reaches. */
  frost: ({ now }: { readonly now: number }) => frost(now),
  /** What a pasted METAR or TAF says, before it is kept. */
  forecast: forecastWeather,
  /** All aircraft and what they share as one question; `told` is the plan before, changed for good reason only. */
  async wholeBase({ now, members, told }: { now: number; members: number; told: readonly ToldDocument[] }) {
    const base = opened();
    const together = scenariosTogether(base, {
      now,
      members,
      estimateOf: (id) => knownOf(id, now).estimate,
    });
    if (!together.ok) throw new Refused([together.reason]);
    // Kept apart: most nights nobody asks for the plan of a whole base.
    const { documentOf } = await import("./whole-base.js");
    return { document: documentOf(base.setUp, together.scenarios, told), later: together.later };
  },
  async basePlan({ document }: OfDocument, onProgress: Progress) {
    const { planTogether } = await import("./whole-base.js");
    return resultOf(await planTogether(document, onProgress));
  },
};

interface AwayQuestion extends At {
  readonly members: number;
  /** [h] since it was shut down from cruise, or as the logbook has it; "unknown": nobody said, the cold side is taken. */
  readonly engine: number | "logged" | "unknown";
  /** Whether covers are on now, and were since the shut-down; as the logbook has it, or else none, where left out. */
  readonly isCovered?: boolean;
  /** [ms] when it is to be started again. */
  readonly back: number;
  /** Weather as somebody standing there sees it, instead of the forecast. */
  readonly here?: { readonly tempC: number; readonly windMps: number; readonly cloud: number };
}

function awayScenario({
  aircraft,
  now,
  members,
  engine,
  isCovered,
  back,
  here,
}: AwayQuestion): AircraftScenario {
  const logged = engine === "logged";
  const { coversOn = [], setUp } = opened().aircraft.get(aircraft) ?? {};
  const covers = setUp?.kit.covers.map((cover) => (typeof cover === "string" ? cover : cover.id)) ?? [];
  const isOn = isCovered ?? (logged && coversOn.length > 0);
  const options = {
    now,
    members,
    hours: AWAY_HOURS,
    departure: { id: "back", departure: back, pulledOut: false },
    withoutPower: true,
    coversOn: isOn ? covers : [],
    ...(logged ? {} : { initial: engine === "unknown" ? {} : { shut_down_h_ago: engine } }),
  };
  return scenarioFor(aircraft, options, here && fixedWeather(here)).aircraft;
}

/** [h] looked ahead for how long a warm engine lasts. */
const AWAY_HOURS = 12;
/** Drawn nights for the frost row: enough to tell likely from unlikely. */
const FROST_MEMBERS = 20;

function fileOf(files: Readonly<Record<string, string>>, name: string) {
  const text = files[name];
  return text === undefined ? { ok: false as const, reason: "not chosen" } : { ok: true as const, text };
}

/** The departure tried, or the soonest wanted. */
function departureOf({ id, departure, chance }: ReplanAsked, now: number): WantedDeparture | undefined {
  const wanted = opened()
    .aircraft.get(id)
    ?.departures.find((d) => d.departure > now);
  if (departure === undefined && wanted === undefined) return undefined;
  return {
    ...{ id: "tried", pulledOut: false, departure: departure ?? now },
    ...wanted,
    ...(departure === undefined ? {} : { departure }),
    ...(chance === undefined ? {} : { chance }),
  };
}

function opened(): BaseState {
  if (state === undefined) throw new Refused(["no base has been set up"]);
  return state;
}

/** Estimates of this logbook, by aircraft: a drag asks for the same one many times. */
const estimates = new Map<string, KnownEstimate>();
/** [ms] an estimate is used on before a new one is made. */
const ESTIMATE_LASTS = 120_000;

interface KnownEstimate {
  readonly at: number;
  readonly of: BaseState;
  /** Undefined where it cannot be worked out: a plan then begins at the air, and says so. */
  readonly estimate: LiveEstimate | undefined;
  /** Why there is none. */
  readonly reasons: readonly Said[];
}

function knownOf(aircraft: string, now: number): KnownEstimate {
  const known = estimates.get(aircraft);
  const base = opened();
  if (known !== undefined && known.of === base && Math.abs(known.at - now) < ESTIMATE_LASTS) {
    return known;
  }
  // The next one goes on from the last, as long as it rests on the same past.
  const outcome = estimateNow(base, aircraft, { now, readings: [], saved: known?.estimate?.saved });
  const estimate = outcome.status === "completed" ? outcome.result : undefined;
  const made = { at: now, of: base, estimate, reasons: reasonsOf(outcome) };
  estimates.set(aircraft, made);
  return made;
}

function reasonsOf(outcome: Outcome<unknown>): readonly Said[] {
  if (outcome.status === "completed") return [];
  if (outcome.status !== "refused") return [outcome.message];
  // What the logbook leaves out is a finding of its own.
  return outcome.issues.map((issue) => issue.reason ?? issueText(issue));
}

function scenarioFor(
  aircraft: string,
  options: Omit<Parameters<typeof scenarioOf>[2], "from">,
  weather?: ScenarioDocument["weather"],
) {
  const base = opened();
  const found = scenarioOf(weather === undefined ? base : withWeather(base, weather, options.now), aircraft, {
    ...options,
    from: "now",
    estimate: knownOf(aircraft, options.now).estimate,
  });
  if (!found.ok) throw new Refused([found.reason]);
  return found;
}

function withWeather(base: BaseState, weather: ScenarioDocument["weather"], now: number): BaseState {
  const at = new Date(now).toISOString();
  const id = "00000000-0000-8000-8000-000000000000";
  return { ...base, forecasts: [{ kind: "forecast", id, at, origin: "as seen here", weather }] };
}

/** What somebody sees, taken to last: every three hours, so that no stretch is without weather. */
function fixedWeather(here: NonNullable<AwayQuestion["here"]>): ScenarioDocument["weather"] {
  const points = Array.from({ length: AWAY_HOURS / 3 + 2 }, (_, i) => ({
    at_h: 3 * i,
    air_c: here.tempC,
    wind_mps: here.windMps,
    cloud_fraction: here.cloud,
  }));
  return { points };
}

function frost(now: number) {
  const base = opened();
  const [first] = base.aircraft.keys();
  if (first === undefined) throw new Refused(["no aircraft"]);
  const view = baseView(base, now).weather;
  if (view === undefined) throw new Refused(["no weather"]);
  const last = view.time[view.time.length - 1];
  const start = Math.max(now, view.time[0]);
  const hours = Math.floor((Math.min(last, now + 36 * 3_600_000) - start) / 3_600_000);
  const outcome = frostFromDocument({
    soakline: 2,
    kind: "frost",
    name: base.setUp.name,
    start: new Date(start).toISOString(),
    zone: base.setUp.zone,
    hours,
    weather: {
      points: view.time.map((time, i) => ({
        time: new Date(time).toISOString(),
        air_c: view.airC[i],
        wind_mps: view.windMps[i],
        dew_point_c: Math.min(view.dewPointC[i], view.airC[i]),
        cloud_fraction: view.cloud[i],
      })),
    },
    panel: "aluminium-painted",
    ensemble: { members: FROST_MEMBERS, seed: 1 },
  });
  const { course, upper } = resultOf(outcome);
  return {
    time: course.time_h.map((h) => start + h * 3_600_000),
    /** [kg/m²] on the upper side of a wing, middle and 95 % of the cases. */
    middle: course.upper_frost_kg_per_m2.p50,
    most: course.upper_frost_kg_per_m2.p95,
    chance: upper.chance,
  };
}

function resultOf<T>(outcome: Outcome<T>): T {
  if (outcome.status === "completed") return outcome.result;
  if (outcome.status === "refused") throw new Refused(outcome.issues.map(issueText));
  throw new Refused([outcome.message]);
}
