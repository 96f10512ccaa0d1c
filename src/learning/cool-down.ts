import type { PartName } from "../aircraft/index.js";
import { configurationAt, type Scenario, timelineOf } from "../simulation/index.js";
import { shutDownTemps } from "../starting/index.js";
import { weatherAt } from "../weather/index.js";
import type { TemperatureLog } from "./log.js";
import type { CoolDown } from "./log-signals.js";
import { ALIASES } from "./sensor.js";

/** A stretch of a log that one fit can be made on: from temperatures that are known, without the engine running. */
export interface LoggedStretch {
  readonly log: TemperatureLog;
  readonly scenario: Scenario;
  /** [K] of parts that begin off what is given for them by their own error; those with probes by the usual one without it. */
  readonly initialSd?: ReadonlyMap<string, number>;
  readonly coolDown?: CoolDown;
}

/** [s] after the shut-down whose readings count as its temperatures: a minute's log has two or three. */
const AT_SHUT_DOWN = 150;
/** [s] by which a shut-down is told late at most, and the shortest stretch that teaches; project judgement. */
const TOLD_LATE = 1800;
const SHORTEST = 1200;
/** [K] of a part that was read then: it is not even in itself yet. Project judgement. */
const READ_SD = 3;
/** Of the rise above the air, for parts that nobody read; project judgement, as SHUT_DOWN_SD of the typical state. */
const UNREAD_SHARE = 0.15;
/** [K] what all parts share beside that. */
const COMMON_SD = 1;
/** Flights are longer or shorter, warmer or colder than the typical one by no more than this factor of its rise. */
const LEAST_RISE = 0.3;
const MOST_RISE = 1.6;

/**
 * What can be learned from of a log over a scenario: its readings before the engine first ran, begun as the scenario says,
 * and every cool-down after a flight, begun as the engine was read when it was shut down.
 */
export function stretchesOf(log: TemperatureLog, scenario: Scenario): readonly LoggedStretch[] {
  const { coolDowns = [], ranFrom } = log;
  const { start, duration } = scenario;
  if (ranFrom === undefined) return [{ log, scenario }];
  const parked: LoggedStretch[] =
    ranFrom - start > 0
      ? [{ log: cut(log, start, ranFrom - 1), scenario: { ...scenario, duration: ranFrom - start } }]
      : [];
  const within = coolDowns.flatMap(({ shutDown, until }): CoolDown[] => {
    // Somebody's word for the shut-down, where a scenario begins, is some minutes off the log's.
    const begins = shutDown < start && start - shutDown <= TOLD_LATE ? start : shutDown;
    const ends = Math.min(until, start + duration);
    return begins >= start && ends - begins >= SHORTEST ? [{ shutDown: begins, until: ends }] : [];
  });
  return [...parked, ...within.map((coolDown) => coolDownStretch(log, scenario, coolDown))].filter(
    (stretch) => stretch.log.time.length >= 2,
  );
}

function coolDownStretch(log: TemperatureLog, scenario: Scenario, coolDown: CoolDown): LoggedStretch {
  const { shutDown, until } = coolDown;
  const { installation, initial, events, weather } = scenario;
  const own = cut(log, shutDown, until);
  const from = shutDown - scenario.start;
  const timeline = timelineOf(initial.configuration, events);
  const read = (place: (of: TemperatureLog["probes"][number]["place"]) => boolean) => meanAtStart(own, place);
  const tempAir = read((place) => place === "outside-air") ?? weatherAt(weather, shutDown).tempAir;
  const typical = shutDownTemps(installation, tempAir);
  const readTemps = new Map<PartName, number>();
  for (const { place } of own.probes) {
    if (typeof place !== "object") continue;
    const temp = read((other) => typeof other === "object" && other.part === place.part);
    if (temp === undefined) continue;
    for (const name of (ALIASES[place.part] ?? [place.part]) as PartName[]) {
      if (typical.has(name)) readTemps.set(name, temp);
    }
  }
  const riseOf = (part: PartName) => {
    const temp = readTemps.get(part);
    const usual = (typical.get(part) ?? tempAir) - tempAir;
    if (temp === undefined || usual <= 0) return undefined;
    return Math.min(MOST_RISE, Math.max(LEAST_RISE, (temp - tempAir) / usual));
  };
  const ofOil = riseOf("oil") ?? riseOf("heads_front") ?? 1;
  const ofHeads = riseOf("heads_front") ?? ofOil;
  const temps = new Map<string, number>();
  const initialSd = new Map<string, number>();
  for (const [part, temp] of typical) {
    const share = part === "barrels" || part.startsWith("heads") ? ofHeads : ofOil;
    const known = readTemps.get(part);
    const rise = share * (temp - tempAir);
    temps.set(part, known ?? tempAir + rise);
    if (known === undefined) initialSd.set(part, Math.max(COMMON_SD, UNREAD_SHARE * rise));
  }
  for (const { place } of own.probes) {
    if (typeof place === "object" && readTemps.has((ALIASES[place.part] ?? [place.part])[0] as PartName))
      initialSd.set(place.part, READ_SD);
  }
  return {
    log: own,
    coolDown,
    initialSd,
    scenario: {
      ...scenario,
      start: shutDown,
      duration: until - shutDown,
      initial: {
        configuration: configurationAt(timeline, from),
        temps,
        tempOthers: temps.get("cowl_air") ?? tempAir,
        sd: COMMON_SD,
      },
      events: events.filter(({ at }) => at > from).map((event) => ({ ...event, at: event.at - from })),
    },
  };
}

/** [K] mean of the first readings of probes at a place. */
function meanAtStart(
  { time, probes }: TemperatureLog,
  isWanted: (place: TemperatureLog["probes"][number]["place"]) => boolean,
): number | undefined {
  const values = probes
    .filter(({ place }) => isWanted(place))
    .flatMap(({ temps }) => {
      const k = temps.findIndex((temp) => !Number.isNaN(temp));
      if (k < 0 || time[k] - time[0] > AT_SHUT_DOWN) return [];
      return [...temps].filter((temp, i) => !Number.isNaN(temp) && time[i] - time[0] <= AT_SHUT_DOWN);
    });
  return values.length === 0 ? undefined : values.reduce((a, b) => a + b) / values.length;
}

function cut(log: TemperatureLog, from: number, to: number): TemperatureLog {
  const first = log.time.findIndex((t) => t >= from);
  const after = log.time.findIndex((t) => t > to);
  const [a, b] = [first < 0 ? log.time.length : first, after < 0 ? log.time.length : after];
  return {
    ...log,
    time: log.time.slice(a, b),
    probes: log.probes.map((probe) => ({ ...probe, temps: probe.temps.slice(a, b) })),
  };
}
