import {
  type BaseScenario,
  hashOfText,
  type KnownReading,
  MINUTE,
  minutesOf,
  type ProbePlan,
  probePlan,
  scenarioOf,
} from "./base/index.js";
import {
  type DocumentIssue,
  type NowDocument,
  nowDocument,
  type PlanDocument,
  type ProbeUse,
  type ReadScenario,
  type ScenarioDocument,
  usedKit,
} from "./documents/index.js";
import {
  createLiveFilter,
  type FilterState,
  type LiveFilter,
  sampledState,
  sensorsAsLearned,
} from "./learning/index.js";
import type { AircraftState, BaseState, WantedDeparture } from "./logbook/index.js";
import {
  drawnFrom,
  type Outcome,
  type PipelineOptions,
  planFromDocument,
  posteriorOf,
  scenarioFrom,
} from "./pipeline.js";
import { allCriteria, judge } from "./readiness/index.js";
import { configurationAt, timelineOf } from "./simulation/index.js";
import { weatherAt } from "./weather/index.js";

// What a base asks of the planning core, from its logbook and its probes: where an aircraft stands now, and its plan.

/** Where a live estimate got to; plain JSON, to be kept and given back. */
export interface SavedEstimate {
  readonly version: 1;
  /** Print of all that the state was worked out from; another one means working it out anew. */
  readonly key: string;
  /** [ms] since 1970 UTC: beginning of the run, and how far it got. */
  readonly start: number;
  readonly through: number;
  readonly state: FilterState;
  readonly tallies: readonly { readonly readings: number; readonly leftAside: number }[];
}

export interface LiveEstimate {
  readonly now: NowDocument;
  readonly saved: SavedEstimate;
  /** Whether it went on from what was saved. */
  readonly resumed: boolean;
}

export interface EstimateRequest {
  /** [ms] since 1970 UTC. */
  readonly now: number;
  /** Of this aircraft and of the base, of the time since `saved` or since the anchor; any order. */
  readonly readings: readonly KnownReading[];
  readonly saved?: SavedEstimate;
  readonly onProgress?: (done?: number) => boolean;
}

/** Cases that the verdict is counted over. */
const MEMBERS = 500;
/** [ms] spacing of steps through times without readings. */
const LONG_STEP = 10 * MINUTE;

/**
 * Where every part of an aircraft stands now: the live filter run from the anchor, or on from where it got to, through
 * the probes' readings (one a minute) and through times without any. The steps depend on what was read and not on when
 * it was asked, so that a run taken up again gives the same numbers as one in one go.
 */
export function estimateNow(
  state: BaseState,
  aircraftId: string,
  { now, readings, saved, onProgress }: EstimateRequest,
): Outcome<LiveEstimate> {
  const scenario = scenarioOf(state, aircraftId, { now, from: "anchor" });
  if (!scenario.ok) return refusedBy(scenario.reason);
  const aircraft = aircraftOf(state, aircraftId);
  const read = scenarioFrom(scenario.document, {});
  if (!read.ok) return { status: "refused", issues: read.issues };
  const plan = probePlan(state, aircraft, read);
  const { learned } = read;
  const sensors = learned === undefined ? plan.sensors : sensorsAsLearned([...plan.sensors], learned);
  const posterior = learned === undefined ? undefined : posteriorOf(read, learned);
  const filter = createLiveFilter({
    scenario: read.scenario,
    sensors,
    ...(posterior === undefined ? {} : { posterior }),
  });
  const start = read.scenario.start * 1000;
  const keyAt = (through: number) => keyOf(scenario.document, plan, aircraft, through);
  const resumed = saved !== undefined && saved.start === start && saved.key === keyAt(saved.through);
  const tallies = resumed
    ? saved.tallies.map((tally) => ({ ...tally }))
    : sensors.map(() => ({ readings: 0, leftAside: 0 }));
  let at = resumed ? saved.through : start;
  let filtered = resumed ? saved.state : filter.start();
  let trouble: string | undefined;
  let measured: number | undefined;

  const minutes = new Map(
    minutesOf(plan, aircraft, readings, { from: at, to: now }).map((minute) => [minute.at, minute]),
  );
  const times = stepTimes([...minutes.keys()], at, now);
  const timeline = timelineOf(read.scenario.initial.configuration, read.scenario.events);
  for (const [n, time] of times.entries()) {
    if (onProgress?.(n / times.length) === false) return STOPPED;
    const minute = minutes.get(time);
    const { place } = configurationAt(timeline, (time - start) / 1000);
    const air = minute?.air[place];
    const step = filter.step(filtered, {
      time: (time - start) / 1000,
      readings: minute?.temps ?? new Map(),
      ...(air === undefined ? {} : { air }),
    });
    filtered = step.state;
    trouble = step.trouble;
    // What could not be stepped over is tried again with the next step; what was got to is told by the state.
    if (trouble === undefined) at = time;
    measured = minute?.air.ramp ?? measured;
    step.used.forEach((use, p) => {
      if (use !== "none") tallies[p].readings++;
      if (use === "gated" || use === "probe-out") tallies[p].leftAside++;
    });
  }
  if (trouble !== undefined) return { status: "failed", message: trouble };
  const toSave: SavedEstimate = {
    ...{ version: 1, start, through: at, state: filtered },
    key: keyAt(at),
    tallies: tallies.map((tally) => ({ ...tally })),
  };
  // The last stretch to now is only looked over: it is no part of what the run goes on from.
  const present = (now - start) / 1000;
  let seen = filtered;
  if (present > filtered.time) {
    const step = filter.step(filtered, { time: present, readings: new Map() });
    if (step.trouble !== undefined) return { status: "failed", message: step.trouble };
    seen = step.state;
  }
  const document = judged(read, filter, seen, {
    plan,
    tallies,
    scenario,
    ...(measured === undefined ? {} : { measured }),
  });
  return { status: "completed", result: { now: document, saved: toSave, resumed } };
}

