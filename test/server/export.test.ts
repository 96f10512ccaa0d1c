import { beforeEach, describe, expect, test } from "vitest";
import { eventsToJson, readEvents, readEventsCsv } from "../../src/logbook/index.js";
import { event, openBase, post, SET_UP, START, type TestBase } from "./base.js";

const SET = event({ kind: "set-up", base: SET_UP });
let base: TestBase;

beforeEach(async () => {
  base = await openBase();
});

async function stored() {
  return (await base.store.eventsAfter(0, 10_000)).map((each) => each.event);
}

describe("the export", () => {
  test("as JSON is read back event by event, over many pages", async () => {
    const notes = Array.from({ length: 1203 }, (_, i) =>
      event({ kind: "note", note: `note ${i}` }, START + i),
    );
    await base.live.record([SET, ...notes] as never);
    const { status, text, headers } = await base.ask({ url: "/api/v1/export.json" });
    expect(status).toBe(200);
    expect(headers["content-disposition"]).toBe('attachment; filename="logbook-2026-01-14.json"');
    expect(text).toBe(eventsToJson(await stored()));
    expect(readEvents(text)).toEqual({ events: await stored(), issues: [] });
  });

  test("as CSV is read back event by event, over many pages", async () => {
    const notes = Array.from({ length: 603 }, (_, i) =>
      event({ kind: "note", note: `a, "b"\r\n${i}` }, START + i),
    );
    await base.live.record([SET, ...notes] as never);
    const { text, headers } = await base.ask({ url: "/api/v1/export.csv" });
    expect(headers["content-type"]).toBe("text/csv; charset=utf-8; header=present");
    expect(readEventsCsv(text)).toEqual({ events: await stored(), issues: [] });
  });

  test("of an empty logbook is still a whole document", async () => {
    expect(readEvents((await base.ask({ url: "/api/v1/export.json" })).text)).toEqual({
      events: [],
      issues: [],
    });
    expect(readEventsCsv((await base.ask({ url: "/api/v1/export.csv" })).text)).toEqual({
      events: [],
      issues: [],
    });
  });

  test("as CSV holds nothing that a spreadsheet would run (formula injection)", async () => {
    const evil = ['=HYPERLINK("http://evil.example")', "+1+1", "-2+3", "@SUM(A1)", "\t=1", "\r=1"];
    await post(
      base,
      evil.map((note) => event({ kind: "note", note })),
    );
    const { text } = await base.ask({ url: "/api/v1/export.csv" });
    for (const cell of text.split(/,|\r\n/)) expect(cell.replace(/^"/, "")).not.toMatch(/^[=+@\t\r]|^-\d\+/);
    expect(readEventsCsv(text).events).toEqual(await stored());
  });
});
