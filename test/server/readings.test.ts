import { beforeEach, describe, expect, test } from "vitest";
import { event, newTokenOf, openBase, post, SET_UP, START, type TestBase } from "./base.js";

let base: TestBase;

beforeEach(async () => {
  base = await openBase();
  await post(base, [event({ kind: "set-up", base: SET_UP })]);
});

const reading = (seconds: number, temp_c: number, more: object = {}) => ({
  aircraft: "lynx",
  probe: "oil-1",
  at: new Date(START + seconds * 1000).toISOString(),
  temp_c,
  ...more,
});

function bring(readings: readonly object[], token?: string) {
  return base.ask({
    method: "POST",
    url: "/api/v1/readings",
    body: { readings },
    ...(token === undefined ? {} : { token }),
  });
}

describe("bringing readings", () => {
  test("by a device keeps them once", async () => {
    const { token } = await newTokenOf(base, "device");
    const batch = [
      reading(0, -20.25),
      reading(10, -20),
      reading(0, -14, { aircraft: "base", probe: "air-1" }),
    ];
    expect((await bring(batch, token)).body).toEqual({ kept: 3, known: 0, too_old: 0, refused: [] });
    expect((await bring(batch, token)).body).toEqual({ kept: 0, known: 3, too_old: 0, refused: [] });
    const { body } = await base.ask({ url: "/api/v1/base" });
    expect(body.aircraft[0].readings).toEqual([
      { probe: "oil-1", at: "2026-01-14T18:00:10.000Z", temp_c: -20 },
    ]);
    expect(body.readings).toEqual([{ probe: "air-1", at: "2026-01-14T18:00:00.000Z", temp_c: -14 }]);
  });

  test("takes only probes of the base, and says which there are", async () => {
    const batch = [
      reading(0, -20, { aircraft: "heron" }),
      reading(0, -20, { probe: "oil-2" }),
      reading(0, -20, { aircraft: "base", probe: "oil-1" }),
      reading(0, -20),
    ];
    const { body } = await bring(batch);
    expect(body.kept).toBe(1);
    expect(
      body.refused.map(({ index, issues }: { index: number; issues: object[] }) => [index, issues[0]]),
    ).toEqual([
      [0, { path: "aircraft", expected: "an aircraft of the base, or base", received: '"heron"' }],
      [1, { path: "probe", expected: "one of oil-1", received: '"oil-2"' }],
      [2, { path: "probe", expected: "one of air-1", received: '"oil-1"' }],
    ]);
  });

  test("refuses a time ahead, which would hide that the probe has gone silent", async () => {
    const { body } = await bring([reading(301, -20), reading(300, -20)]);
    expect([body.kept, body.refused[0].index, body.refused[0].issues[0].path]).toEqual([1, 0, "at"]);
  });

  test.each([
    ["temp_c", { temp_c: 401 }],
    ["aircraft", { aircraft: "__proto__" }],
    ["probe", { probe: "a\u0000b" }],
    ["temp_c", { temp_c: "-20" }],
    ["temp_c", { temp_c: null }],
    ["at", { at: "2026-01-14T18:00" }],
    ["at", { at: 1768413600 }],
    ["extra", { extra: 1 }],
  ])("refuses a wrong %s: %j", async (path, more) => {
    const answer = await bring([reading(0, -20, more)]);
    expect([answer.status, answer.body.error.issues[0].path]).toEqual([400, `readings[0].${path}`]);
  });

  test("before there is a base is refused for each", async () => {
    const empty = await openBase();
    const body = { readings: [reading(0, -20)] };
    const answer = await empty.ask({ method: "POST", url: "/api/v1/readings", body });
    expect([answer.body.kept, answer.body.refused.length]).toEqual([0, 1]);
  });
});

describe("reading them", () => {
  beforeEach(async () => {
    await bring([reading(0, -20), reading(10, -19.5), reading(20, -19)]);
  });
  const span = "aircraft=lynx&from=2026-01-14T18:00:00Z&to=2026-01-14T18:00:20Z&resolution=raw";

  test("gives rows with units, from (inclusive) to (exclusive)", async () => {
    const { body } = await base.ask({ url: `/api/v1/readings?${span}` });
    expect(body).toEqual({
      rows: [
        { probe: "oil-1", at: "2026-01-14T18:00:00.000Z", low_c: -20, mean_c: -20, high_c: -20, count: 1 },
        {
          probe: "oil-1",
          at: "2026-01-14T18:00:10.000Z",
          low_c: -19.5,
          mean_c: -19.5,
          high_c: -19.5,
          count: 1,
        },
      ],
      more: false,
    });
    const cut = await base.ask({ url: `/api/v1/readings?${span}&limit=1` });
    expect([cut.body.rows.length, cut.body.more]).toEqual([1, true]);
    expect((await base.ask({ url: `/api/v1/readings?${span}&probes=other` })).body.rows).toEqual([]);
  });

  test("as CSV gives the same, or nothing when it would be cut short", async () => {
    const whole = await base.ask({ url: `/api/v1/readings.csv?${span}` });
    expect(whole.headers["content-type"]).toBe("text/csv; charset=utf-8; header=present");
    expect(whole.text).toBe(
      "probe,at,low_c,mean_c,high_c,count\r\n" +
        "oil-1,2026-01-14T18:00:00.000Z,-20,-20,-20,1\r\n" +
        "oil-1,2026-01-14T18:00:10.000Z,-19.5,-19.5,-19.5,1\r\n",
    );
    const cut = await base.ask({ url: `/api/v1/readings.csv?${span}&limit=1` });
    expect([cut.status, cut.body.error.code]).toEqual([413, "too-large"]);
  });

  test.each([
    ["from", "aircraft=lynx&from=yesterday&to=2026-01-14T18:00:00Z"],
    ["to", "aircraft=lynx&from=2026-01-14T18:00:00Z&to=2026-01-14T18:00:00Z"],
    ["aircraft", span.replace("lynx", "%00")],
    ["probes[1]", `${span}&probes=oil-1,%00`],
    ["aircraft", "from=2026-01-14T18:00:00Z&to=2026-01-14T19:00:00Z"],
    ["resolution", `${span.replace("raw", "second")}`],
    ["limit", `${span}&limit=20001`],
  ])("with a wrong %s is refused with its place", async (path, query) => {
    const answer = await base.ask({ url: `/api/v1/readings?${query}` });
    expect([answer.status, answer.body.error.issues[0].path]).toEqual([400, path]);
  });
});
