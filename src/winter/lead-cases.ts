import { type Configuration, type Installation, isElementPart, type Kit } from "../aircraft/index.js";
import { type Criterion, judge, marginOf, type Verdict } from "../readiness/index.js";
import { createForcing, type Draws, type Site } from "../simulation/index.js";
import { type SolveResult, solve } from "../solver/index.js";
import type { PartCourse } from "../starting/index.js";
import type { WeatherSeries } from "../weather/index.js";
import { blockOf, createGroups, type Groups, type Surrounding, withoutMiddle } from "./groups.js";
import { heaterPower } from "./heater-power.js";
import { drawnMembers, type MembersRequest } from "./members.js";
import { type Readiness, readinessOf } from "./readiness-count.js";
import { SeasonFailure, toleranceOf } from "./tolerance.js";

/** Weather that holds all night. */
export interface SteadyCase {
  /** [K] */
  readonly tempAir: number;
  /** [m/s] at 10 m */
  readonly windSpeed: number;
}

export interface LeadCasesRequest {
  readonly installation: Installation;
  readonly kit: Kit;
  readonly place: Configuration["place"];
  readonly site: Site;
  readonly criteria: readonly Criterion[];
  readonly cases: readonly SteadyCase[];
  /** [s] how old the forecast is; undefined: the weather is known. */
  readonly age: number | undefined;
  readonly ensemble: MembersRequest;
  readonly unplugBefore: number;
  readonly coverOffBefore: number;
  /** [s] leads that may be tried, from plug-in to departure, ascending */
  readonly leads: readonly number[];
  /** [K] local error of the steps; a winter's usual one where left out. */
  readonly tolerance?: number;
}

/** Cold-soaked aircraft heated for some lead and then stripped: their state at departure, judged. */
export interface LeadCases {
  readonly groups: Groups;
  /** Readiness of one lead a case, by its index; -1: never plugged in. */
  readinessAt(leads: readonly number[]): readonly Readiness[];
  /** The same with every criterion's bands. */
  verdictAt(leads: readonly number[]): readonly Verdict[];
  /** Whether heating a case for that lead breaks a ceiling in the middle aircraft. */
  isTooHot(caseIndex: number, lead: number): boolean;
  /** [K] hottest element surface of each member of a case by the lead; empty without elements. */
  hottestSurface(caseIndex: number, lead: number): Float64Array;
  hottestFilm(caseIndex: number, lead: number): Float64Array;
  /** [J] put in by each member by the lead, and the part of it that was burnt */
  energy(caseIndex: number, lead: number): Float64Array;
  fuel(caseIndex: number, lead: number): Float64Array;
  /** The middle aircraft of a case from plug-in to the end of heating by the lead. */
  middleCourse(caseIndex: number, lead: number): PartCourse;
}

/** Covers off and pulled out, as at every departure. */
export const STRIPPED: Configuration = { place: "ramp", heatersOn: new Set(), coversOn: new Set() };

/** Dew-point depression [K] and cloud of steady cases: near saturation, clear sky, as the cautious side has it. */
export const STEADY = { depression: 2, cloudCover: 0 } as const;

/**
 * Heats every case once through the longest lead and keeps the states at each lead; a lead is judged by going on from its
 * state through unplugging and stripping. All cases and members run as one ensemble.
 */
