import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { newTokenOf, openBase, PASSWORD, setUpOwner, type TestBase } from "./base.js";

// The limits count by the clock of the process, which is turned here by hand.
beforeEach(() => vi.useFakeTimers({ toFake: ["Date"] }));
afterEach(() => vi.useRealTimers());

function guess(base: TestBase, name: string, from: string, password = "not the password") {
  return base.ask({ method: "POST", url: "/api/v1/access/session", from, body: { name, password } });
}

describe("guessing passwords", () => {
  test("on one account ends after ten tries in a quarter of an hour, from however many addresses", async () => {
    const base = await openBase();
    await setUpOwner(base);
    const statuses: number[] = [];
    for (let i = 0; i < 12; i += 1) statuses.push((await guess(base, "Astrid", `10.0.0.${i}`)).status);
    expect(statuses).toEqual([...Array(10).fill(401), 429, 429]);
    const right = await guess(base, "ASTRID", "10.0.0.99", PASSWORD);
    expect(right.status, "the right one does not get through either").toBe(429);
    expect(right.body.error.message).toMatch(/15 min/);
    vi.setSystemTime(Date.now() + 15 * 60e3 + 1);
    expect((await guess(base, "Astrid", "10.0.0.99", PASSWORD)).status).toBe(200);
  });

  test("slowly, all the time, stays under a hundred tries an hour", async () => {
    const base = await openBase();
    await setUpOwner(base);
    let judged = 0;
    for (let i = 0; i < 60; i += 1) {
      vi.setSystemTime(Date.now() + 60e3);
      for (const from of ["10.0.0.1", "10.0.0.2"]) {
        if ((await guess(base, "Astrid", from)).status === 401) judged += 1;
      }
    }
    expect(judged).toBeGreaterThan(30);
    expect(judged).toBeLessThanOrEqual(50);
  });

  test("from one address ends after thirty tries, on however many accounts", async () => {
    const base = await openBase();
    await setUpOwner(base);
    const statuses: number[] = [];
    for (let i = 0; i < 32; i += 1) statuses.push((await guess(base, `name ${i}`, "10.0.0.1")).status);
    expect(statuses).toEqual([...Array(30).fill(401), 429, 429]);
    expect((await guess(base, "Astrid", "10.0.0.2", PASSWORD)).status).toBe(200);
  });

  test("all at once counts as well", async () => {
    const base = await openBase();
    await setUpOwner(base);
    const answers = await Promise.all(Array.from({ length: 15 }, () => guess(base, "Astrid", "10.0.0.1")));
    expect(answers.filter(({ status }) => status === 401).length).toBe(10);
  });

  test("is written into the log with name and address, without the password", async () => {
    const base = await openBase();
    await setUpOwner(base);
    await guess(base, "Astrid", "10.0.0.7", "a wrong secret 123");
    const line = base.logged.map((text) => JSON.parse(text)).find(({ msg }) => msg === "sign-in failed");
    expect(line).toMatchObject({ account: "Astrid", address: "10.0.0.7" });
    expect(base.logged.join("")).not.toContain("a wrong secret");
  });

  test("is counted for changing the password too", async () => {
    const base = await openBase();
    const cookie = await setUpOwner(base);
    const statuses: number[] = [];
    for (let i = 0; i < 11; i += 1) {
      const body = { current: `wrong ${i}`, next: "five grey geese over the lake" };
      statuses.push((await base.ask({ method: "PUT", url: "/api/v1/access/password", cookie, body })).status);
    }
    expect(statuses).toEqual([...Array(10).fill(401), 429]);
  });
});

