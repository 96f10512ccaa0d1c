import {
  type MultiplierPosterior,
  PRIOR,
  type Scenario,
  type TimedChange,
  timelineOf,
} from "../simulation/index.js";
import { createBatch } from "./fit-members.js";
import { FIT_TOLERANCE, FitTrouble } from "./fit-model.js";
import { reachOf, USUAL_SENSOR } from "./sensor.js";
import { type Discrepancy, USUAL_DISCREPANCY } from "./sensor-noise.js";

export interface NextReadingRequest {
  /** The night ahead with its plug-in among the events. */
  readonly scenario: Scenario;
  /** What is known of the aircraft; the priors without it. */
  readonly posterior?: MultiplierPosterior;
  /** What the plan hangs on: the temperature of its weakest part, at departure [s since the scenario's start]. */
  readonly wanted: { readonly part: string; readonly at: number };
  /** Parts a person can reach with a thermometer. */
  readonly parts?: readonly string[];
  /** [s] since the scenario's start, up to `wanted.at`. */
  readonly times: readonly number[];
  readonly discrepancy?: Discrepancy;
}

/** How well the wanted temperature is known, and what one more reading would do about it. */
export interface NextReadings {
  /** [K] standard deviation now. */
  readonly sd: number;
  /** [K/s] by which it rises when plugged in earlier; absent without a plug-in. */
  readonly perLead?: number;
  /** The most useful first, one for each part. */
  readonly readings: readonly NextReading[];
}

interface NextReading {
  readonly part: string;
  /** [s] since the scenario's start. */
  readonly at: number;
  /** [K] standard deviation of the wanted temperature once it is read. */
  readonly sdAfter: number;
}

const REACHABLE = ["oil", "sump", "crankcase", "barrels", "heads", "accessories", "hub", "battery"];
/** [K] of the air around, as in a fit with told weather; of a part's start off the common temperature. */
const AIR_SD = 1;
const PART_SD = 1.5;
/** Step of the difference quotients, in standard deviations. */
const STEP = 0.1;
/** [s] by which the plug-in is tried earlier. */
const EARLIER = 900;

/**
 * Expected gain of one reading, linearised: with slopes g of the wanted temperature and h of the reading by everything
 * unknown in units of its standard deviation, the variance |g|² falls by (g·h)²/(|h|² + R), R being the variance of the
 * reading itself with offset and model error. What g leaves out, the error of the model on the wanted part, no reading cures.
 */
export function nextReadings(request: NextReadingRequest): NextReadings {
  const { scenario, wanted, times, posterior = PRIOR, parts = REACHABLE } = request;
  const { discrepancy = USUAL_DISCREPANCY } = request;
  const batch = createBatch({ scenario });
  const places = parts.map((part) => reachOf(part, batch.parts));
  const wantedRows = reachOf(wanted.part, batch.parts);
  const allTimes = [...new Set([...times, wanted.at])].sort((a, b) => a - b);
  if (!(allTimes[0] >= 0 && allTimes[allTimes.length - 1] <= wanted.at)) {
    throw new RangeError(`invalid times: ${allTimes.join(", ")} s (expected 0 to ${wanted.at} s)`);
  }
  const names = posterior.names.length;
  const air = names;
  const start = names + 1;
  const unknowns = start + 1 + places.length;
  const members = unknowns + 1;
  const { initial } = scenario;

  /** Temperatures at allTimes with unknown m-1 moved in member m; member 0 stays in the middle. */
  function run(
    events: readonly TimedChange[],
    count: number,
  ): (rows: readonly number[], s: number, m: number) => number {
    const multipliers = new Map(
      posterior.names.map((name, i): [string, Float64Array] => [
        name,
        Float64Array.from({ length: count }, (_, m) =>
          Math.exp(posterior.mean[i] + (m >= 1 && m <= names ? STEP * (posterior.factor[i][m - 1] ?? 0) : 0)),
        ),
      ]),
    );
    const state = new Float64Array(batch.parts.length * count);
    batch.parts.forEach((part, i) => {
      for (let m = 0; m < count; m++) {
        const common = m - 1 === start ? STEP * initial.sd : 0;
        const own = places[m - start - 2]?.includes(i) ? STEP * PART_SD : 0;
        state[i * count + m] = (initial.temps.get(part) ?? initial.tempOthers) + common + own;
      }
    });
    const result = batch.advance({
      ...{ members: count, multipliers, state, from: 0, to: Math.max(wanted.at, 1) },
      airBias: Float64Array.from({ length: count }, (_, m) => (m - 1 === air ? STEP * AIR_SD : 0)),
      timelines: [timelineOf(initial.configuration, events)],
      ...{ sampleTimes: allTimes, tolerance: FIT_TOLERANCE },
    });
    if (result.status !== "completed") throw new FitTrouble(`${result.status}: ${result.remedy}`);
    return (rows, s, m) =>
      rows.reduce((sum, row) => sum + result.samples[(s * batch.parts.length + row) * count + m], 0) /
      rows.length;
  }

  const temp = run(scenario.events, members);
  const last = allTimes.length - 1;
  const slopes = (rows: readonly number[], s: number) =>
    Array.from({ length: unknowns }, (_, j) => (temp(rows, s, j + 1) - temp(rows, s, 0)) / STEP);
  const g = slopes(wantedRows, last);
  const variance = dot(g, g);
  const timeline = timelineOf(initial.configuration, scenario.events);
  const readings = parts.map((part, p): NextReading => {
    let best = { part, at: times[0], sdAfter: Math.sqrt(variance) };
    for (const at of times) {
      const s = allTimes.indexOf(at);
      const h = slopes(places[p], s);
      const configuration = timeline.findLast((entry) => entry.from <= at)?.configuration;
      const rise = temp(places[p], s, 0) - batch.tempAirAt(configuration ?? initial.configuration, at);
      const own =
        USUAL_SENSOR.noise ** 2 +
        USUAL_SENSOR.offsetSd ** 2 +
        discrepancy.floor ** 2 +
        (discrepancy.share * rise) ** 2;
      const sdAfter = Math.sqrt(variance - dot(g, h) ** 2 / (dot(h, h) + own));
      if (sdAfter < best.sdAfter) best = { part, at, sdAfter };
    }
    return best;
  });
  const perLead = leadSlope();
  return {
    sd: Math.sqrt(variance),
    ...(perLead === undefined ? {} : { perLead }),
    readings: readings.sort((a, b) => a.sdAfter - b.sdAfter),
  };

  function leadSlope(): number | undefined {
    const isPlugIn = ({ change }: TimedChange) => change.do === "plug-in";
    if (!scenario.events.some(isPlugIn)) return undefined;
    const earlier = scenario.events.map((event) =>
      isPlugIn(event) ? { ...event, at: event.at - EARLIER } : event,
    );
    if (earlier.some(({ at }) => at < 0)) return undefined;
    return (run(earlier, 1)(wantedRows, last, 0) - temp(wantedRows, last, 0)) / EARLIER;
  }
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, k) => sum + value * b[k], 0);
}