export function createLeadCases(request: LeadCasesRequest): LeadCases {
  const { installation, kit, place, cases, leads, unplugBefore, coverOffBefore } = request;
  const longest = leads[leads.length - 1]!;
  const heating = longest - unplugBefore;
  const draws = drawnMembers(request.ensemble, steadyWeather(cases[0]!, longest), request.age);
  const groups = createGroups({ installation, kit, groups: cases.length, draws });
  const around = cases.map((one) => surroundingOf(one, request, draws, longest));
  const parked: Configuration = {
    place,
    heatersOn: new Set(),
    coversOn: new Set(kit.covers.map(({ id }) => id)),
  };
  const heated: Configuration = { ...parked, heatersOn: new Set(kit.heaters.map(({ id }) => id)) };
  const { parts, members } = groups;
  const size = parts.length * members;
  const cold = coldState(request, groups, draws);

  const durations = leads.map((lead) => Math.max(0, lead - unplugBefore));
  const grid = Array.from({ length: Math.floor(heating / COURSE) + 1 }, (_, i) => i * COURSE);
  const times = [...new Set([0, ...grid, ...durations])].sort((a, b) => a - b);
  const course = run(heated, cold, heating, times);
  const states = course.samples;
  const power = heaterPower(groups, kit, heated);
  const elements = parts.flatMap((name, i) => (isElementPart(name) ? [i] : []));
  const sump = parts.indexOf("sump");
  const ceilings = request.criteria.filter(({ judged }) => judged === "while-heating");
  const known = new Map<string, Judged>();
  let energies: { readonly all: Float64Array; readonly fuel: Float64Array } | undefined;

  function run(
    configuration: Configuration,
    initial: Float64Array,
    to: number,
    sampleTimes: readonly number[] = [],
  ): SolveResult {
    const result = solve({
      system: groups.system,
      initial,
      start: 0,
      end: to,
      tolerance: toleranceOf(parts, request.tolerance),
      sampleTimes,
      firstStep: Math.min(FIRST_STEP, to),
      onStretch: (a, b) =>
        groups.hold(new Array<Configuration>(groups.groups).fill(configuration), around, a, b),
    });
    if (result.status !== "completed") throw new SeasonFailure(`${result.status}: ${result.remedy}`);
    return result;
  }

  /** [K] all members when the heating of each case's lead ends. */
  function atUnplug(indices: readonly number[]): Float64Array {
    const state = new Float64Array(size);
    indices.forEach((lead, c) => {
      const from = lead < 0 ? cold : sampleOf(states, times.indexOf(durations[lead]!), size);
      for (let i = 0; i < parts.length; i++) {
        const at = i * members + c * groups.draws;
        state.set(from.subarray(at, at + groups.draws), at);
      }
    });
    return state;
  }

  /** [K] all members when heating ends and at departure. */
  function departing(indices: readonly number[]): { unplugged: Float64Array; atStart: Float64Array } {
    const unplugged = atUnplug(indices);
    const covered = unplugBefore - coverOffBefore;
    const uncovered = covered > 0 ? run(parked, unplugged, covered).state : unplugged;
    const atStart = coverOffBefore > 0 ? run(STRIPPED, uncovered, coverOffBefore).state : uncovered;
    return { unplugged, atStart };
  }

  /** [J] put in by each member so far: trapezoid over the kept course. */
  function energyAlong() {
    const all = new Float64Array(times.length * members);
    const fuel = new Float64Array(times.length * members);
    for (let s = 1; s < times.length; s++) {
      const half = 0.5 * (times[s]! - times[s - 1]!);
      for (let m = 0; m < members; m++) {
        const [g, d] = [Math.floor(m / groups.draws), m % groups.draws];
        const [at, before] = [s * members + m, (s - 1) * members + m];
        const ofElements = (k: number) => power.elements(states, k * size, g, d);
        const ofDuct = (k: number) => power.duct(times[k]!, around[g]!, d);
        const duct = half * (ofDuct(s - 1) + ofDuct(s));
        all[at] = all[before]! + half * (ofElements(s - 1) + ofElements(s)) + duct;
        fuel[at] = fuel[before]! + (power.ductBurns ? duct : 0);
      }
    }
    return { all, fuel };
  }

  function putIn(kind: "all" | "fuel", c: number, lead: number): Float64Array {
    energies ??= energyAlong();
    const s = lead < 0 ? 0 : times.indexOf(durations[lead]!);
    const at = s * members + c * groups.draws;
    return energies[kind].subarray(at, at + groups.draws);
  }

  function hottest(rows: readonly number[], c: number, lead: number): Float64Array {
    const out = new Float64Array(groups.draws).fill(Number.NEGATIVE_INFINITY);
    const last = lead < 0 ? 0 : times.indexOf(durations[lead]!);
    for (let s = 0; s <= last; s++) {
      for (const i of rows) {
        for (let d = 0; d < groups.draws; d++)
          out[d] = Math.max(out[d]!, states[s * size + i * members + c * groups.draws + d]!);
      }
    }
    return out;
  }

  /** Each lead of a case is run once: the solver's steps are common to all cases, and twice would not be quite the same. */
  function judgedAt(indices: readonly number[]): Judged[] {
    if (indices.some((lead, c) => !known.has(`${c}:${lead}`))) {
      const { unplugged, atStart } = departing(indices);
      indices.forEach((lead, c) => {
        if (known.has(`${c}:${lead}`)) return;
        known.set(`${c}:${lead}`, {
          readiness: readinessOf(request.criteria, groups, c, atStart, unplugged),
          atStart: withoutMiddle(blockOf(atStart, c, groups), groups),
          unplugged: withoutMiddle(blockOf(unplugged, c, groups), groups),
        });
      });
    }
    return indices.map((lead, c) => known.get(`${c}:${lead}`)!);
  }

  return {
    groups,
    readinessAt: (indices) => judgedAt(indices).map(({ readiness }) => readiness),
    verdictAt(indices) {
      const state = (temps: Float64Array) => ({ temps, parts, members: groups.draws - 1 });
      return judgedAt(indices).map(({ atStart, unplugged }) =>
        judge(request.criteria, state(atStart), state(unplugged)),
      );
    },
    isTooHot(c, lead) {
      const at = (lead < 0 ? 0 : times.indexOf(durations[lead]!)) * size + c * groups.draws;
      const temps = Float64Array.from(parts, (_, i) => states[at + i * members]!);
      const value = new Float64Array(1);
      return ceilings.some((criterion) => {
        criterion.values({ temps, parts, members: 1 }, value);
        return marginOf(criterion, value[0]!) < 0;
      });
    },
    hottestSurface: (c, lead) => (elements.length === 0 ? new Float64Array() : hottest(elements, c, lead)),
    hottestFilm: (c, lead) => hottest([sump], c, lead),
    middleCourse(c, lead) {
      const count = lead < 0 ? 1 : times.indexOf(durations[lead]!) + 1;
      const column = (s: number) => parts.map((_, i) => states[s * size + i * members + c * groups.draws]!);
      return {
        time: times.slice(0, count),
        ...{ parts, members: 1 },
        temps: Array.from({ length: count }, (_, s) => column(s)).flat(),
      };
    },
    energy: (c, lead) => putIn("all", c, lead),
    fuel: (c, lead) => putIn("fuel", c, lead),
  };
}

