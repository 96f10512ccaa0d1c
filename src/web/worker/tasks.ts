import { COVERS, HEATERS, INSTALLATIONS, installationById } from "../../aircraft/index.js";
import { frostFromDocument, thawFromDocument } from "../../airframe-pipeline.js";
import { awayFromDocument } from "../../away-pipeline.js";
import { issueText, type NowDocument, type ScenarioDocument } from "../../documents/index.js";
import { readTemperatureLog } from "../../learning/index.js";
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
  explainFromDocument,
  learnFromDocument,
  type Outcome,
  planFromDocument,
  simulateFromDocument,
} from "../../pipeline.js";
import { explainWhy, whyTopics } from "../../starting/index.js";
import { PLACES } from "../../weather/index.js";
import { kitFromDocument, winterFromDocument } from "../../winter-pipeline.js";
import {
  demoOpening,
  deriveBase,
  estimateNow,
  type SavedEstimate,
  scenarioOf,
  scenariosTogether,
} from "../data/base.js";
import { historyOf } from "./history.js";
import type { Pieces } from "./jobs.js";
import type { Answer, Ask, Catalogue, FrostView, Part, ReplanAsked, WorkKind } from "./protocol.js";
import { Refused } from "./refused.js";
import { Replanning } from "./replan.js";
import { baseView, coverView, forecastWeather, heaterView } from "./views.js";

type Progress = (done?: number) => boolean;
/** A task answers in one piece, in pieces between which other questions are let in, or later. */
type Tasks = {
  readonly [K in WorkKind]: (
    ask: Ask<K>,
    onProgress: Progress,
    tell: (part: Part<K>) => void,
  ) => Answer<K> | Pieces<Answer<K>> | Promise<Answer<K>>;
};

let state: BaseState | undefined;
let logbook: readonly LogbookEvent[] = [];
const replanning = new Replanning();

export const TASKS: Tasks = {
  catalogue,
  demo: ({ now }) => demoOpening(now).events,
  open({ events, now }) {
    logbook = events;
    state = deriveBase(events);
    return baseView(opened(), now);
  },
  read({ text }) {
    const { events, issues } = readEvents(text);
    return { events, issues: issues.map(issueText) };
  },
  export: ({ events, form }) => (form === "csv" ? eventsToCsv(events) : eventsToJson(events)),
  plan({ aircraft, now, departure, chance, members }, onProgress) {
    const wanted = opened()
      .aircraft.get(aircraft)
      ?.departures.find((d) => d.departure > now);
    const tried =
      departure === undefined && chance === undefined
        ? undefined
        : {
            ...{ id: "tried", pulledOut: false, departure: departure ?? wanted?.departure ?? now },
            ...wanted,
            ...(departure === undefined ? {} : { departure }),
            ...(chance === undefined ? {} : { chance }),
          };
    const document = documentFor(aircraft, {
      now,
      members,
      ...(tried === undefined ? {} : { departure: tried }),
    });
    return resultOf(planFromDocument(document, { onProgress }));
  },
  replan: (ask, _, tell) =>
    replanning.replan(
      {
        state: opened(),
        departure: (asked, now) => departureOf(asked, now)?.departure,
        scenario(asked, options) {
          const departure = departureOf(asked, options.now);
          return documentFor(asked.id, { ...options, ...(departure === undefined ? {} : { departure }) });
        },
      },
      ask,
      tell,
    ),
  simulate: ({ document }, onProgress) => resultOf(simulateFromDocument(document, { onProgress })),
  explain: ({ document }, onProgress) => resultOf(explainFromDocument(document, { onProgress })),
  thaw: ({ document }, onProgress) => resultOf(thawFromDocument(document, { onProgress })),
  scenario: ({ aircraft, now }) => documentFor(aircraft, { now }),
  history: (ask) => historyOf(opened(), logbook, ask),
  planOf: ({ document }, onProgress) => resultOf(planFromDocument(document, { onProgress })),
  kit: ({ document }, onProgress) => resultOf(kitFromDocument(document, { onProgress })),
  places: () => PLACES.map(({ id, name }) => ({ id, name })),
  winter: ({ document, files }, onProgress) =>
    resultOf(winterFromDocument(document, { onProgress, readFile: (name) => fileOf(files, name) })),
  readSetUp({ base }) {
    const reading = readBaseSetUp(base);
    return reading.ok ? [] : reading.issues;
  },
  log: ({ text, options }) => readTemperatureLog(text, options),
  learn: ({ document, log }, onProgress) => resultOf(learnFromDocument(document, log, { onProgress })),
  topics: ({ engine }) => whyTopics(installationById(engine)),
  why: ({ engine, topic, tempC }) => explainWhy(topic, tempC, installationById(engine)),
  now({ aircraft, now }) {
    const { document, reasons } = knownOf(aircraft, now);
    if (document === undefined) throw new Refused(reasons);
    return document;
  },
  away({ aircraft, now, members, engine, isCovered, back, here, chance }, onProgress) {
    const options = { now, members, hours: AWAY_HOURS, departure: "none" as const };
    const document = documentFor(aircraft, options, here && fixedWeather(here));
    const { initial, fitted, ...rest } = document;
    const logged = engine === "logged";
    const covers = document.kit.covers.map((cover) => (typeof cover === "string" ? cover : cover.id));
    const isOn = isCovered ?? (logged && (fitted?.covers.length ?? 0) > 0);
    const asked: ScenarioDocument = {
      ...rest,
      fitted: { covers: isOn ? covers : [] },
      initial: logged ? (initial ?? {}) : engine === "unknown" ? {} : { shut_down_h_ago: engine },
      want: { departure: new Date(back).toISOString(), ...(chance === undefined ? {} : { chance }) },
      events: [],
      plugged_in: [],
    };
    return resultOf(awayFromDocument(asked, { onProgress }));
  },
  frost: ({ now }) => frost(now),
  forecast: forecastWeather,
  wholeBase: async ({ now, members, told }) => {
    const base = opened();
    const together = scenariosTogether(base, { now, members, estimateOf: (id) => estimateFor(id, now) });
    if (!together.ok) throw new Refused([together.reason]);
    // Kept apart: most nights nobody asks for the plan of a whole base.
    const { documentOf } = await import("./whole-base.js");
    return { document: documentOf(base.setUp, together.scenarios, told), later: together.later };
  },
  basePlan: async ({ document }, onProgress) => {
    const { planTogether } = await import("./whole-base.js");
    return resultOf(await planTogether(document, onProgress));
  },
};

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
  readonly document: NowDocument | undefined;
  /** Why there is no document. */
  readonly reasons: readonly string[];
  /** Where the next one goes on from, as long as it rests on the same past. */
  readonly saved: SavedEstimate | undefined;
}

