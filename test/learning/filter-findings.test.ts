import { describe, expect, test } from "vitest";
import type { TemperatureLog } from "../../src/learning/index.js";
import { madeLog, trueTemps } from "../../src/learning/made-aircraft.js";
import { every, HOUR } from "./example-night.js";
import {
  asTold,
  COUNT,
  filter,
  fleet,
  nightOf,
  PAD,
  probes,
  readingsAt,
  rowAt,
  run,
  STEP,
  times,
  told,
  truth,
} from "./live-night.js";

/** [h] when a finding was first believed, and from when on it was said to hold. */
function firstBelieved(
  log: TemperatureLog,
  finding: string,
): { at: number; since: number; others: string[] } {
  let found = { at: Number.POSITIVE_INFINITY, since: Number.NaN };
  const others = new Set<string>();
  run(log, (k, estimate) => {
    for (const one of estimate().findings) {
      if (!one.believed) continue;
      if (one.finding !== finding) others.add(one.finding);
      else if (found.at === Number.POSITIVE_INFINITY) {
        found = { at: times[k] / HOUR, since: (one.since ?? Number.NaN) / HOUR };
      }
    }
  });
  return { ...found, others: [...others] };
}

const unplug = { do: "unplug", heaters: [PAD] } as const;
const plugIn = { do: "plug-in", heaters: [PAD] } as const;

describe("noticing what is not as told", () => {
  test.each([0, 2, 4])("nothing on a night as told (aircraft %i)", (a) => {
    expect(firstBelieved(madeLog(fleet, asTold, a, probes), "none").others).toEqual([]);
  });

  test("a heater that dies", () => {
    const night = nightOf(truth([{ at: 5 * HOUR, change: unplug }]));
    for (const a of [0, 3]) {
      const { at, since, others } = firstBelieved(madeLog(fleet, night, a, probes), "heater-not-heating");
      expect(at).toBeLessThan(5.8);
      expect(Math.abs(since - 5)).toBeLessThan(0.4);
      expect(others).toEqual([]);
    }
  });

  test("a heater that heats again, and parts right throughout", () => {
    const night = nightOf(
      truth([
        { at: 4 * HOUR, change: unplug },
        { at: 7 * HOUR, change: plugIn },
      ]),
    );
    const log = madeLog(fleet, night, 0, probes);
    const beliefs: (string | undefined)[] = [];
    let held = 0;
    run(log, (k, estimate, { belief }) => {
      if (k % rowAt(1) !== 0) return;
      beliefs.push(belief.deviation);
      const crank = estimate().parts.find(({ part }) => part === "crankshaft");
      const temp = trueTemps(night, COUNT, 0, "crankshaft")[k];
      if (crank !== undefined && temp >= crank.low && temp <= crank.high) held++;
    });
    expect(beliefs.slice(0, 4)).toEqual([undefined, undefined, undefined, undefined]);
    expect(beliefs.slice(4, 7)).toEqual(Array(3).fill("heater-not-heating"));
    expect(beliefs.slice(7)).toEqual([undefined, undefined, undefined]);
    expect(held).toBeGreaterThanOrEqual(8);
  });

  test("a heater that was never plugged in", () => {
    const night = nightOf({ ...told, events: [] });
    const { at } = firstBelieved(madeLog(fleet, night, 2, probes), "heater-not-heating");
    expect(at).toBeGreaterThan(4);
    expect(at).toBeLessThan(6);
  });

  test("a cover that is off", () => {
    const change = { do: "cover-off", covers: ["insulated-cover"] } as const;
    const night = nightOf(truth([{ at: 7 * HOUR, change }]));
    const found = every(1, COUNT - 1).map((a) =>
      firstBelieved(madeLog(fleet, night, a, probes), "cover-off"),
    );
    // Where the cover makes little difference it can stay unseen; never may it be taken for something else.
    expect(found.filter(({ at }) => at < 8.5).length).toBeGreaterThanOrEqual(4);
    expect(found.flatMap(({ others }) => others)).toEqual([]);
  });

  test("an aircraft that stands in the hangar", () => {
    const night = nightOf(truth([], "hangar"));
    const { at, since } = firstBelieved(madeLog(fleet, night, 3, probes), "other-place");
    expect(at).toBeLessThan(1.5);
    expect(since).toBeLessThan(0.5);
  });

  test("a probe that falls out, and is put back", () => {
    const log = madeLog(fleet, asTold, 4, probes);
    const air = trueTemps(asTold, COUNT, 4, "cowl_air");
    const oil = log.probes[0].temps.slice();
    const [out, back] = [rowAt(6), rowAt(8)];
    let shown = oil[out];
    for (let k = out; k < back; k++) {
      shown += (air[k] - shown) * (1 - Math.exp(-STEP / 300));
      oil[k] = Math.round(10 * shown) / 10;
    }
    const spoilt = { ...log, probes: [{ ...log.probes[0], temps: oil }, log.probes[1]] };
    const believed: boolean[] = [];
    let worst = 0;
    run(spoilt, (k, estimate) => {
      const now = estimate();
      believed[k] = now.findings.some((f) => f.finding === "probe-out" && f.probe === "oil" && f.believed);
      expect(now.findings.filter((f) => f.believed && f.finding !== "probe-out")).toEqual([]);
      const one = now.parts.find(({ part }) => part === "oil");
      const temp = trueTemps(asTold, COUNT, 4, "oil")[k];
      if (k > rowAt(6.5) && one !== undefined) worst = Math.max(worst, Math.abs(one.mid - temp));
    });
    expect(believed.indexOf(true)).toBeGreaterThan(out);
    expect(believed.indexOf(true)).toBeLessThan(rowAt(6.3));
    expect(believed.slice(rowAt(6.3), back).every((b) => b)).toBe(true);
    expect(believed.slice(rowAt(8.6)).some((b) => b)).toBe(false);
    expect(worst).toBeLessThan(4);
  });

  test("one wild reading moves nothing", () => {
    const log = madeLog(fleet, asTold, 5, probes);
    const before = run(log, undefined, { rows: [...times.keys()].slice(1, rowAt(6)) });
    const input = { time: times[rowAt(6)], readings: readingsAt(log, rowAt(6)) };
    const wild = filter.step(before, { ...input, readings: new Map(input.readings).set("oil", 330) });
    expect(wild.used).toEqual(["gated", "used"]);
    const calm = filter.step(before, {
      ...input,
      readings: new Map([["heads", input.readings.get("heads") ?? 0]]),
    });
    expect(wild.state.mean).toEqual(calm.state.mean);
  });
});