/** One lead of one case: who is ready, and the drawn members [K] at the start and when the heaters were last on. */
interface Judged {
  readonly readiness: Readiness;
  readonly atStart: Float64Array;
  readonly unplugged: Float64Array;
}

/** [s] as in a season. */
const FIRST_STEP = 200;
/** [s] spacing of the kept course, for the hottest surface and the energy. */
const COURSE = 1200;

function sampleOf(samples: Float64Array, s: number, size: number): Float64Array {
  return samples.subarray(s * size, (s + 1) * size);
}

function coldState({ cases, place, site }: LeadCasesRequest, groups: Groups, draws: Draws): Float64Array {
  const { parts, members } = groups;
  const state = new Float64Array(parts.length * members);
  for (let m = 0; m < members; m++) {
    const d = m % groups.draws;
    const outside = cases[Math.floor(m / groups.draws)]!.tempAir + draws.weather.tempOffset[d]!;
    const temp = place === "hangar" ? site.tempHangar : outside;
    for (let i = 0; i < parts.length; i++) state[i * members + m] = temp;
  }
  return state;
}

function surroundingOf(
  one: SteadyCase,
  { installation, kit, site }: LeadCasesRequest,
  draws: Draws,
  duration: number,
): Surrounding {
  const weather = steadyWeather(one, duration);
  const forcing = createForcing(
    {
      ...{ installation, kit, site, weather, duration },
      start: 0,
      initial: { configuration: STRIPPED, temps: new Map(), tempOthers: one.tempAir, sd: 0 },
      events: [],
    },
    draws,
  );
  return { forcing, each: true };
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
