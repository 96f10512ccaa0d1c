import { beforeEach, describe, expect, test, vi } from "vitest";
import type { LogbookEvent } from "../../../src/logbook/index.js";
import { app } from "../../../src/web/data/app.svelte.js";
import { eventsOf, openBook, waitingOf } from "../../../src/web/data/db.js";
import { settings } from "../../../src/web/data/settings.svelte.js";
import { wholeBase } from "../../../src/web/data/whole-base.svelte.js";
import type { ReplanAsk, ReplanPart } from "../../../src/web/worker/protocol.js";
import { AIRCRAFT, aPlan, NOW, stamp } from "../plan-fixture.js";
import { worker } from "./device.js";

const HOUR = 3_600_000;
const SET_UP = { kind: "set-up", id: "s", at: new Date(NOW).toISOString(), base: {} } as LogbookEvent;
const plan = aPlan({});
const asked = () => worker.asked.filter(({ kind }) => kind === "replan").map(({ ask }) => ask as ReplanAsk);
const last = () => asked().at(-1)!;

beforeEach(async () => {
  worker.tasks = {
    demo: () => [SET_UP],
    open: () => ({ zone: "UTC", name: "Strip", aircraft: [AIRCRAFT], circuits: [], setUp: {} }),
    replan: ({ aircraft }: ReplanAsk, tell) => {
      for (const { id } of aircraft) tell({ aircraft: id, grade: "whole", plan } satisfies ReplanPart);
      return null;
    },
  };
  await app.openDemo();
  await vi.waitFor(() => expect(app.plans.wren?.isBusy).toBe(false));
});

describe("the app's state", () => {
  test("the demo is a book of its own, shown as the worker reads it", async () => {
    expect([app.view?.name, app.storage, settings.all.book]).toEqual(["Strip", "fine", "demo"]);
    expect(app.plans.wren.plan).toEqual(plan);
    const db = await openBook("demo", () => {});
    expect((await eventsOf(db)).map(({ id }) => id)).toEqual(["s"]);
    db.close();
  });

  test("what is written down is kept to be sent, and everything is planned anew", async () => {
    const before = asked().length;
    await app.record({ kind: "note", id: "n", at: new Date(NOW).toISOString(), note: "ice" });
    expect(app.events.map(({ id }) => id)).toEqual(["s", "n"]);
    const db = await openBook("demo", () => {});
    expect((await waitingOf(db)).map(({ event }) => event.id)).toContain("n");
    db.close();
    await vi.waitFor(() => expect(asked().length).toBe(before + 1));
  });

  test("a departure that is tried is asked first and keeps nothing; dropped, the wanted one is back", async () => {
    app.tryOut({ aircraft: "wren", departure: NOW + 10 * HOUR, chance: 0.8 });
    expect(last().aircraft[0]).toEqual({ id: "wren", departure: NOW + 10 * HOUR, chance: 0.8 });
    expect(app.events).toHaveLength(1);
    app.dropTrial();
    expect(app.trial).toBeUndefined();
    expect(last().aircraft).toEqual([{ id: "wren" }]);
  });

  test("a trial that is kept takes the wanted departure's place, with its heaters", async () => {
    app.tryOut({ aircraft: "wren", departure: NOW + 10 * HOUR });
    await app.keepTrial();
    const [dropped, wanted] = app.events.slice(-2);
    expect(dropped).toMatchObject({ kind: "departure-dropped", aircraft: "wren", of: "d" });
    expect(wanted).toMatchObject({
      kind: "departure-wanted",
      departure: new Date(NOW + 10 * HOUR).toISOString(),
      heaters: ["pad"],
      pulled_out: false,
    });
  });

  test("a first answer stands beside the whole plan before it until the next is whole", async () => {
    const later = stamp(NOW + 20 * HOUR);
    worker.tasks.replan = (_: ReplanAsk, tell) => {
      tell({ aircraft: "wren", grade: "first", plan: { ...aPlan({ departure: later }) } });
      return new Promise(() => {});
    };
    await app.refresh();
    await vi.waitFor(() => expect(app.plans.wren.first?.departure).toEqual(later));
    expect([app.plans.wren.plan, app.plans.wren.isBusy]).toEqual([plan, true]);
  });

  test("why there is no plan is said, whoever refuses", async () => {
    worker.tasks.replan = (_: ReplanAsk, tell) => {
      tell({ aircraft: "wren", grade: "refused", reasons: ["no weather"] });
      return null;
    };
    await app.refresh();
    await vi.waitFor(() => expect(app.plans.wren.reasons).toEqual(["no weather"]));
    worker.tasks.replan = () => {
      throw new Error("out of memory");
    };
    await app.refresh();
    await vi.waitFor(() => expect(app.plans.wren.reasons).toEqual(["out of memory"]));
    expect(app.plans.wren.isBusy).toBe(false);
  });

  test("leaving forgets the book and asks again which to open", async () => {
    await app.leave();
    expect([app.view, app.events.length, settings.all.book]).toEqual([undefined, 0, undefined]);
    const db = await openBook("demo", () => {});
    expect(await eventsOf(db)).toEqual([]);
    db.close();
  });
});

describe("all aircraft planned together", () => {
  test("the next plan is told the one before; a refusal says why and keeps it; another base forgets it", async () => {
    const told = { id: "wren", plug_in: null };
    worker.tasks.wholeBase = () => ({ document: {}, later: ["Heron"] });
    worker.tasks.basePlan = () => ({ aircraft: [{ told }] });
    expect(await wholeBase.ask()).toBe(true);
    expect(wholeBase.made?.later).toEqual(["Heron"]);
    worker.tasks.basePlan = () => {
      throw Object.assign(new Error(), { reasons: ["no forecast"] });
    };
    expect(await wholeBase.ask()).toBe(false);
    expect(worker.asked.findLast(({ kind }) => kind === "wholeBase")?.ask).toMatchObject({ told: [told] });
    expect([wholeBase.reasons, wholeBase.made === undefined]).toEqual([["no forecast"], false]);
    app.events = [{ ...SET_UP, id: "another" }];
    expect([wholeBase.made, wholeBase.reasons]).toEqual([undefined, []]);
  });
});

describe("settings", () => {
  test("last as long as the device keeps them, and units follow", () => {
    settings.change({ temp: "f", wind: "mps" });
    expect(settings.units).toMatchObject({ temp: "f", wind: "mps" });
    expect(JSON.parse(localStorage.getItem("soakline-settings") ?? "")).toMatchObject({ temp: "f" });
  });
});