/** Where every part stands; undefined where it cannot be worked out: the plan then begins at the air, and says so. */
function estimateFor(aircraft: string, now: number): NowDocument | undefined {
  return knownOf(aircraft, now).document;
}

function knownOf(aircraft: string, now: number): KnownEstimate {
  const known = estimates.get(aircraft);
  const base = opened();
  if (known !== undefined && known.of === base && Math.abs(known.at - now) < ESTIMATE_LASTS) {
    return known;
  }
  const outcome = estimateNow(base, aircraft, {
    now,
    readings: [],
    ...(known?.saved === undefined ? {} : { saved: known.saved }),
  });
  const found = outcome.status === "completed" ? outcome.result : undefined;
  const made = { at: now, of: base, document: found?.now, saved: found?.saved, reasons: reasonsOf(outcome) };
  estimates.set(aircraft, made);
  return made;
}

function reasonsOf(outcome: Outcome<unknown>): readonly string[] {
  if (outcome.status === "completed") return [];
  if (outcome.status !== "refused") return [outcome.message];
  // What the logbook leaves out is a sentence of its own.
  return outcome.issues.map((issue) => (issue.path === "logbook" ? issue.received : issueText(issue)));
}

function documentFor(
  aircraft: string,
  options: Omit<Parameters<typeof scenarioOf>[2], "from">,
  weather?: ScenarioDocument["weather"],
): ScenarioDocument {
  const base = opened();
  const estimate = estimateFor(aircraft, options.now);
  const scenario = scenarioOf(
    weather === undefined ? base : withWeather(base, weather, options.now),
    aircraft,
    {
      ...options,
      from: "now",
      ...(estimate === undefined ? {} : { estimate }),
    },
  );
  if (!scenario.ok) throw new Refused([scenario.reason]);
  return scenario.document;
}

function withWeather(base: BaseState, weather: ScenarioDocument["weather"], now: number): BaseState {
  const at = new Date(now).toISOString();
  const id = "00000000-0000-8000-8000-000000000000";
  return { ...base, forecasts: [{ kind: "forecast", id, at, origin: "as seen here", weather }] };
}

/** What somebody sees, taken to last: every three hours, so that no stretch is without weather. */
function fixedWeather(here: NonNullable<Ask<"away">["here"]>): ScenarioDocument["weather"] {
  const points = Array.from({ length: AWAY_HOURS / 3 + 2 }, (_, i) => ({
    at_h: 3 * i,
    air_c: here.tempC,
    wind_mps: here.windMps,
    cloud_fraction: here.cloud,
  }));
  return { points };
}

function frost(now: number): FrostView {
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
    middle: course.upper_frost_kg_per_m2.p50,
    most: course.upper_frost_kg_per_m2.p95,
    chance: upper.chance,
  };
}

function resultOf<T>(outcome: Outcome<T>): T {
  if (outcome.status === "completed") return outcome.result;
  if (outcome.status === "refused") throw new Refused(outcome.issues.map(issueText));
  throw new Error(outcome.message);
}

function catalogue(): Catalogue {
  return {
    engines: INSTALLATIONS.map(({ id, name, cylinders }) => ({ id, name, cylinders })),
    heaters: HEATERS.map(heaterView),
    covers: COVERS.map(coverView),
  };
}
