import { beforeEach, describe, expect, test } from "vitest";
import { type NowDocument, nowSchema, type PlanDocument, planSchema } from "../../src/documents/index.js";
import { finding } from "../../src/findings/index.js";
import { baseSchema } from "../../src/server/base-document.js";
import { event, openBase, post, SET_UP, START, setUpOwner, signedInAs, type TestBase } from "./base.js";
import { nowAnswer, planAnswer } from "./documents.js";

let base: TestBase;

beforeEach(async () => {
  base = await openBase();
  await post(base, [event({ kind: "set-up", base: SET_UP })]);
});

describe("the base as it stands", () => {
  test("follows from the logbook, with units in its keys", async () => {
    const wanted = event({
      kind: "departure-wanted",
      aircraft: "lynx",
      departure: "2026-01-15T10:00:00+01:00",
      chance: 0.95,
    });
    await post(base, [
      event({ kind: "cover-on", aircraft: "lynx", covers: ["insulated-cover"] }, START + 1000),
      event({ kind: "plugged-in", aircraft: "lynx", heaters: ["sump-pad-220"] }, START + 2000),
      event({ kind: "reading", aircraft: "lynx", part: "oil", temp_c: -19.5 }, START + 3000),
      wanted,
    ]);
    const fault = event({
      kind: "fault",
      aircraft: "lynx",
      fault: "probe-lost",
      probe: "oil-1",
      text: "Silent.",
    });
    const command = event({
      kind: "switch-commanded",
      aircraft: "lynx",
      switch: "pad-switch",
      to: "on",
      reason: "planned",
    });
    await base.live.record([fault, command] as never);
    base.live.ready = false;
    const { body } = await base.ask({ url: "/api/v1/base" });
    expect(baseSchema.parse(body)).toEqual(body);
    expect(body).toMatchObject({
      kind: "base",
      time: "2026-01-14T18:00:00.000Z",
      set_up: SET_UP,
      keeper: { ready: false, reasons: [finding("broker-unreachable", {})] },
      faults: [],
      aircraft: [
        {
          id: "lynx",
          place: "ramp",
          running: false,
          covers_on: ["insulated-cover"],
          heaters_on: ["sump-pad-220"],
          departures: [
            { id: wanted.id, departure: "2026-01-15T09:00:00.000Z", chance: 0.95, pulled_out: false },
          ],
          plan: null,
          last_start: null,
          readings_by_hand: [{ at: "2026-01-14T18:00:03.000Z", part: "oil", temp_c: -19.5 }],
          switches: [
            {
              ...{
                id: "pad-switch",
                commanded: { to: "on", at: "2026-01-14T18:00:00.000Z" },
                confirmed: null,
              },
              ...{ refused: null, cautions: [finding("switch-no-on-time", {})] },
            },
          ],
          faults: [{ id: fault.id, fault: "probe-lost" }],
        },
      ],
    });
  });

  test("a switch of an older logbook that would be refused today is there, with the reason", async () => {
    const old = await openBase();
    const [lynx] = SET_UP.aircraft;
    const to = (what: string) => ({ method: "POST", url: `http://pad.lan/${what}` }) as const;
    const hear = { request: { method: "GET", url: "http://pad.lan/" }, on: "1", off: "0" } as const;
    const via = { kind: "http", say: { on: to("on"), off: to("off") }, hear } as const;
    const set = { ...SET_UP, aircraft: [{ ...lynx, switches: [{ ...lynx.switches[0], via }] }] };
    await old.store.append([event({ kind: "set-up", base: set })]);
    await old.live.reload();
    const { body } = await old.ask({ url: "/api/v1/base" });
    expect(body.aircraft[0].switches).toMatchObject([
      {
        id: "pad-switch",
        refused: {
          code: "switch-unsafe",
          values: { issues: [expect.objectContaining({ place: "on_time_s" })] },
        },
        cautions: [],
      },
    ]);
    await old.app.close();
  });

  test("says so before anything was entered", async () => {
    const empty = await openBase();
    const { status, body } = await empty.ask({ url: "/api/v1/base" });
    expect([status, body.set_up, body.aircraft]).toEqual([200, null, []]);
  });
});

