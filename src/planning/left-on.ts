import { isElementPart } from "../aircraft/index.js";
import { play } from "../response/index.js";
import {
  centralDraws,
  type EnsembleRun,
  partTemps,
  prepareRun,
  type Scenario,
  type Trajectory,
} from "../simulation/index.js";
import { type CaseMoisture, caseGeometry, caseMoisture, WATER_IN_OIL_WINTER } from "../starting/index.js";
import { type WeatherSeries, weatherAt } from "../weather/index.js";
import { COURSE_STEP } from "./chance.js";
import type { PlanRequest } from "./request.js";
import { plannedTimeline, unplugTime } from "./timeline.js";

/** What a habit of heating does to the engine until departure, every uncertain number at its middle value. */
export interface HeatingImpact {
  /** [s] since scenario start; undefined: never plugged in. */
  readonly plugIn: number | undefined;
  /** [s] */
  readonly heaterTime: number;
  /** [J] */
  readonly energy: number;
  /** [s] that the inner wall which was wet longest was wet above 0 °C: only good for ranking habits. */
  readonly wetTime: number;
  /** [kg] most water lying on inner walls at any time */
  readonly condensed: number;
  /** [kg] at most frozen in the breather */
  readonly breatherFrost: number;
  /** [K] hottest heater surface; undefined without an element */
  readonly hottestSurface: number | undefined;
  /** [K] hottest sump wall, which is the oil film there */
  readonly hottestFilm: number;
}

/** For ranking many courses of one aircraft. */
export interface Ranking {
  /** The aircraft with every uncertain number at its middle value. */
  readonly run: EnsembleRun;
  /** [s] longest step of the water's balance. */
  readonly waterStep: number;
}

/** The toll of a plug-in time from now to departure. */
export function heatingImpact(
  request: PlanRequest,
  plugIn: number | undefined,
  ranking?: Ranking,
): HeatingImpact {
  const { scenario, wish } = request;
  const run = ranking?.run ?? centralRun(scenario);
  const steps = Math.ceil(wish.departure / COURSE_STEP);
  const course = play(run, {
    state: run.initial,
    timeline: plannedTimeline(request, plugIn),
    sampleTimes: Array.from({ length: steps + 1 }, (_, i) => (i * wish.departure) / steps),
  });
  const moisture = moistureAlong(course, scenario, ranking?.waterStep);
  const elements = course.parts.filter(isElementPart);
  return {
    plugIn,
    heaterTime: plugIn === undefined ? 0 : unplugTime(request) - plugIn,
    energy: course.energy[course.energy.length - 1],
    // Frost would count every parked hour of a cold night, and leaving it on would look drier than the plan.
    wetTime: moisture.wetTimeMost - moisture.frostTimeMost,
    condensed: moisture.condensedMost,
    breatherFrost: moisture.breatherFrost,
    hottestSurface:
      elements.length === 0 ? undefined : Math.max(...elements.map((part) => hottest(course, part))),
    hottestFilm: hottest(course, "sump"),
  };
}

/** An aircraft with every uncertain number at its middle value. */
export function centralRun(scenario: Scenario): EnsembleRun {
  return prepareRun(scenario, centralDraws(scenario.weather));
}

/** Water in the case along a course, with the oil as wet as after short winter flights and the walls dry. */
export function moistureAlong(course: Trajectory, scenario: Scenario, step?: number): CaseMoisture {
  const geometry = caseGeometry(scenario.installation);
  const outside = outsideAlong(scenario.weather, course, scenario.start);
  const water = { inOil: WATER_IN_OIL_WINTER * geometry.oilMass, onSurfaces: 0 };
  return caseMoisture(geometry, course, outside, water, 0, step);
}

function outsideAlong(weather: WeatherSeries, { time }: Trajectory, start: number) {
  const moments = Array.from(time, (t) => weatherAt(weather, start + t));
  return {
    tempAir: Float64Array.from(moments, (m) => m.tempAir),
    tempDewPoint: Float64Array.from(moments, (m) => Math.min(m.tempDewPoint, m.tempAir)),
  };
}

function hottest(course: Trajectory, part: string): number {
  return Math.max(...Array.from(course.time.keys(), (s) => partTemps(course, part, s)[0]));
}
