import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { finding } from "../../src/findings/index.js";
import { openBook } from "../../src/keeper/book.js";
import { createPlanScheduler } from "../../src/keeper/plan-scheduler.js";
import type { BaseSetUp, LogbookEvent } from "../../src/logbook/index.js";
import { openStore, type Store } from "../../src/store/index.js";
import { english } from "../../src/words/index.js";
import { at, HOUR, OPENED, opening } from "../base/example-base.js";
import { inlinePlanner } from "./inline-planner.js";

const MINUTE = 60_000;
/** The demo with one aircraft only. */
const lynxOnly: BaseSetUp = {
  ...opening.setUp,
  aircraft: opening.setUp.aircraft.filter(({ id }) => id === "lynx"),
};
const setUp: LogbookEvent = { ...at(0), kind: "set-up", base: lynxOnly };
const forecast = opening.events.find(({ kind }) => kind === "forecast") as LogbookEvent;
const wanted = opening.events.find(
  (e) => e.kind === "departure-wanted" && e.aircraft === "lynx",
) as LogbookEvent;

async function started(events: readonly LogbookEvent[], store?: Store, from = OPENED + MINUTE) {
  const kept = store ?? (await openStore(":memory:"));
  await kept.append(events);
  const book = await openBook(kept);
  const planner = inlinePlanner();
  const clock = { now: from };
  const scheduler = createPlanScheduler({
    ...{ store: kept, book, planner, clock: () => clock.now },
    onChange: () => undefined,
    log: (level, text, more) => expect(level, `${text} ${JSON.stringify(more)}`).not.toBe("error"),
  });
  book.onKept((events) => scheduler.heard(events));
  const settled = async () => {
    scheduler.tick();
    for (let before = -1; before !== planner.jobs.length; ) {
      before = planner.jobs.length;
      await new Promise((resolve) => setTimeout(resolve, 60));
    }
  };
  const kinds = async (kind: LogbookEvent["kind"]) =>
    (await kept.eventsAfter(0, 1000)).filter(({ event }) => event.kind === kind).map(({ event }) => event);
  return { store: kept, book, planner, scheduler, clock, settled, kinds };
}

test("a departure wanted is planned, once, and planned anew only when something changed", async () => {
  const { book, scheduler, clock, settled, kinds, planner } = await started([setUp, forecast]);
  await settled();
  expect(await kinds("plan-issued")).toEqual([]);
  expect([...scheduler.now.keys()]).toEqual(["lynx"]);
  await book.record([wanted]);
  await settled();
  const [plan, ...more] = await kinds("plan-issued");
  expect(more).toEqual([]);
  expect(plan).toMatchObject({ aircraft: "lynx", of: wanted.id, status: "ready" });
  expect(scheduler.plans.get("lynx")?.departure).toBe(wanted.id);
  clock.now += 11 * MINUTE;
  const jobs = planner.jobs.length;
  await settled();
  expect(planner.jobs.length).toBe(jobs + 1);
  expect(planner.jobs.at(-1)?.resumed).toBe(true);
  expect((await kinds("plan-issued")).length).toBe(1);
  await book.record([{ ...at(0.3), kind: "cover-off", aircraft: "lynx", covers: ["insulated-cover"] }]);
  await settled();
  expect((await kinds("plan-issued")).length).toBe(2);
  await book.record([{ ...at(0.31), kind: "departure-dropped", aircraft: "lynx", of: wanted.id }]);
  await settled();
  const second = (await kinds("plan-issued"))[1];
  expect(await kinds("plan-withdrawn")).toMatchObject([
    { of: second.id, reason: finding("departure-no-longer-wanted", {}) },
  ]);
  expect(scheduler.plans.size).toBe(0);
});

test("what cannot be planned is a fault once, and cleared when it can", async () => {
  const { book, scheduler, clock, settled, kinds } = await started([setUp, wanted]);
  await settled();
  clock.now += 11 * MINUTE;
  await settled();
  const [fault, ...others] = await kinds("fault");
  if (fault?.kind !== "fault") throw new Error("no fault");
  expect([fault.fault, others]).toEqual(["plan-failed", []]);
  expect(english(fault.text)).toMatch(/no forecast/);
  expect(scheduler.troubles().map(english).join()).toMatch(/no forecast/);
  await book.record([forecast]);
  await settled();
  expect((await kinds("fault-cleared")).length).toBe(1);
  expect((await kinds("plan-issued")).length).toBe(1);
  expect(scheduler.troubles()).toEqual([]);
});

test("estimates go on after a restart from what was kept, through readings that came meanwhile", async () => {
  const first = await started([setUp, forecast]);
  const reading = (time: number) =>
    lynxOnly.aircraft[0].probes.map(({ id }) => ({
      aircraft: "lynx",
      probe: id,
      time,
      tempC: -18 + (time % 7) / 10,
    }));
  const readings = (from: number, to: number) =>
    Array.from({ length: Math.ceil((to - from) / 20_000) }, (_, k) => reading(from + k * 20_000)).flat();
  await first.store.appendReadings(readings(OPENED, OPENED + HOUR));
  first.clock.now = OPENED + HOUR;
  await first.settled();
  await first.scheduler.close();
  await first.store.appendReadings(readings(OPENED + HOUR, OPENED + 2 * HOUR));
  const second = await started([], first.store, OPENED + 2 * HOUR);
  await second.settled();
  expect(second.planner.jobs).toEqual([{ aircraft: "lynx", resumed: true }]);
  // Every minute with a reading counts once, those before the restart and those after it.
  const used = second.scheduler.now.get("lynx")?.probes.map(({ readings: count }) => count);
  expect(used).toEqual([120, 120, 120]);
});

