import { configurationAt, type Timeline, timelineOf } from "../simulation/index.js";
import { estimateOf, type FilterEstimate } from "./filter-estimate.js";
import { FilterTrouble, type Forecast, type ForecastRequest, forecast } from "./filter-forecast.js";
import {
  type FilterLayout,
  type FilterSetup,
  type FilterState,
  filterLayout,
  initialState,
  type Suspect,
} from "./filter-state.js";
import { BELIEVED, branched, chanceOf, deviating, reviewed } from "./filter-suspects.js";
import { type ReadingUse, updated } from "./filter-update.js";
import { createBatch } from "./fit-members.js";
import { checkedSensor } from "./sensor.js";

/** Joins model and probes; the state is the caller's to keep, so that it can go on after a power cut. */
export interface LiveFilter {
  readonly layout: FilterLayout;
  readonly start: () => FilterState;
  readonly step: (state: FilterState, input: FilterInput) => FilterStep;
  /** Give the timeline where steps were given one. */
  readonly estimate: (state: FilterState, timeline?: Timeline) => FilterEstimate;
}

export interface FilterInput {
  /** [s] since the scenario's start, after the state's time. */
  readonly time: number;
  /** [K] readings by probe name; leave out what has none. */
  readonly readings: ReadonlyMap<string, number>;
  /** [K] air measured where the aircraft stands. */
  readonly air?: number;
  /** What is done and planned, when it is no longer what the scenario says. */
  readonly timeline?: Timeline;
}

interface FilterStep {
  readonly state: FilterState;
  /** What became of each probe's reading, in the order of the sensors. */
  readonly used: readonly ReadingUse[];
  /** [K] what the model said each would be, before it came; NaN for none. */
  readonly expected: readonly number[];
  /** Why the model could not be carried on to these readings; the state is then as it was, and the next step tries again. */
  readonly trouble?: string;
}

export function createLiveFilter(setup: FilterSetup): LiveFilter {
  const { scenario, sensors } = setup;
  for (const sensor of sensors) checkedSensor(sensor);
  const batch = createBatch({ scenario });
  const layout = filterLayout(setup, batch.parts);
  const planned = timelineOf(scenario.initial.configuration, scenario.events);

  function step(state: FilterState, { time, readings, air, timeline = planned }: FilterInput): FilterStep {
    if (!(time > state.time && time <= scenario.duration)) {
      throw new RangeError(
        `invalid time: ${time} s (expected after ${state.time} s, up to ${scenario.duration} s)`,
      );
    }
    for (const name of readings.keys()) {
      if (!sensors.some((sensor) => sensor.name === name)) throw new RangeError(`unknown probe: ${name}`);
    }
    const { belief, suspects } = reviewed(state, configurationAt(timeline, state.time));
    const carried = carriedOn(state, suspects, {
      ...{ from: state.time, to: time, told: timeline },
      belief: belief.deviation,
      suspected: suspects.map(({ deviation }) => deviation),
    });
    if (typeof carried === "string") {
      return { state, used: sensors.map(() => "none"), expected: [], trouble: carried };
    }
    const configuration = configurationAt(deviating(timeline, belief.deviation), time);
    const result = updated(layout, carried, state.probes, {
      temps: sensors.map(({ name }) => readings.get(name) ?? Number.NaN),
      // A thermometer where the aircraft was said to stand knows nothing of another place.
      ...(air === undefined || belief.deviation === "other-place" ? {} : { air }),
      span: time - state.time,
      airTold: batch.tempAirAt(configuration, time),
    });
    const mean = Array.from(result.mean);
    const next: FilterState = {
      version: 1,
      ...{ time, mean, belief },
      covariance: Array.from(result.covariance),
      suspects: suspects.map((suspect, s): Suspect => {
        const evidence = suspect.evidence + result.evidence[s];
        // What explains the readings no better than the belief starts again from it (Page, Biometrika 41 (1954) 100-115).
        return evidence > 0
          ? { ...suspect, mean: Array.from(result.suspects[s]), evidence }
          : branched(suspect.deviation, mean, time);
      }),
      probes: result.probes,
    };
    return { state: converted(next), used: result.used, expected: result.expected };
  }

  function carriedOn(
    { mean, covariance }: FilterState,
    suspects: readonly Suspect[],
    request: ForecastRequest,
  ): Forecast | string {
    const now: Forecast = {
      mean: Float64Array.from(mean),
      covariance: Float64Array.from(covariance),
      suspects: suspects.map((suspect) => Float64Array.from(suspect.mean)),
    };
    try {
      return forecast(batch, layout, now, request);
    } catch (error) {
      if (error instanceof FilterTrouble) return error.message;
      throw error;
    }
  }

  function airAround({ time, mean, belief }: FilterState, timeline: Timeline): number {
    const configuration = configurationAt(deviating(timeline, belief.deviation), time);
    return batch.tempAirAt(configuration, time) + mean[layout.air];
  }

  return {
    layout,
    start: () => initialState(setup, layout),
    step,
    estimate: (state, timeline = planned) => estimateOf(layout, state, setup, airAround(state, timeline)),
  };
}

/** Takes up the suspect that has become all but certain. */
function converted(state: FilterState): FilterState {
  const best = state.suspects.reduce<Suspect | undefined>(
    (most, s) => (most === undefined || s.evidence > most.evidence ? s : most),
    undefined,
  );
  if (best === undefined || chanceOf(best) < BELIEVED) return state;
  return {
    ...state,
    mean: best.mean,
    belief: { deviation: best.deviation, since: best.since },
    suspects: [],
  };
}
