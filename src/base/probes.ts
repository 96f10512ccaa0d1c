import { installationNetwork, isElementPart } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import { type Sensor, USUAL_SENSOR } from "../learning/index.js";
import type { AircraftState, BaseProbe, BaseState } from "../logbook/index.js";
import type { AircraftScenario } from "../scenario/index.js";
import { kelvinFromCelsius } from "../units/index.js";

/** A temperature as a probe gave it, or the mean of a minute of them; what a store keeps. */
export interface KnownReading {
  /** Aircraft id, or "base" for the base's own probes. */
  readonly aircraft: string;
  readonly probe: string;
  /** [ms] since 1970 UTC. */
  readonly time: number;
  /** [°C] */
  readonly tempC: number;
}

/** What the live estimate of an aircraft listens to. */
export interface ProbePlan {
  readonly sensors: readonly Sensor[];
  /** Probes that could not be used, and why. */
  readonly assumptions: readonly Finding[];
  /** Which probe of the base or the aircraft measures the air, by place; the aircraft's own before the base's. */
  readonly air: { readonly ramp?: AirProbe; readonly hangar?: AirProbe };
}

interface AirProbe {
  readonly aircraft: string;
  readonly probe: string;
}

/** Where the base's own probes stand in the readings. */
export const OF_BASE = "base";
/** Begins the name of the sensor that readings by hand of a part stand for. */
const BY_HAND = "by-hand:";

/** [K] reading of a hand-held thermometer: it is put on anew every time, so that its error does not last; project judgement. */
const HAND_NOISE = 1.5;

export function probePlan(
  { setUp: base }: BaseState,
  aircraft: AircraftState,
  read: AircraftScenario,
): ProbePlan {
  const { setUp, readings } = aircraft;
  const { installation, kit } = read.scenario;
  const parts = installationNetwork(installation, kit).network.parts.map(({ name }) => name);
  const elements = parts.filter(isElementPart).length;
  const assumptions: Finding[] = [];
  const isFelt = (part: string, leftOut: (reason: Finding) => Finding): boolean => {
    const reason = whyNot(part, parts, elements);
    if (reason !== undefined) assumptions.push(leftOut(reason));
    return reason === undefined;
  };
  const probes = setUp.probes.filter(
    ({ at, name }) =>
      !isAir(at) && isFelt(at, (reason) => finding("probe-left-out", { probe: name, reason })),
  );
  const handParts = [...new Set(readings.map(({ part }) => part))].sort();
  const byHand = handParts.filter(
    (part) => !isAir(part) && isFelt(part, (reason) => finding("hand-reading-left-out", { part, reason })),
  );
  return {
    sensors: [
      ...probes.map(
        ({ id, at, lag_s }): Sensor => ({
          ...{ name: id, place: { part: at }, ...USUAL_SENSOR },
          ...(lag_s === undefined ? {} : { lag: lag_s }),
        }),
      ),
      ...byHand.map(
        (part): Sensor => ({
          ...{ name: BY_HAND + part, place: { part }, ...USUAL_SENSOR },
          ...{ noise: HAND_NOISE, offsetSd: 0.5 },
        }),
      ),
    ],
    assumptions,
    air: {
      ...airProbe("ramp", "outside_air"),
      ...airProbe("hangar", "hangar_air"),
    },
  };

  function airProbe(place: "ramp" | "hangar", at: BaseProbe["at"]): { [key in typeof place]?: AirProbe } {
    const own = setUp.probes.find((probe) => probe.at === at);
    if (own !== undefined) return { [place]: { aircraft: setUp.id, probe: own.id } };
    const shared = base.probes.find((probe) => probe.at === at);
    return shared === undefined ? {} : { [place]: { aircraft: OF_BASE, probe: shared.id } };
  }
}

function isAir(part: string): boolean {
  return part === "outside_air" || part === "hangar_air";
}

/** Names that stand for parts of the network under another name. */
const STANDS_FOR: Readonly<Record<string, string>> = { cylinders: "barrels", heads: "heads_front" };

function whyNot(part: string, parts: readonly string[], elements: number): Finding | undefined {
  if (part === "heater_surface") {
    return elements === 1 ? undefined : finding("element-unnamed", { elements });
  }
  return parts.includes(STANDS_FOR[part] ?? part) ? undefined : finding("no-such-part", { part });
}

/** What came in one minute. */
export interface Minute {
  /** [ms] its middle, for which its means count. */
  readonly at: number;
  /** [K] by sensor name. */
  readonly temps: ReadonlyMap<string, number>;
  /** [K] of the air by place. */
  readonly air: { readonly ramp?: number; readonly hangar?: number };
}

export const MINUTE = 60_000;

/**
 * The readings of an aircraft after `from` up to `to` [ms], thinned to the mean of each full minute, in order of time.
 */
export function minutesOf(
  plan: ProbePlan,
  aircraft: AircraftState,
  readings: readonly KnownReading[],
  { from, to }: { readonly from: number; readonly to: number },
): Minute[] {
  const sums = new Map<number, Map<string, { sum: number; count: number }>>();
  const names = new Set(plan.sensors.map(({ name }) => name));
  const add = (time: number, name: string, tempC: number) => {
    const minute = MINUTE * Math.floor(time / MINUTE);
    if (minute + MINUTE / 2 <= from || minute + MINUTE > to) return;
    const row = sums.get(minute) ?? new Map<string, { sum: number; count: number }>();
    const entry = row.get(name) ?? { sum: 0, count: 0 };
    row.set(name, { sum: entry.sum + tempC, count: entry.count + 1 });
    sums.set(minute, row);
  };
  for (const { aircraft: of, probe, time, tempC } of readings) {
    if (of === aircraft.setUp.id && names.has(probe)) add(time, probe, tempC);
    for (const place of ["ramp", "hangar"] as const) {
      const air = plan.air[place];
      if (air?.aircraft === of && air.probe === probe) add(time, AIR[place], tempC);
    }
  }
  for (const { at, part, tempC } of aircraft.readings) {
    if (names.has(BY_HAND + part)) add(at, BY_HAND + part, tempC);
    if (part === "outside_air") add(at, AIR.ramp, tempC);
    if (part === "hangar_air") add(at, AIR.hangar, tempC);
  }
  return [...sums.entries()]
    .sort(([a], [b]) => a - b)
    .map(([minute, row]) => {
      const mean = (name: string) => {
        const entry = row.get(name);
        return entry === undefined ? undefined : kelvinFromCelsius(entry.sum / entry.count);
      };
      const [ramp, hangar] = [mean(AIR.ramp), mean(AIR.hangar)];
      return {
        at: minute + MINUTE / 2,
        temps: new Map(
          [...names].flatMap((name) => {
            const temp = mean(name);
            return temp === undefined ? [] : [[name, temp] as const];
          }),
        ),
        air: { ...(ramp === undefined ? {} : { ramp }), ...(hangar === undefined ? {} : { hangar }) },
      };
    });
}

/** Under these names the air's readings are summed; no probe can be called so. */
const AIR = { ramp: " outside air", hangar: " hangar air" } as const;
