import {
  type Configuration,
  ductPower,
  type Installation,
  isElementPart,
  type Kit,
} from "../aircraft/index.js";
import { type Criterion, type EnsembleState, judge, type Verdict } from "../readiness/index.js";
import { type ByAim, chancesOf, createHeatResponse, overheats, playOn } from "../response/index.js";
import { type Draws, ENSEMBLE_TOLERANCE, multipliersOf, type Site, timelineOf } from "../simulation/index.js";
import type { PartCourse } from "../starting/index.js";
import type { WeatherSeries } from "../weather/index.js";
import { drawnMembers, type MembersRequest } from "./members.js";

/** Weather that holds all night. */
export interface SteadyCase {
  /** [K] */
  readonly tempAir: number;
  /** [m/s] at 10 m */
  readonly windSpeed: number;
}

export interface ColdCaseRequest {
  readonly installation: Installation;
  readonly kit: Kit;
  readonly place: Configuration["place"];
  readonly site: Site;
  readonly criteria: readonly Criterion[];
  /** [s] how old the forecast is; undefined: the weather is known. */
  readonly age: number | undefined;
  readonly ensemble: MembersRequest;
  readonly unplugBefore: number;
  readonly coverOffBefore: number;
  /** [s] leads that may be tried, from plug-in to departure, ascending */
  readonly leads: readonly number[];
  /** [K] local error of the steps; an ensemble's usual one where left out. */
  readonly tolerance?: number;
}

/** An aircraft cold-soaked in steady weather, heated for some lead and then stripped. Leads go by index; -1: no heat. */
export interface ColdCase {
  /** Chances of the drawn members at departure. */
  chances(lead: number): ByAim<number>;
  verdict(lead: number): Verdict;
  /** Whether heating for that lead breaks a ceiling in the middle aircraft. */
  isTooHot(lead: number): boolean;
  /** [K] hottest element surface of each drawn member by the lead; empty without elements. */
  hottestSurface(lead: number): Float64Array;
  hottestFilm(lead: number): Float64Array;
  /** [J] put in by each member by the lead, and the part of it that was burnt; the middle aircraft first. */
  energy(lead: number): Float64Array;
  fuel(lead: number): Float64Array;
  /** The middle aircraft from plug-in to the end of heating by the lead. */
  middleCourse(lead: number): PartCourse;
}

/** Covers off and pulled out, as at every departure. */
export const STRIPPED: Configuration = { place: "ramp", heatersOn: new Set(), coversOn: new Set() };

/** Dew-point depression [K] and cloud of steady cases: near saturation, clear sky, as the cautious side has it. */
export const STEADY = { depression: 2, cloudCover: 0 } as const;

/** [s] spacing of the kept course, for the hottest surface and the energy. */
const COURSE = 1200;

/** A lead as it was played: the drawn members when heating ends and at departure. */
interface Played {
  readonly atStart: EnsembleState;
  readonly unplugged: EnsembleState;
  /** The middle aircraft when heating ends. */
  readonly middle: EnsembleState;
}

