import { expect, test, vi } from "vitest";
import { openBase, setUpOwner } from "./base.js";

test.each([
  ["GET", "/api/v1/nothing", 404, "unknown"],
  ["GET", "/nothing", 404, "unknown"],
  ["DELETE", "/api/v1/base", 405, "wrong-method"],
  ["PUT", "/api/v1/users/some-id", 405, "wrong-method"],
  ["GET", "/api/v1/base/", 404, "unknown"],
  ["GET", "/api/v1/%E0%A4%A", 400, "bad-request"],
  ["GET", "/api/v1/events?limit=none", 400, "invalid"],
  ["POST", `/api/v1/switches/${"x".repeat(300)}/y`, 400, "bad-request"],
] as const)("%s %s is answered with %i %s", async (method, url, status, code) => {
  const base = await openBase();
  const answer = await base.ask({ method, url });
  expect([answer.status, answer.body.error.code]).toEqual([status, code]);
  expect(answer.body.error.message).toMatch(/\.$/);
  expect(Object.keys(answer.body)).toEqual(["error"]);
});

test("a wrong method is told the right ones", async () => {
  const base = await openBase();
  const answer = await base.ask({ method: "DELETE", url: "/api/v1/events" });
  expect(answer.headers.allow).toBe("GET, POST");
});

test.each([
  ["{", 400, "bad-json"],
  ["", 400, "bad-json"],
  ["[]", 400, "invalid"],
  ["null", 400, "invalid"],
  ['"text"', 400, "invalid"],
  ["NaN", 400, "bad-json"],
] as const)("the body %j is answered with %i %s", async (body, status, code) => {
  const base = await openBase();
  const answer = await base.ask({
    method: "POST",
    url: "/api/v1/tokens",
    body,
    headers: { "content-type": "application/json" },
  });
  expect([answer.status, answer.body.error.code]).toEqual([status, code]);
});

test("what is wrong with a body is told place by place", async () => {
  const base = await openBase();
  const answer = await base.ask({ method: "POST", url: "/api/v1/tokens", body: { kind: "key", nmae: "x" } });
  expect(answer.body.error).toEqual({
    code: "invalid",
    message: "The body is not as expected.",
    issues: [
      { path: "name", expected: "a string", received: "nothing" },
      { path: "kind", expected: 'one of "device", "calendar"', received: '"key"' },
      { path: "nmae", expected: "no such key (known: name, kind)", received: '"x"' },
    ],
  });
});

test("a failure inside says so without telling how it looks there, and goes into the log", async () => {
  const base = await openBase();
  vi.spyOn(base.store, "latestReadings").mockRejectedValue(new Error("SQLITE_FULL at /var/lib/soakline.db"));
  const answer = await base.ask({ url: "/api/v1/base" });
  expect(answer.status).toBe(500);
  expect(answer.body.error.code).toBe("internal");
  expect(answer.text).not.toMatch(/SQLITE|soakline\.db|at .*\.ts|stack/);
  const line = base.logged.map((text) => JSON.parse(text)).find(({ msg }) => msg === "request failed");
  expect(line.err.message).toContain("SQLITE_FULL");
  expect(answer.body.error.message).toContain(line.reqId);
});

test("a store that cannot be asked lets nobody in", async () => {
  const base = await openBase();
  const cookie = await setUpOwner(base);
  vi.spyOn(base.store, "users").mockRejectedValue(new Error("gone"));
  expect((await base.ask({ url: "/api/v1/base", cookie })).status).toBe(500);
  expect((await base.ask({ url: "/api/v1/base" })).status).toBe(500);
});

test("answers of the API are not kept by caches, and no pages", async () => {
  const base = await openBase();
  for (const url of ["/api/v1/base", "/api/v1/access", "/api/v1/nothing", "/api/v1/export.json"]) {
    const { headers } = await base.ask({ url });
    expect(headers["cache-control"], url).toBe("no-store");
    expect(headers["content-type"], url).toBe("application/json; charset=utf-8");
    expect(headers["content-disposition"], url).toMatch(/^attachment; filename="[\w.-]+"$/);
  }
});
