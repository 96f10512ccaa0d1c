import type { Configuration } from "../aircraft/index.js";
import type { ReadWinter } from "../documents/index.js";
import { STRIPPED } from "./cold-case.js";
import { unplugBeforeOf } from "./heater-limits.js";
import type { HeaterSchedule } from "./heater-schedule.js";

/** What is on and fitted through a winter, one configuration a habit. Times [s] since the winter's start. */
export interface SeasonSwitching {
  /** The parked aircraft with its covers and heaters on. */
  readonly heated: Configuration;
  /** All moments at which anything is switched or covered, ascending. */
  readonly times: readonly number[];
  isUnplugTime(t: number): boolean;
  /** What holds from `t` to the next of the times. */
  configurationsFrom(t: number): readonly Configuration[];
}

export function createSeasonSwitching(
  read: ReadWinter,
  kitIndex: number,
  schedules: readonly HeaterSchedule[],
): SeasonSwitching {
  const { departures, flightTime, coverOffBefore, start } = read;
  const { kit } = read.kits[kitIndex]!;
  const unplugBefore = unplugBeforeOf(kit, read.unplugBefore);
  const all = (on: boolean, covered: boolean): Configuration => ({
    place: covered ? read.place : STRIPPED.place,
    heatersOn: new Set(on ? kit.heaters.map(({ id }) => id) : []),
    coversOn: new Set(covered ? kit.covers.map(({ id }) => id) : []),
  });
  const parked = { on: all(true, true), off: all(false, true) };
  const stripped = all(false, false);
  const out = departures.map((t) => ({ from: t - coverOffBefore - start, to: t + flightTime - start }));
  const isOut = (t: number) => out.some(({ from, to }) => t >= from && t < to);
  const switches = schedules.map(({ on }) => switchEdges(on, start));
  const unplugTimes = new Set(departures.map((t) => t - unplugBefore - start));
  const times = new Set([
    ...switches.flatMap((edges) => edges.map(({ at }) => at)),
    ...out.flatMap(({ from: off, to: on }) => [off, on]),
    ...unplugTimes,
  ]);
  return {
    heated: parked.on,
    times: [...times].sort((a, b) => a - b),
    isUnplugTime: (t) => unplugTimes.has(t),
    configurationsFrom(t) {
      const bare = isOut(t);
      return switches.map((edges) => (bare ? stripped : isOnAt(edges, t) ? parked.on : parked.off));
    },
  };
}

interface SwitchEdge {
  readonly at: number;
  readonly on: boolean;
}

function switchEdges(on: HeaterSchedule["on"], start: number): SwitchEdge[] {
  const edges = on.flatMap(({ from, to }) => [
    { at: from - start, on: true },
    { at: to - start, on: false },
  ]);
  return edges.sort((a, b) => a.at - b.at);
}

function isOnAt(edges: readonly SwitchEdge[], t: number): boolean {
  let low = 0;
  let high = edges.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (edges[middle]!.at <= t) low = middle + 1;
    else high = middle;
  }
  return low > 0 && edges[low - 1]!.on;
}
