import ICAL from "ical.js";
import { beforeEach, describe, expect, test } from "vitest";
import { event, newTokenOf, openBase, post, SET_UP, START, setUpOwner, type TestBase } from "./base.js";

let base: TestBase;
let owner: string;
let url: string;

async function open(setUp: typeof SET_UP = SET_UP): Promise<void> {
  base = await openBase();
  owner = await setUpOwner(base);
  await post(base, [event({ kind: "set-up", base: setUp })], owner);
  const { token } = await newTokenOf(base, "calendar", owner);
  url = `/api/v1/calendar.ics?token=${token}`;
}

beforeEach(() => open());

const DEPARTURE = "2026-01-15T09:00:00Z";

async function want(): Promise<string> {
  const wanted = event({ kind: "departure-wanted", aircraft: "lynx", departure: DEPARTURE });
  await post(base, [wanted], owner);
  return wanted.id;
}

async function plan(of: string, plug_in: string | null, more: object = {}, at = START): Promise<void> {
  const issued = event(
    {
      kind: "plan-issued",
      aircraft: "lynx",
      of,
      status: plug_in === null ? "not-reachable" : "ready",
      plug_in,
      unplug: "2026-01-15T08:45:00Z",
      departure: DEPARTURE,
      heaters: ["sump-pad-220"],
      chance: 0.9,
      weakest: "bearing-clearance",
      message: "Plug in by 05:00.",
      energy_kwh: 0.8,
      ...more,
    },
    at,
  );
  await base.live.record([issued] as never);
}

async function calendar() {
  const answer = await base.ask({ url, from: "10.0.0.9", host: "base.lan" });
  expect(answer.status).toBe(200);
  expect(answer.headers["content-type"]).toBe("text/calendar; charset=utf-8");
  const component = new ICAL.Component(ICAL.parse(answer.text));
  const events = component.getAllSubcomponents("vevent").map((each) => new ICAL.Event(each));
  const of = (what: string) => events.find(({ uid }) => uid.startsWith(`${what}.`))!;
  return { text: answer.text, component, events, of };
}

