import { beforeEach, describe, expect, test } from "vitest";
import { event, openBase, post, SET_UP, START, setUpOwner, signedInAs, type TestBase } from "./base.js";

let base: TestBase;
let owner: string;
let pilot: string;

beforeEach(async () => {
  base = await openBase();
  owner = await setUpOwner(base);
  pilot = await signedInAs(base, owner, "pilot", "Bjarne");
});

interface Refusal {
  readonly issues: readonly { readonly path: string }[];
}

const pluggedIn = () => event({ kind: "plugged-in", aircraft: "lynx", heaters: ["sump-pad-220"] });

describe("posting events", () => {
  test("answers each by itself: kept, known, conflicting, refused", async () => {
    const [first, second] = [pluggedIn(), event({ kind: "note", note: "Snow on the ramp." })];
    expect((await post(base, [first], pilot)).body).toEqual({
      kept: [{ id: first.id, sequence: 1 }],
      known: [],
      conflicting: [],
      refused: [],
      cautions: [],
    });
    const bad = { ...pluggedIn(), aircraft: "LYNX", heaters: [] };
    const answer = await post(base, [first, { ...first, heaters: ["other"] }, second, bad, "text"], pilot);
    expect(answer.status).toBe(200);
    expect(answer.body).toEqual({
      kept: [{ id: second.id, sequence: 2 }],
      known: [first.id],
      conflicting: [],
      refused: [
        { index: 1, id: first.id, issues: [expect.objectContaining({ path: "id" })] },
        {
          index: 3,
          id: bad.id,
          issues: [
            expect.objectContaining({ path: "aircraft", received: '"LYNX"' }),
            { path: "heaters", expected: "at least 1 entries", received: "[]" },
          ],
        },
        { index: 4, id: null, issues: [{ path: "document", expected: "an event", received: '"text"' }] },
      ],
      cautions: [],
    });
    const other = await post(base, [{ ...first, heaters: ["other"] }], pilot);
    expect(other.body.conflicting).toEqual([first.id]);
    expect((await base.store.event(first.id))?.event).toMatchObject({ heaters: ["sump-pad-220"] });
  });

  test("writes who did it, whatever the client says", async () => {
    const said = { ...pluggedIn(), by: "Astrid" };
    const correction = event({
      kind: "correction",
      of: said.id,
      instead: { ...pluggedIn(), by: "Somebody else" },
      by: "Astrid",
    });
    await post(base, [said, correction], pilot);
    const { events } = (await base.ask({ url: "/api/v1/events?after=0", cookie: pilot })).body;
    expect(events.map((stored: { event: { by: string } }) => stored.event.by)).toEqual(["Bjarne", "Bjarne"]);
    expect(events[1].event.instead.by).toBe("Bjarne");
  });

  test("sent again by another account on the same phone is known, and stays in the first name", async () => {
    const written = pluggedIn();
    await post(base, [written], pilot);
    const again = await post(base, [written], owner);
    expect(again.body.known).toEqual([written.id]);
    expect((await base.store.event(written.id))?.event.by).toBe("Bjarne");
  });

  test("is of this computer while there is no owner", async () => {
    const open = await openBase();
    const written = pluggedIn();
    await post(open, [written]);
    expect((await open.store.event(written.id))?.event.by).toBe("local");
  });

  test("by a viewer is refused, and nothing is kept", async () => {
    const viewer = await signedInAs(base, owner, "viewer", "Vilde");
    const answer = await post(base, [pluggedIn()], viewer);
    expect([answer.status, answer.body.error.code]).toEqual([403, "not-allowed"]);
    expect(await base.store.eventsAfter(0, 10)).toEqual([]);
  });

  test("of kinds that the keeper writes is refused, also as a correction or of one", async () => {
    const fault = event({
      kind: "fault",
      fault: "over-temperature",
      text: "Oil at 90 °C.",
      aircraft: "lynx",
    });
    await base.live.record([fault] as never);
    const forged = [
      event({ kind: "fault-cleared", of: fault.id }),
      event({ kind: "switch-confirmed", aircraft: "lynx", switch: "pad-switch", is: "off" }),
      event({ kind: "switch-commanded", aircraft: "lynx", switch: "pad-switch", to: "on", reason: "x" }),
      event({ kind: "plan-withdrawn", aircraft: "lynx", of: fault.id, reason: "x" }),
      event({ kind: "correction", of: fault.id, instead: null }),
      event({ kind: "correction", of: fault.id, instead: event({ kind: "note" }) }),
      event({
        kind: "correction",
        of: crypto.randomUUID(),
        instead: event({ kind: "fault-cleared", of: fault.id }),
      }),
    ];
    const answer = await post(base, forged, owner);
    expect(answer.body.refused.map(({ index }: { index: number }) => index)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(base.live.state()).toBeUndefined();
    expect((await base.store.eventsAfter(0, 10)).length).toBe(1);
  });

  test("of a set-up is the owner's alone, by whatever way", async () => {
    const setUp = event({ kind: "set-up", base: SET_UP });
    expect((await post(base, [setUp], pilot)).body.refused.length).toBe(1);
    expect((await post(base, [setUp], owner)).body.kept.length).toBe(1);
    const renamed = event({ kind: "set-up", base: { ...SET_UP, name: "Elsewhere" } });
    const byOwner = event({ kind: "correction", of: setUp.id, instead: renamed });
    expect((await post(base, [byOwner], owner)).body.kept.length).toBe(1);
    const byPilot = [
      event({ kind: "correction", of: setUp.id, instead: null }),
      event({ kind: "correction", of: byOwner.id, instead: null }),
      event({ kind: "correction", of: renamed.id, instead: null }),
      event({ kind: "correction", of: crypto.randomUUID(), instead: null }),
      event({ kind: "correction", of: crypto.randomUUID(), instead: renamed }),
    ];
    expect((await post(base, byPilot, pilot)).body.refused.length).toBe(byPilot.length);
    expect(base.live.state()?.setUp.name).toBe("Elsewhere");
  });

  test("of a correction does not bring back by a pilot what the owner took back", async () => {
    const setUps = [event({ kind: "set-up", base: SET_UP }), event({ kind: "set-up", base: SET_UP })];
    const note = event({ kind: "note", note: "Entered by mistake." });
    const taken = event({ kind: "correction", of: setUps[0]!.id, instead: null });
    const replaced = event({ kind: "correction", of: setUps[1]!.id, instead: note });
    expect((await post(base, [...setUps, taken, replaced], owner)).body.kept.length).toBe(4);
    const byPilot = [taken, replaced, note].map(({ id }) =>
      event({ kind: "correction", of: id, instead: null }),
    );
    expect((await post(base, byPilot, pilot)).body.refused.length).toBe(3);
    expect(base.live.state()).toBeUndefined();
  });

  test("of a set-up that does not hold together is refused with its places", async () => {
    const broken = { ...SET_UP, aircraft: [{ ...SET_UP.aircraft[0]!, circuit: "nowhere" }] };
    const answer = await post(base, [event({ kind: "set-up", base: broken as never })], owner);
    expect(answer.body.refused[0].issues[0].path).toBe("base.aircraft[0].circuit");
  });

  test("of a set-up with a switch that never goes off by itself is refused, or taken with a caution", async () => {
    const [lynx] = SET_UP.aircraft;
    const to = (what: string) => ({ method: "POST", url: `http://pad.lan/${what}` }) as const;
    const hear = { request: { method: "GET", url: "http://pad.lan/" }, on: "1", off: "0" } as const;
    const via = { kind: "http", say: { on: to("on"), off: to("off") }, hear } as const;
    const overHttp = { ...SET_UP, aircraft: [{ ...lynx, switches: [{ ...lynx.switches[0], via }] }] };
    const correction = { kind: "correction", of: crypto.randomUUID() } as const;
    const refused = await post(
      base,
      [
        event({ kind: "set-up", base: overHttp }),
        event({ ...correction, instead: event({ kind: "set-up", base: overHttp }) }),
      ],
      owner,
    );
    const place = "base.aircraft[0].switches[0].on_time_s";
    expect(refused.body.refused.map((one: Refusal) => one.issues.map(({ path }) => path))).toEqual([
      [place],
      [`instead.${place}`],
    ]);
    expect(base.live.state()).toBeUndefined();
    const setUp = event({ kind: "set-up", base: SET_UP });
    expect((await post(base, [setUp], owner)).body).toMatchObject({
      kept: [{ id: setUp.id }],
      cautions: [
        {
          id: setUp.id,
          path: "base.aircraft[0].switches[0]",
          caution: { code: "switch-no-on-time", values: {} },
        },
      ],
    });
  });

  test("of a set-up of version 1 keeps it in the words of today", async () => {
    const old = {
      ...SET_UP,
      soakline_base: 1,
      aircraft: [
        {
          ...SET_UP.aircraft[0],
          switches: [
            {
              ...SET_UP.aircraft[0].switches[0],
              via: {
                ...{ kind: "mqtt", command_topic: "lynx/pad/set", on: "ON", off: "OFF" },
                ...{ state_topic: "lynx/pad/state", state_on: "ON", state_off: "OFF" },
              },
            },
          ],
        },
      ],
    };
    const answer = await post(base, [event({ kind: "set-up", base: old as never })], owner);
    expect(answer.body).toMatchObject({ kept: [{ sequence: 1 }], refused: [] });
    expect(base.live.state()?.setUp).toEqual(SET_UP);
  });

  test("of a correction takes what a pilot wrote back, in the same batch and later, also twice", async () => {
    const [written, instead] = [pluggedIn(), event({ kind: "note", note: "It was the Heron." })];
    const first = event({ kind: "correction", of: written.id, instead });
    expect((await post(base, [written, first], pilot)).body.kept.length).toBe(2);
    const second = event({ kind: "correction", of: instead.id, instead: null });
    expect((await post(base, [second], pilot)).body.kept.length).toBe(1);
  });

  test("with hostile text keeps the text and does nothing else", async () => {
    const note = "'); DROP TABLE events; --\r\nSet-Cookie: x=1 <script>alert(1)</script> {{7*7}} \u0000";
    const answer = await post(base, [event({ kind: "note", note })], pilot);
    expect(answer.body.kept.length).toBe(1);
    const listed = await base.ask({ url: "/api/v1/events", cookie: pilot });
    expect(listed.body.events[0].event.note).toBe(note);
    expect(listed.headers["content-type"]).toBe("application/json; charset=utf-8");
    expect(listed.headers["x-content-type-options"]).toBe("nosniff");
  });

  test("with keys that reach into objects is refused", async () => {
    for (const text of [
      '{"events":[],"__proto__":{"a":1}}',
      '{"events":[{"constructor":{"prototype":{}}}]}',
    ]) {
      const answer = await base.ask({
        method: "POST",
        url: "/api/v1/events",
        cookie: pilot,
        body: text,
        headers: { "content-type": "application/json" },
      });
      expect(answer.status).toBe(400);
    }
  });
});

describe("reading events", () => {
  beforeEach(async () => {
    for (let i = 0; i < 5; i += 1)
      await post(base, [event({ kind: "note", note: `${i}` }, START + i)], pilot);
    await post(base, [pluggedIn()], pilot);
  });

  const notes = (answer: { body: { events: { sequence: number }[] } }) =>
    answer.body.events.map(({ sequence }) => sequence);

  test("goes on from a sequence, oldest first, until there are no more", async () => {
    const read = (after: number) => base.ask({ url: `/api/v1/events?after=${after}&limit=4`, cookie: pilot });
    const first = await read(0);
    expect([notes(first), first.body.more]).toEqual([[1, 2, 3, 4], true]);
    const second = await read(4);
    expect([notes(second), second.body.more]).toEqual([[5, 6], false]);
    expect((await read(6)).body).toEqual({ events: [], more: false });
  });

  test("goes back in pages, newest first, of an aircraft or of kinds", async () => {
    const read = (query: string) => base.ask({ url: `/api/v1/events?${query}`, cookie: pilot });
    const first = await read("limit=4");
    expect([notes(first), first.body.more]).toEqual([[6, 5, 4, 3], true]);
    expect(notes(await read("limit=4&before=3"))).toEqual([2, 1]);
    expect(notes(await read("aircraft=lynx"))).toEqual([6]);
    expect(notes(await read("kinds=plugged-in,unplugged"))).toEqual([6]);
  });

  test.each([
    ["after=x", "after"],
    ["after=-1", "after"],
    ["after=1.5", "after"],
    ["limit=0", "limit"],
    ["limit=1001", "limit"],
    ["after=0&before=3", "after"],
    ["after=0&after=1", "after"],
    ["befor=3", "befor"],
    ["aircraft=%00", "aircraft"],
    ["aircraft='%20OR%201=1%20--", "aircraft"],
    ["kinds=note,notes", "kinds[1]"],
  ])("with ?%s is refused with its place", async (query, path) => {
    const answer = await base.ask({ url: `/api/v1/events?${query}`, cookie: pilot });
    expect([answer.status, answer.body.error.code]).toEqual([400, "invalid"]);
    expect(answer.body.error.issues[0].path).toBe(path);
  });
});
