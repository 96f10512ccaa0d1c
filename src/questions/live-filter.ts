import { type NowDocument, nowDocument, type ProbeUse } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import {
  createLiveFilter,
  type FilterInput,
  type FilterState,
  type LiveFilter,
  type LogFinding,
  type Sensor,
  sampledState,
  sensorsAsLearned,
} from "../learning/index.js";
import { allCriteria, judge } from "../readiness/index.js";
import { type AircraftScenario, drawnFrom, posteriorOf, usedKit } from "../scenario/index.js";
import { startBriefing } from "../starting/index.js";
import { celsiusFromKelvin } from "../units/index.js";
import { localText, weatherAt } from "../weather/index.js";
import { failed, type Outcome, STOPPED, type Watched } from "./question.js";

/** Cases that the verdict is counted over. */
const MEMBERS = 500;

/** How many readings of each sensor came, and how many were left aside. */
export type Tallies = readonly Tally[];

interface Tally {
  readonly readings: number;
  readonly leftAside: number;
  /** The last one that was left aside: [s] since scenario start, [K] read and as the model had it. */
  readonly against?: { readonly at: number; readonly reading: number; readonly model: number };
}

/** Where a run of the live filter got to. */
export interface FilterRun {
  readonly state: FilterState;
  readonly tallies: Tallies;
  /** [s] since scenario start of the last step that could be taken. */
  readonly at: number;
}

/** The live filter of an aircraft with what was learned of it and of its sensors. */
export function liveFilterOf(asked: AircraftScenario, given: readonly Sensor[]): LiveFilter {
  const { scenario, learned } = asked;
  const sensors = learned === undefined ? given : sensorsAsLearned([...given], learned);
  const posterior = posteriorOf(asked);
  return createLiveFilter({ scenario, sensors, ...(posterior === undefined ? {} : { posterior }) });
}

/** A run that has not begun. */
export function begun(filter: LiveFilter): FilterRun {
  const tallies = filter.layout.sensors.map(() => ({ readings: 0, leftAside: 0 }));
  return { state: filter.start(), tallies, at: 0 };
}

/** Takes the filter through readings. What one step cannot be taken over, a later one may; the last has to be. */
export function runThrough(
  filter: LiveFilter,
  from: FilterRun,
  steps: readonly FilterInput[],
  { onProgress }: Watched,
): Outcome<FilterRun> {
  const tallies = from.tallies.map((tally): { -readonly [K in keyof Tally]: Tally[K] } => ({ ...tally }));
  let { state, at } = from;
  let trouble: string | undefined;
  for (const [n, input] of steps.entries()) {
    if (onProgress?.(n / steps.length) === false) return STOPPED;
    const step = filter.step(state, input);
    ({ state, trouble } = { state: step.state, trouble: step.trouble });
    if (trouble === undefined) at = input.time;
    step.used.forEach((use, p) => {
      if (use !== "none") tallies[p].readings++;
      if (use !== "gated" && use !== "probe-out") return;
      tallies[p].leftAside++;
      const reading = input.readings.get(filter.layout.sensors[p].name) ?? Number.NaN;
      tallies[p].against = { at: input.time, reading, model: step.expected[p] };
    });
  }
  if (trouble !== undefined) return failed(trouble);
  return { status: "completed", result: { state, tallies, at } };
}

export interface NowTold {
  readonly tallies: Tallies;
  /** [K] outside, as a probe there measured it last. */
  readonly measuredAir: number | undefined;
  readonly logFindings: readonly LogFinding[];
  /** Finding beside what the scenario assumed. */
  readonly assumptions: readonly Finding[];
}

/** Where every part stands by a state of the filter, and whether the engine may be started. */
export function nowResult(
  asked: AircraftScenario,
  filter: LiveFilter,
  state: FilterState,
  { tallies, measuredAir, logFindings, assumptions }: NowTold,
): NowDocument {
  const { installation, weather, start } = asked.scenario;
  const { layout } = filter;
  const sample = sampledState(layout, state, MEMBERS, asked.ensemble.seed);
  const criteria = allCriteria(installation, usedKit(asked), asked.limits);
  const estimate = filter.estimate(state);
  const tempAir = measuredAir ?? weatherAt(weather, start + state.time).tempAir;
  const mids = new Map(estimate.parts.map(({ part, mid }) => [part, mid]));
  return nowDocument(
    {
      estimate,
      verdict: judge(criteria, { temps: sample.temps, parts: layout.parts, members: MEMBERS }),
      briefing: startBriefing(installation, mids, tempAir, asked.batteryFitted),
      probes: layout.sensors.map(
        ({ name, place }, p): ProbeUse => ({
          name,
          part: typeof place === "object" ? place.part : place,
          ...tallies[p],
        }),
      ),
      logFindings,
    },
    // Members come from the filter's state: what corrects plans is not among them.
    drawnFrom({
      ...asked,
      ensemble: { members: asked.ensemble.members, seed: asked.ensemble.seed },
      assumptions: [...asked.assumptions, ...assumptions, ...contradictionsIn(filter, tallies, asked)],
    }),
  );
}

/** [K] A reading that is left aside for less is noise. */
const WORTH_SAYING = 6;

/** Readings that were left aside since the model does not explain them: they are not averaged away, but told. */
function contradictionsIn({ layout }: LiveFilter, tallies: Tallies, { scenario, zone }: AircraftScenario) {
  return layout.sensors.flatMap(({ name, place }, p) => {
    const { against } = tallies[p];
    if (against === undefined || !(Math.abs(against.reading - against.model) >= WORTH_SAYING)) return [];
    return [
      finding("reading-contradicts", {
        probe: name,
        part: typeof place === "object" ? place.part : place,
        at: localText(scenario.start + against.at, zone),
        reading_c: celsiusFromKelvin(against.reading),
        model_c: celsiusFromKelvin(against.model),
      }),
    ];
  });
}