describe("the calendar", () => {
  test("is empty, and still a calendar, while nothing is wanted", async () => {
    const { component, events } = await calendar();
    expect(component.getFirstPropertyValue("version")).toBe("2.0");
    expect(events).toEqual([]);
  });

  test("says when to plug in, to unplug and when it leaves, in UTC alone", async () => {
    const id = await want();
    await plan(id, "2026-01-15T05:00:00Z");
    const { text, events, of } = await calendar();
    expect(events.map(({ uid }) => uid).sort()).toEqual(
      ["departure", "plug-in", "unplug"].map((what) => `${what}.${id}@soakline`),
    );
    expect(of("plug-in").startDate.toString()).toBe("2026-01-15T05:00:00Z");
    expect(of("unplug").startDate.toString()).toBe("2026-01-15T08:45:00Z");
    expect(of("departure").startDate.toString()).toBe(DEPARTURE);
    expect(of("plug-in").summary).toBe("Lynx: plug in sump-pad-220");
    expect(text).not.toMatch(/TZID|VTIMEZONE/);
    for (const line of text.match(/^DT(START|END|STAMP).*$/gm)!) expect(line.trim()).toMatch(/Z$/);
  });

  test("says the cautions beside plugging in, and the chance beside the departure", async () => {
    await plan(await want(), "2026-01-15T05:00:00Z");
    const { of } = await calendar();
    expect(of("plug-in").description).toMatch(/do not leave a heater alone/);
    expect(of("plug-in").description).toMatch(/handbook/);
    expect(of("departure").description).toMatch(/9 in 10; weakest point: bearing clearance/);
  });

  test("rings a quarter of an hour before plugging in, and only then", async () => {
    await plan(await want(), "2026-01-15T05:00:00Z");
    const { of } = await calendar();
    const alarms = of("plug-in").component.getAllSubcomponents("valarm");
    expect(alarms.length).toBe(1);
    expect(alarms[0]!.getFirstPropertyValue("action")).toBe("DISPLAY");
    expect(String(alarms[0]!.getFirstPropertyValue("trigger"))).toBe("-PT15M");
    expect(of("unplug").component.getAllSubcomponents("valarm")).toEqual([]);
  });

  test("moves its entries when the plan changes: same UID, higher SEQUENCE", async () => {
    const id = await want();
    await plan(id, "2026-01-15T05:00:00Z");
    const before = await calendar();
    await plan(id, "2026-01-15T04:00:00Z", {}, START + 60e3);
    const after = await calendar();
    expect(after.events.map(({ uid }) => uid)).toEqual(before.events.map(({ uid }) => uid));
    for (const what of ["plug-in", "unplug", "departure"]) {
      expect(after.of(what).sequence).toBeGreaterThan(before.of(what).sequence);
    }
    expect(after.of("plug-in").startDate.toString()).toBe("2026-01-15T04:00:00Z");
    expect((await calendar()).text, "the same again when nothing changed").toBe(after.text);
  });

  test("has no plug-in where no plan reaches it, and none once the departure is dropped", async () => {
    const id = await want();
    await plan(id, null, { message: "Too cold for this kit." });
    const { events } = await calendar();
    expect(events.map(({ uid }) => uid)).toEqual([`departure.${id}@soakline`]);
    expect(events[0]!.description).toMatch(/Too cold/);
    await post(base, [event({ kind: "departure-dropped", aircraft: "lynx", of: id })], owner);
    expect((await calendar()).events).toEqual([]);
  });

  test("cannot be given lines by a name or a message (CRLF injection)", async () => {
    const evil =
      "Lynx\r\nEND:VEVENT\r\nBEGIN:VEVENT\rUID:evil\nSUMMARY:evil;X=1,\\n\u2028ATTACH:http://evil.example";
    await open({ ...SET_UP, name: evil, aircraft: [{ ...SET_UP.aircraft[0]!, name: evil }] });
    await plan(await want(), "2026-01-15T05:00:00Z", { message: evil, weakest: evil, heaters: [evil] });
    const { text, component, events } = await calendar();
    expect(events.length).toBe(3);
    expect(text.match(/^BEGIN:VEVENT/gm)!.length).toBe(3);
    expect(text).not.toMatch(/^(ATTACH|UID:evil|SUMMARY:evil)/m);
    expect(component.getAllProperties().map(({ name }) => name)).toEqual(
      expect.arrayContaining(["version", "prodid", "name"]),
    );
    expect(events[0]!.summary).toContain("Lynx END:VEVENT BEGIN:VEVENT UID:evil SUMMARY:evil;X=1,\\n");
    for (const line of text.split("\r\n")) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  });
});

describe("the calendar's token", () => {
  test("is asked for, and a wrong one opens nothing, session or not", async () => {
    const plain = "/api/v1/calendar.ics";
    expect((await base.ask({ url: plain, cookie: owner })).status).toBe(400);
    expect((await base.ask({ url: `${plain}?token=${"A".repeat(43)}`, cookie: owner })).status).toBe(401);
  });

  test("can be taken back", async () => {
    const { tokens } = (await base.ask({ url: "/api/v1/tokens", cookie: owner })).body;
    expect((await base.ask({ url })).status).toBe(200);
    await base.ask({ method: "DELETE", url: `/api/v1/tokens/${tokens[0].id}`, cookie: owner });
    expect((await base.ask({ url })).status).toBe(401);
  });

  test("does not stand in the log", async () => {
    const token = url.split("=")[1]!;
    base.logged.length = 0;
    const chatty = await openBase({
      log: { level: "debug", stream: { write: (line) => void base.logged.push(line) } },
    });
    await chatty.ask({ url });
    await base.ask({ url });
    expect(base.logged.join("")).toContain("/api/v1/calendar.ics");
    expect(base.logged.join("")).not.toContain(token);
  });
});