describe("plans and estimates", () => {
  test("are the keeper's documents, whole", async () => {
    const plan: PlanDocument = planAnswer();
    const now: NowDocument = nowAnswer();
    expect([planSchema.parse(plan), nowSchema.parse(now)]).toEqual([plan, now]);
    base.live.planMap.set("lynx", { departure: "a-departure", document: plan });
    base.live.nowMap.set("lynx", now);
    expect((await base.ask({ url: "/api/v1/plans" })).body).toEqual({
      plans: [{ aircraft: "lynx", departure: "a-departure", plan }],
    });
    expect((await base.ask({ url: "/api/v1/now" })).body).toEqual({ estimates: [{ aircraft: "lynx", now }] });
  });

  test("are empty lists while there are none", async () => {
    expect((await base.ask({ url: "/api/v1/plans" })).body).toEqual({ plans: [] });
    expect((await base.ask({ url: "/api/v1/now" })).body).toEqual({ estimates: [] });
  });

  test("that are not as documented are an internal failure, not a silent lie", async () => {
    base.live.nowMap.set("lynx", { ...nowAnswer(), chance: 7 });
    expect((await base.ask({ url: "/api/v1/now" })).status).toBe(500);
  });
});

describe("switching by hand", () => {
  const order = (body: object, url = "/api/v1/switches/lynx/pad-switch") =>
    base.ask({ method: "POST", url, body });

  test("hands the order to the keeper in the name of whoever asked", async () => {
    const owner = await setUpOwner(base);
    const pilot = await signedInAs(base, owner, "pilot", "Bjarne");
    const body = { to: "on", minutes: 30 };
    const answer = await base.ask({
      method: "POST",
      url: "/api/v1/switches/lynx/pad-switch",
      cookie: pilot,
      body,
    });
    expect([answer.status, answer.body]).toEqual([202, { status: "commanded" }]);
    expect(base.live.switched).toEqual([
      { aircraft: "lynx", switch: "pad-switch", to: "on", minutes: 30, by: "Bjarne" },
    ]);
    expect(base.logged.join("")).toContain("switched by hand");
  });

  test("off needs no time", async () => {
    expect((await order({ to: "off" })).status).toBe(202);
    expect(base.live.switched).toEqual([{ aircraft: "lynx", switch: "pad-switch", to: "off", by: "local" }]);
  });

  test.each([
    [{ to: "on" }, "minutes"],
    [{ to: "on", minutes: 0 }, "minutes"],
    [{ to: "on", minutes: 1441 }, "minutes"],
    [{ to: "on", minutes: 1e999 }, "minutes"],
    [{ to: "off", minutes: 5 }, "minutes"],
    [{ to: "toggle" }, "to"],
    [{}, "to"],
    [{ to: "on", minutes: 5, by: "Astrid" }, "by"],
  ])("with %j is refused and switches nothing", async (body, path) => {
    const answer = await order(body);
    expect([answer.status, answer.body.error.issues[0].path]).toEqual([400, path]);
    expect(base.live.switched).toEqual([]);
  });

  test("says why the keeper refuses, and what is not there", async () => {
    const refused = await order({ to: "on", minutes: 999 });
    expect([refused.status, refused.body.error]).toEqual([
      409,
      { code: "conflict", message: "Its longest on-time of 60 min is used up: it rests first." },
    ]);
    expect((await order({ to: "off" }, "/api/v1/switches/lynx/other")).status).toBe(404);
    expect((await order({ to: "off" }, "/api/v1/switches/lynx/..%2f..%2fusers")).status).toBe(400);
  });
});

describe("acknowledging a fault", () => {
  const acknowledge = (id: string, cookie?: string) =>
    base.ask({
      method: "POST",
      url: `/api/v1/faults/${id}/acknowledge`,
      ...(cookie === undefined ? {} : { cookie }),
    });

  test("clears it in the name of whoever saw it, once", async () => {
    const fault = event({ kind: "fault", fault: "clock-jump", text: "The clock went back 40 min." });
    await base.live.record([fault] as never);
    const owner = await setUpOwner(base);
    expect((await base.ask({ url: "/api/v1/base", cookie: owner })).body.faults.length).toBe(1);
    const answer = await acknowledge(fault.id, owner);
    expect([answer.status, answer.body]).toEqual([200, { status: "cleared" }]);
    expect((await base.store.eventsAfter(2, 10)).map(({ event: e }) => [e.kind, e.by])).toEqual([
      ["fault-cleared", "Astrid"],
    ]);
    expect((await acknowledge(fault.id, owner)).status).toBe(404);
  });

  test("with an id that is none is refused", async () => {
    const answer = await acknowledge("'%20OR%201=1");
    expect([answer.status, answer.body.error.issues[0].path]).toEqual([400, "id"]);
  });
});