test("a heater that does not heat, as the estimate sees it, is a fault once", async () => {
  const plugIn: LogbookEvent = {
    id: randomUUID(),
    at: new Date(OPENED + 5 * MINUTE).toISOString(),
    kind: "plugged-in",
    aircraft: "lynx",
    heaters: ["whole-engine-4"],
  };
  const { store, clock, settled, kinds, scheduler } = await started([setUp, forecast, plugIn]);
  const rows = Array.from({ length: 150 }, (_, minute) =>
    lynxOnly.aircraft[0].probes.map(({ id }) => ({
      ...{ aircraft: "lynx", probe: id, time: OPENED + minute * MINUTE },
      tempC: -18 - minute / 100 + 0.1 * Math.sin(minute),
    })),
  ).flat();
  await store.appendReadings(rows);
  for (const hours of [1, 1.5, 2, 2.4]) {
    clock.now = OPENED + hours * HOUR;
    scheduler.read("lynx");
    await settled();
  }
  expect(await kinds("fault")).toMatchObject([{ fault: "heater-not-heating", aircraft: "lynx" }]);
});

type Probe = BaseSetUp["aircraft"][number]["probes"][number];

/** A night through which the plan is followed and the probes say what `said` makes of what was foreseen; to be looked at. */
async function followedNight(
  said: (foreseen: number, probe: Probe, about: { readonly time: number; readonly unplug: number }) => number,
) {
  const keeper = await started([setUp, forecast, wanted]);
  await keeper.settled();
  const [plan] = await keeper.kinds("plan-issued");
  if (plan?.kind !== "plan-issued" || plan.bands === undefined || plan.plug_in === null)
    throw new Error("no plan");
  const { bands } = plan;
  const [unplug, departure] = [Date.parse(plan.unplug), Date.parse(plan.departure)];
  const times = bands.at.map((at) => Date.parse(at));
  const foreseen = (part: string, time: number) => {
    const values = bands.parts[part].p50_c;
    const next = Math.max(
      1,
      times.findIndex((at) => at >= time),
    );
    const share = (time - times[next - 1]) / (times[next] - times[next - 1]);
    return values[next - 1] + share * (values[next] - values[next - 1]);
  };
  const probes = lynxOnly.aircraft[0].probes.filter(({ at }) => bands.parts[at] !== undefined);
  const minutes = Math.floor((departure - times[0]) / MINUTE);
  const rows = Array.from({ length: minutes + 1 }, (_, k) => times[0] + k * MINUTE).flatMap((time) =>
    probes.map((probe) => ({
      ...{ aircraft: "lynx", probe: probe.id, time },
      tempC: said(foreseen(probe.at, time), probe, { time, unplug }),
    })),
  );
  await keeper.store.appendReadings(rows);
  const on = { id: randomUUID(), at: plan.plug_in, aircraft: "lynx", heaters: plan.heaters };
  await keeper.book.record([{ ...on, kind: "plugged-in" }]);
  const look = async ({ clock, scheduler, settled }: typeof keeper, now: number) => {
    clock.now = now;
    scheduler.read("lynx");
    await settled();
  };
  await look(keeper, unplug - 5 * MINUTE);
  expect(await keeper.kinds("probes-read")).toEqual([]);
  // Planned anew, it may be unplugged a little later.
  const through = Date.parse(keeper.book.state()?.aircraft.get("lynx")?.plan?.unplug ?? "");
  await look(keeper, through + MINUTE);
  return { keeper, foreseen, probes, through, departure, look };
}

test("when a followed plan is through its probes' last word is written down once, without a probe that is doubted", async () => {
  const fallen = lynxOnly.aircraft[0].probes[0];
  const night = await followedNight((temp, probe, { time, unplug }) =>
    probe === fallen && time > unplug - 10 * MINUTE ? 95 : temp,
  );
  const { keeper, foreseen, probes, through, departure, look } = night;
  const seated = probes.filter((probe) => probe !== fallen).map(({ at }) => at);
  expect(probes.length - seated.length).toBe(1);
  const [event, ...more] = await keeper.kinds("probes-read");
  if (event?.kind !== "probes-read") throw new Error("not written");
  expect(more).toEqual([]);
  expect(event).toMatchObject({ aircraft: "lynx", of: wanted.id, by: "keeper" });
  expect(event.readings.map(({ part }) => part).sort()).toEqual(seated.sort());
  for (const { part, temp_c } of event.readings)
    expect(temp_c).toBeCloseTo(foreseen(part, Date.parse(event.at)), 0);
  expect(Date.parse(event.at)).toBeLessThan(departure);
  expect(keeper.book.state()?.record.readings).toMatchObject({ count: seated.length, within: seated.length });
  await look(keeper, through + 3 * MINUTE);
  await keeper.scheduler.close();
  const second = await started([], keeper.store, through + 4 * MINUTE);
  await look(second, through + 4 * MINUTE);
  expect((await second.kinds("probes-read")).length).toBe(1);
});

test("a night on which the heater seems not to heat checks no plan", async () => {
  const { keeper } = await followedNight((_, __, { time }) => -18 - (time - OPENED) / HOUR / 10);
  expect(await keeper.kinds("fault")).toMatchObject([{ fault: "heater-not-heating" }]);
  expect(await keeper.kinds("probes-read")).toEqual([]);
});