/** [ms] steps after `from`: middles of minutes with readings, and every ten minutes on the clock, full up to `to`. */
function stepTimes(minutes: readonly number[], from: number, to: number): number[] {
  const times = new Set(minutes);
  for (let t = LONG_STEP * (Math.floor(from / LONG_STEP) + 1); t <= to; t += LONG_STEP) times.add(t);
  return [...times].filter((t) => t > from && t <= to).sort((a, b) => a - b);
}

/** A print of all that a run up to `through` [ms] was worked out from, probes' readings apart. */
function keyOf(
  document: ScenarioDocument,
  { sensors, air }: ProbePlan,
  { readings }: AircraftState,
  through: number,
): string {
  const { weather, events = [], hours: _, ...rest } = document;
  const points = weather.points ?? [];
  const timeOf = (time: string | undefined) => Date.parse(time ?? "");
  // The weather runs straight on to the next point.
  const next = points.findIndex(({ time }) => timeOf(time) >= through);
  const used = next < 0 ? points : points.slice(0, next + 1);
  const done = events.filter(({ time }) => timeOf(time) <= through);
  const byHand = readings.filter(({ at }) => at <= through);
  return hashOfText(JSON.stringify([rest, used, done, byHand, sensors, air]));
}

/** The estimate as a document, judged as `now` does it. */
function judged(
  read: ReadScenario,
  filter: LiveFilter,
  state: FilterState,
  told: {
    readonly plan: ProbePlan;
    readonly tallies: readonly { readonly readings: number; readonly leftAside: number }[];
    readonly scenario: Extract<BaseScenario, { ok: true }>;
    /** [K] */
    readonly measured?: number;
  },
): NowDocument {
  const { installation, weather, start } = read.scenario;
  const { sensors } = filter.layout;
  const sample = sampledState(filter.layout, state, MEMBERS, read.ensemble.seed);
  const criteria = allCriteria(installation, usedKit(read), read.limits);
  const verdict = judge(criteria, { temps: sample.temps, parts: filter.layout.parts, members: MEMBERS });
  const probes = sensors.map(
    ({ name, place }, p): ProbeUse => ({
      ...{ name, part: typeof place === "object" ? place.part : place },
      ...told.tallies[p],
    }),
  );
  const tempAir = told.measured ?? weatherAt(weather, start + state.time).tempAir;
  const assumptions = [...read.assumptions, ...told.scenario.assumptions, ...told.plan.assumptions];
  const log = { time: new Float64Array(), probes: [], findings: [], origin: "the base's probes" };
  return nowDocument(
    filter.estimate(state),
    verdict,
    probes,
    log,
    tempAir,
    drawnFrom({ ...read, assumptions }),
  );
}

export interface PlanOptions extends Pick<PipelineOptions, "onProgress"> {
  /** [ms] since 1970 UTC. */
  readonly now: number;
  readonly estimate?: NowDocument;
  readonly departure?: WantedDeparture;
  readonly members?: number;
}

/** The plan of one aircraft for a departure wanted, by default the soonest ahead. */
export function planOf(
  state: BaseState,
  aircraftId: string,
  { onProgress, ...options }: PlanOptions,
): Outcome<{ readonly plan: PlanDocument; readonly departure: WantedDeparture }> {
  const scenario = scenarioOf(state, aircraftId, { ...options, from: "now" });
  if (!scenario.ok) return refusedBy(scenario.reason);
  const { departure } = scenario;
  if (departure === undefined) return refusedBy("no departure is wanted");
  const outcome = planFromDocument(scenario.document, onProgress === undefined ? {} : { onProgress });
  if (outcome.status !== "completed") return outcome;
  const plan = { ...outcome.result, assumptions: [...outcome.result.assumptions, ...scenario.assumptions] };
  return { status: "completed", result: { plan, departure } };
}

/** The plans of all aircraft of a base that are wanted; those that cannot be planned say why. */
export function plansFor(
  state: BaseState,
  options: Omit<PlanOptions, "departure" | "estimate"> & {
    readonly estimates?: ReadonlyMap<string, NowDocument>;
  },
): ReadonlyMap<string, ReturnType<typeof planOf>> {
  const { estimates, ...rest } = options;
  const wanted = [...state.aircraft.values()].filter(({ departures }) =>
    departures.some(({ departure }) => departure > options.now),
  );
  return new Map(
    wanted.map(({ setUp: { id } }) => {
      const estimate = estimates?.get(id);
      return [id, planOf(state, id, { ...rest, ...(estimate === undefined ? {} : { estimate }) })];
    }),
  );
}

const STOPPED = { status: "cancelled", message: "the estimate was stopped" } as const;

function refusedBy(received: string): { status: "refused"; issues: DocumentIssue[] } {
  return {
    status: "refused",
    issues: [{ path: "logbook", expected: "what an estimate or a plan needs", received }],
  };
}

function aircraftOf(state: BaseState, id: string): AircraftState {
  const aircraft = state.aircraft.get(id);
  if (aircraft === undefined) throw new RangeError(`unknown aircraft: ${id}`);
  return aircraft;
}