describe("requests", () => {
  test("of one address are limited in number, and told when to come again", async () => {
    const base = await openBase({ limits: { requestsPerMinute: 5 } });
    const statuses: number[] = [];
    for (let i = 0; i < 7; i += 1) statuses.push((await base.ask({ url: "/api/v1/base" })).status);
    expect(statuses).toEqual([200, 200, 200, 200, 200, 429, 429]);
    const answer = await base.ask({ url: "/api/v1/base" });
    expect(answer.body.error.code).toBe("rate-limited");
    expect(Number(answer.headers["retry-after"])).toBeGreaterThan(0);
    expect((await base.ask({ url: "/api/v1/base", from: "127.0.0.5" })).status).toBe(200);
    vi.setSystemTime(Date.now() + 60_001);
    expect((await base.ask({ url: "/api/v1/base" })).status).toBe(200);
  });

  test("behind a proxy are counted by the address it tells; from anybody else that header means nothing", async () => {
    const base = await openBase({
      limits: { requestsPerMinute: 2 },
      access: { trustedProxies: ["10.0.0.1"] },
    });
    const ask = (from: string, client: string) =>
      base.ask({ url: "/healthz", from, headers: { "x-forwarded-for": client } });
    const throughProxy = [await ask("10.0.0.1", "7.7.7.7"), await ask("10.0.0.1", "7.7.7.7")];
    expect([...throughProxy, await ask("10.0.0.1", "7.7.7.7")].map(({ status }) => status)).toEqual([
      200, 200, 429,
    ]);
    expect((await ask("10.0.0.1", "8.8.8.8")).status).toBe(200);
    const pretending = [await ask("10.0.0.2", "1.1.1.1"), await ask("10.0.0.2", "2.2.2.2")];
    expect([...pretending, await ask("10.0.0.2", "3.3.3.3")].map(({ status }) => status)).toEqual([
      200, 200, 429,
    ]);
  });

  test("to addresses where nothing is are limited too", async () => {
    const base = await openBase({ limits: { requestsPerMinute: 3 } });
    const statuses: number[] = [];
    for (let i = 0; i < 5; i += 1) statuses.push((await base.ask({ url: `/nothing/${i}` })).status);
    expect(statuses).toEqual([404, 404, 404, 429, 429]);
  });

  test("of devices are counted by token, not by address", async () => {
    const base = await openBase({ limits: { deviceRequestsPerMinute: 3 } });
    const tokens = [await newTokenOf(base, "device"), await newTokenOf(base, "device")];
    const bring = (token: string) =>
      base.ask({
        method: "POST",
        url: "/api/v1/readings",
        token,
        body: { readings: [{ aircraft: "lynx", probe: "oil-1", at: "2026-01-14T18:00:00Z", temp_c: -20 }] },
      });
    const statuses: number[] = [];
    for (let i = 0; i < 4; i += 1) statuses.push((await bring(tokens[0]!.token)).status);
    expect(statuses).toEqual([200, 200, 200, 429]);
    expect((await bring(tokens[1]!.token)).status).toBe(200);
  });

  test("with an oversized body are refused before it is read", async () => {
    const base = await openBase({ limits: { bodyBytes: 1000, batchBytes: 4000 } });
    const big = { name: "x".repeat(2000), kind: "device" };
    const answer = await base.ask({ method: "POST", url: "/api/v1/tokens", body: big });
    expect([answer.status, answer.body.error.code]).toEqual([413, "too-large"]);
    const batch = { events: [{ note: "x".repeat(5000) }] };
    expect((await base.ask({ method: "POST", url: "/api/v1/events", body: batch })).status).toBe(413);
    const fits = { events: [{ note: "x".repeat(2000) }] };
    expect((await base.ask({ method: "POST", url: "/api/v1/events", body: fits })).status).toBe(200);
  });

  test("with an oversized body by somebody who may not send any are refused for that", async () => {
    const base = await openBase({ limits: { bodyBytes: 1000 } });
    await setUpOwner(base);
    const body = { name: "x".repeat(2000), kind: "device" };
    expect((await base.ask({ method: "POST", url: "/api/v1/tokens", body })).status).toBe(401);
  });

  test("with too many events or readings in a batch are refused whole", async () => {
    const base = await openBase({ limits: { eventsPerBatch: 2, readingsPerBatch: 2 } });
    const events = await base.ask({ method: "POST", url: "/api/v1/events", body: { events: [{}, {}, {}] } });
    expect([events.status, events.body.error.issues]).toEqual([
      400,
      [{ path: "events", expected: "at most 2 entries", received: "[{},{},{}]" }],
    ]);
    const reading = { aircraft: "lynx", probe: "oil-1", at: "2026-01-14T18:00:00Z", temp_c: -20 };
    const body = { readings: [reading, reading, reading] };
    expect((await base.ask({ method: "POST", url: "/api/v1/readings", body })).status).toBe(400);
  });
});
