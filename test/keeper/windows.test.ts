import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { type Windows, windowsOf } from "../../src/keeper/windows.js";
import type { BaseSetUp, HeaterSwitch, LogbookEvent } from "../../src/logbook/index.js";
import { english } from "../../src/words/index.js";
import { at, HOUR, OPENED, opening, stateOf } from "../base/example-base.js";

/** The set-up with another heater on lynx and its switch. */
function withHeater(heater: string): BaseSetUp {
  return {
    ...opening.setUp,
    aircraft: opening.setUp.aircraft.map((one) =>
      one.id === "lynx"
        ? {
            ...one,
            kit: { ...one.kit, heaters: [heater] },
            switches: one.switches.map((each) => ({ ...each, heaters: [heater] })),
          }
        : one,
    ),
  };
}

/** Its own in-cowl heater is attended; with a pad it can be switched. */
const PADS = withHeater("sump-pad-220");

/** Plans for the given aircraft, heating from and to [h] after the opening. */
function planned(
  spans: Readonly<Record<string, readonly [number, number]>>,
  setUp: BaseSetUp = PADS,
  outcome: { readonly status: "ready" | "not-reachable"; readonly chance: number } = {
    status: "ready",
    chance: 0.9,
  },
) {
  const iso = (hours: number) => new Date(OPENED + hours * HOUR).toISOString();
  const plans = Object.entries(spans).flatMap(([aircraft, [from, to]]): LogbookEvent[] => {
    const of = opening.events.find((e) => e.kind === "departure-wanted" && e.aircraft === aircraft);
    const heaters = setUp.aircraft.find(({ id }) => id === aircraft)?.switches[0].heaters ?? [];
    return [
      {
        ...{ ...at(0.5), kind: "plan-issued", aircraft, of: of?.id ?? "", status: outcome.status },
        ...{ plug_in: iso(from), unplug: iso(to), departure: iso(to + 0.25), heaters },
        ...{ chance: outcome.chance, weakest: "oil", message: "ready", energy_kwh: 1 },
      },
    ];
  });
  const changed: LogbookEvent = { ...at(0.1), kind: "set-up", base: setUp, id: randomUUID() };
  return stateOf([...opening.events, changed, ...plans]);
}

test("the switch that feeds the planned heaters is wanted on from plug-in to unplug", () => {
  const { windows, refused } = windowsOf(planned({ lynx: [10, 12], heron: [11, 14] }), OPENED + HOUR);
  expect(said(refused)).toEqual([]);
  expect(windows.map(({ aircraft, switch: id, from, to }) => [aircraft, id, from, to])).toEqual([
    ["lynx", "lead", OPENED + 10 * HOUR, OPENED + 12 * HOUR],
    ["heron", "lead", OPENED + 11 * HOUR, OPENED + 14 * HOUR],
  ]);
});

test("a window that is over, and that of an aircraft that was started, want nothing", () => {
  const state = planned({ lynx: [10, 12] });
  expect(windowsOf(state, OPENED + 12 * HOUR).windows).toEqual([]);
  const lynx = state.aircraft.get("lynx");
  if (lynx === undefined) throw new Error("no lynx");
  const running = { ...state, aircraft: new Map([["lynx", { ...lynx, running: true }]]) };
  expect(windowsOf(running, OPENED).windows).toEqual([]);
});

test("a departure that cannot be met is heated for when it nearly can, and else left to people", () => {
  const near = planned({ lynx: [10, 12] }, undefined, { status: "not-reachable", chance: 0.7 });
  expect(windowsOf(near, OPENED).windows.length).toBe(1);
  const far = windowsOf(
    planned({ lynx: [10, 12] }, undefined, { status: "not-reachable", chance: 0.03 }),
    OPENED,
  );
  expect(far.windows).toEqual([]);
  expect(said(far.refused)).toEqual([
    {
      aircraft: "lynx",
      switch: "lead",
      reason: expect.stringMatching(/chance of 3.% somebody has to decide/),
    },
  ]);
});

test("a circuit is never planned beyond 80 % of its breaker: what begins last is left out and says so", () => {
  const small = { ...PADS, circuits: PADS.circuits.map((c) => ({ ...c, limit_a: 3.5 })) };
  const { windows, refused } = windowsOf(planned({ lynx: [10, 12], heron: [11, 14] }, small), OPENED + HOUR);
  expect(windows.map(({ aircraft }) => aircraft)).toEqual(["lynx"]);
  expect(said(refused)).toEqual([
    {
      aircraft: "heron",
      switch: "lead",
      reason: expect.stringMatching(
        /ramp circuit would carry \d+ W, more than the 644 W that a continuous load may draw/,
      ),
    },
  ]);
  const apart = windowsOf(planned({ lynx: [10, 11], heron: [11, 14] }, small), OPENED + HOUR);
  expect(apart.windows.length).toBe(2);
});

test("a heater that somebody has to stand by is not switched", () => {
  const setUp = withHeater("ducted-fuel-12000");
  const state = planned({ lynx: [10, 12] }, setUp);
  const lynx = state.aircraft.get("lynx");
  if (lynx?.plan === undefined) throw new Error("no plan");
  const plan = { ...lynx.plan, heaters: ["ducted-fuel-12000"] };
  const { windows, refused } = windowsOf(
    { ...state, aircraft: new Map([["lynx", { ...lynx, plan }]]) },
    OPENED,
  );
  expect(windows).toEqual([]);
  expect(said(refused)[0].reason).toMatch(/not to run unattended/);
});

test("a switch that stands and would be refused today is not switched, and says why; the others are", () => {
  const setUp: BaseSetUp = {
    ...opening.setUp,
    aircraft: opening.setUp.aircraft.map((one) =>
      one.id === "lynx" ? { ...one, switches: one.switches.map(endless) } : one,
    ),
  };
  const { windows, refused } = windowsOf(planned({ lynx: [10, 12], heron: [11, 14] }, setUp), OPENED + HOUR);
  expect(windows.map(({ aircraft }) => aircraft)).toEqual(["heron"]);
  expect(said(refused)).toEqual([
    {
      aircraft: "lynx",
      switch: "lead",
      reason: expect.stringMatching(/^its set-up is not safe \(on_time_s: expected the time after which/),
    },
  ]);
});

/** Told over HTTP, and never off by itself. */
function endless({ on_time_s: _, ...rest }: HeaterSwitch): HeaterSwitch {
  const to = (what: string) => ({ method: "POST", url: `http://lead.lan/${what}` }) as const;
  const hear = { request: { method: "GET", url: "http://lead.lan/" } as const, on: "1", off: "0" };
  return { ...rest, via: { kind: "http", say: { on: to("on"), off: to("off") }, hear } };
}

function said(refused: Windows["refused"]) {
  return refused.map((one) => ({ ...one, reason: english(one.reason) }));
}
