import {
  type BaseScenario,
  hashOfText,
  type KnownReading,
  MINUTE,
  minutesOf,
  type ProbePlan,
  probePlan,
  scenarioOf,
} from "../base/index.js";
import type { NowDocument } from "../documents/index.js";
import {
  type FilterState,
  type FittedAircraft,
  type LiveFilter,
  learnedLive,
  learnedMultipliers,
  type PartEstimate,
} from "../learning/index.js";
import type { AircraftState, BaseState } from "../logbook/index.js";
import { configurationAt, timelineOf } from "../simulation/index.js";
import { begun, type FilterRun, liveFilterOf, nowResult, runThrough, type Tallies } from "./live-filter.js";
import { type Outcome, refusedFor, type Watched } from "./question.js";

/** Where a live estimate got to; plain JSON, to be kept and given back. */
export interface SavedEstimate {
  readonly version: 1;
  /** Hash of all inputs of the run; another one means working it out anew. */
  readonly key: string;
  /** [ms] since 1970 UTC: beginning of the run, and how far it got. */
  readonly start: number;
  readonly through: number;
  readonly state: FilterState;
  readonly tallies: Tallies;
}

export interface LiveEstimate {
  readonly now: NowDocument;
  /** Every part now, for plans that begin here. */
  readonly parts: readonly PartEstimate[];
  readonly saved: SavedEstimate;
  /** What is known of the aircraft with what its probes taught on the way; undefined where nothing is. */
  readonly learned: FittedAircraft | undefined;
  /** Whether it went on from what was saved. */
  readonly resumed: boolean;
}

export interface EstimateRequest extends Watched {
  /** [ms] since 1970 UTC. */
  readonly now: number;
  /** Of this aircraft and of the base, of the time since `saved` or since the anchor; any order. */
  readonly readings: readonly KnownReading[];
  readonly saved?: SavedEstimate | undefined;
}

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
  const found = scenarioOf(state, aircraftId, { now, from: "anchor" });
  if (!found.ok) return refusedFor(found.reason);
  const aircraft = state.aircraft.get(aircraftId)!;
  const plan = probePlan(state, aircraft, found.aircraft);
  const filter = liveFilterOf(found.aircraft, plan.sensors);
  const start = found.facts.start;
  const keyAt = (through: number) => keyOf(found, plan, aircraft, through);
  const resumed = saved !== undefined && saved.start === start && saved.key === keyAt(saved.through);
  const from: FilterRun = resumed
    ? { state: saved.state, tallies: saved.tallies, at: (saved.through - start) / 1000 }
    : begun(filter);
  const begins = resumed ? saved.through : start;
  const { steps, measuredAir } = stepsOf(found, plan, aircraft, readings, { from: begins, to: now });
  const run = runThrough(filter, from, steps, { onProgress });
  if (run.status !== "completed") return run;
  const { state: reached, tallies } = run.result;
  const through = steps.length === 0 ? begins : Math.round(start + run.result.at * 1000);
  // The last stretch to now is only looked over: it is no part of what the run goes on from.
  const present = (now - start) / 1000;
  const rest = present > reached.time ? [{ time: present, readings: new Map() }] : [];
  const seen = runThrough(filter, run.result, rest, {});
  if (seen.status !== "completed") return seen;
  const told = { tallies, measuredAir, logFindings: [], assumptions: plan.assumptions };
  return {
    status: "completed",
    result: {
      now: nowResult(found.aircraft, filter, seen.result.state, told),
      parts: filter.estimate(seen.result.state).parts,
      learned: learnedBy(found, filter, seen.result),
      saved: { version: 1, start, through, state: reached, key: keyAt(through), tallies },
      resumed,
    },
  };
}

/** The multipliers where the run stands, once a reading has counted and nothing is believed to be other than told. */
function learnedBy(
  { aircraft: { scenario, learned } }: Made,
  { layout }: LiveFilter,
  { state, tallies }: FilterRun,
): FittedAircraft | undefined {
  const readings = tallies.reduce((sum, tally) => sum + tally.readings - tally.leftAside, 0);
  if (readings === 0 || state.belief.deviation !== undefined) return learned;
  const { initial, events, installation, start } = scenario;
  const passed = timelineOf(initial.configuration, events).filter(({ from }) => from <= state.time);
  const settings = new Map(
    passed.map(({ configuration: { place, coversOn } }) => {
      const setting = { place, covers: [...coversOn].sort() };
      return [JSON.stringify(setting), setting] as const;
    }),
  );
  const heaters = [...new Set(passed.flatMap(({ configuration }) => [...configuration.heatersOn]))].sort();
  const evidence = {
    origin: "probes and readings up to now",
    readings,
    from: start,
    to: start + state.time,
    heaters,
    settings: [...settings.values()],
  };
  return learnedLive(installation.id, learnedMultipliers(layout, state), evidence, learned);
}

type Made = Extract<BaseScenario, { ok: true }>;

/** The filter's steps after `from` up to `to` [ms], and the air outside as it was measured last [K]. */
function stepsOf(
  { aircraft: { scenario } }: Made,
  plan: ProbePlan,
  aircraft: AircraftState,
  readings: readonly KnownReading[],
  { from, to }: { readonly from: number; readonly to: number },
) {
  const minutes = new Map(minutesOf(plan, aircraft, readings, { from, to }).map((one) => [one.at, one]));
  const timeline = timelineOf(scenario.initial.configuration, scenario.events);
  const times = stepTimes([...minutes.keys()], from, to);
  const steps = times.map((at) => {
    const minute = minutes.get(at);
    const time = at / 1000 - scenario.start;
    const air = minute?.air[configurationAt(timeline, time).place];
    return { time, readings: minute?.temps ?? new Map(), ...(air === undefined ? {} : { air }) };
  });
  const outside = times.flatMap((at) => minutes.get(at)?.air.ramp ?? []);
  return { steps, measuredAir: outside[outside.length - 1] };
}

/** [ms] steps after `from`: middles of minutes with readings, and every ten minutes on the clock, full up to `to`. */
function stepTimes(minutes: readonly number[], from: number, to: number): number[] {
  const times = new Set(minutes);
  for (let t = LONG_STEP * (Math.floor(from / LONG_STEP) + 1); t <= to; t += LONG_STEP) times.add(t);
  return [...times].filter((t) => t > from && t <= to).sort((a, b) => a - b);
}

/** Hash of all inputs of a run up to `through` [ms], probes' readings apart. */
function keyOf(
  { facts, aircraft: read }: Made,
  { sensors, air }: ProbePlan,
  { readings }: AircraftState,
  through: number,
) {
  const { weather, changes, hours: _, correction: _plans, base, aircraft, ...rest } = facts;
  const { engine, kit, limits } = aircraft;
  const { learned } = read;
  const points = weather.points ?? [];
  // The weather runs straight on to the next point.
  const next = points.findIndex(({ time }) => Date.parse(time ?? "") >= through);
  const used = next < 0 ? points : points.slice(0, next + 1);
  const until = <T extends { readonly at: number }>(all: readonly T[]) =>
    all.filter(({ at }) => at <= through);
  const described = { engine, kit, learned, limits, hangar: base.hangar, roughness: base.roughness_m };
  return hashOfText(JSON.stringify([described, rest, used, until(changes), until(readings), sensors, air]));
}