export function createColdCase(request: ColdCaseRequest, steady: SteadyCase): ColdCase {
  const { kit, criteria, leads, unplugBefore, coverOffBefore, tolerance = ENSEMBLE_TOLERANCE } = request;
  const longest = leads[leads.length - 1]!;
  const durations = leads.map((lead) => Math.max(0, lead - unplugBefore));
  const heating = durations[durations.length - 1]!;
  const grid = Array.from({ length: Math.floor(heating / COURSE) + 1 }, (_, i) => i * COURSE);
  const scenario = scenarioOf(request, steady, longest);
  const draws = coldDraws(request, scenario.weather);
  const response = createHeatResponse({ scenario, heaters: kit.heaters.map(({ id }) => id) }, draws, {
    spacing: longest,
    leads: [...new Set([0, ...grid, ...durations])].sort((a, b) => a - b),
    tolerance,
  });
  const { parts, members, run } = response;
  const size = parts.length * members;
  const elements = parts.flatMap((name, i) => (isElementPart(name) ? [i] : []));
  const known = new Map<number, Played>();

  const timeOf = (lead: number) => (lead < 0 ? 0 : durations[lead]!);

  function played(lead: number): Played {
    const found = known.get(lead);
    if (found !== undefined) return found;
    const on = timeOf(lead);
    const hot = new Float64Array(size);
    response.temps(0, on, hot);
    const off = { at: on + unplugBefore - coverOffBefore };
    const timeline = timelineOf(scenario.initial.configuration, [
      { ...off, change: { do: "cover-off", covers: kit.covers.map(({ id }) => id) } },
      { ...off, change: { do: "move", to: STRIPPED.place } },
    ]);
    const started = playOn(run, hot, [on, on + unplugBefore], timeline, tolerance);
    const made = { atStart: drawnState(started), unplugged: drawnState(hot), middle: middleOf(hot) };
    known.set(lead, made);
    return made;
  }

  /** Without the middle aircraft, which comes first. */
  function drawnState(temps: Float64Array): EnsembleState {
    const drawn = new Float64Array(parts.length * (members - 1));
    parts.forEach((_, i) => {
      drawn.set(temps.subarray(i * members + 1, (i + 1) * members), i * (members - 1));
    });
    return { temps: drawn, parts, members: members - 1 };
  }

  function middleOf(temps: Float64Array): EnsembleState {
    return { temps: Float64Array.from(parts, (_, i) => temps[i * members]!), parts, members: 1 };
  }

  /** [K] of the drawn members, over the course. */
  function hottest(rows: readonly number[], lead: number): Float64Array {
    const { time, temps } = response.heated(0, timeOf(lead));
    const out = new Float64Array(members - 1).fill(Number.NEGATIVE_INFINITY);
    for (let s = 0; s < time.length && time[s]! <= timeOf(lead); s++) {
      for (const i of rows) {
        for (let d = 1; d < members; d++)
          out[d - 1] = Math.max(out[d - 1]!, temps[s * size + i * members + d]!);
      }
    }
    return out;
  }

  function energy(lead: number): Float64Array {
    const out = new Float64Array(members);
    if (timeOf(lead) > 0) response.energy(0, timeOf(lead), out);
    return out;
  }

  return {
    chances: (lead) => chancesOf(criteria, played(lead).atStart),
    verdict: (lead) => judge(criteria, played(lead).atStart, played(lead).unplugged),
    isTooHot: (lead) => overheats(criteria, played(lead).middle),
    hottestSurface: (lead) => (elements.length === 0 ? new Float64Array() : hottest(elements, lead)),
    hottestFilm: (lead) => hottest([parts.indexOf("sump")], lead),
    energy,
    fuel(lead) {
      if (!kit.heaters.some(({ duct }) => duct?.energy === "fuel")) return new Float64Array(members);
      const power = multipliersOf(draws, ["heater_power"]);
      const on = new Set(kit.heaters.map(({ id }) => id));
      const heated = { ...scenario.initial.configuration, heatersOn: on };
      return power.map((p, m) => p * ductPower(kit, heated, run.forcing.tempAirAt(0, m)) * timeOf(lead));
    },
    middleCourse(lead) {
      const { time, temps } = response.heated(0, timeOf(lead));
      const until = time.filter((t) => t <= timeOf(lead));
      const middle = until.flatMap((_, s) => parts.map((_, i) => temps[s * size + i * members]!));
      return { time: until, parts, members: 1, temps: middle };
    },
  };
}

function scenarioOf(
  { installation, kit, place, site }: ColdCaseRequest,
  steady: SteadyCase,
  duration: number,
) {
  const configuration: Configuration = {
    place,
    heatersOn: new Set(),
    coversOn: new Set(kit.covers.map(({ id }) => id)),
  };
  const tempOthers = place === "hangar" ? site.tempHangar : steady.tempAir;
  return {
    ...{ installation, kit, site, duration, start: 0, events: [] },
    weather: steadyWeather(steady, duration),
    initial: { configuration, temps: new Map(), tempOthers, sd: place === "hangar" ? 0 : 1 },
  };
}

/** Members that are as cold as their own error of the forecast has the air. */
function coldDraws({ ensemble, age }: ColdCaseRequest, weather: WeatherSeries): Draws {
  const draws = drawnMembers(ensemble, weather, age);
  return { ...draws, initialOffset: draws.weather.tempOffset.slice(0, draws.members) };
}

function steadyWeather({ tempAir, windSpeed }: SteadyCase, duration: number): WeatherSeries {
  const both = (value: number) => Float64Array.of(value, value);
  return {
    time: Float64Array.of(0, duration),
    tempAir: both(tempAir),
    windSpeed: both(windSpeed),
    tempDewPoint: both(tempAir - STEADY.depression),
    cloudCover: both(STEADY.cloudCover),
    origin: "steady weather of a case",
    assumptions: [],
  };
}
