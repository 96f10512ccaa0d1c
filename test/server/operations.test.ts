import type { AddressInfo } from "node:net";
import { expect, test, vi } from "vitest";
import { newTokenOf, openBase, PASSWORD, setUpOwner } from "./base.js";

test("/healthz answers as long as the process does", async () => {
  const base = await openBase();
  vi.spyOn(base.store, "check").mockRejectedValue(new Error("disk full"));
  const answer = await base.ask({ url: "/healthz", from: "10.0.0.1" });
  expect([answer.status, answer.body]).toEqual([200, { status: "up" }]);
});

test("/readyz says whether the store can be written and the keeper runs, and no more", async () => {
  const base = await openBase();
  const ask = () => base.ask({ url: "/readyz", from: "10.0.0.1" });
  expect((await ask()).body).toEqual({ ready: true, store: true, keeper: true });
  base.now += 2000;
  const check = vi.spyOn(base.store, "check").mockRejectedValue(new Error("disk full"));
  const broken = await ask();
  expect([broken.status, broken.body]).toEqual([503, { ready: false, store: false, keeper: true }]);
  expect(broken.text).not.toContain("disk full");
  expect(base.logged.join("")).toContain("disk full");
  base.now += 2000;
  check.mockRestore();
  base.live.ready = false;
  expect((await ask()).body).toEqual({ ready: false, store: true, keeper: false });
});

test("/readyz does not wear the disk, however often it is asked", async () => {
  const base = await openBase();
  const check = vi.spyOn(base.store, "check");
  for (let i = 0; i < 10; i += 1) await base.ask({ url: "/readyz" });
  expect(check).toHaveBeenCalledTimes(1);
  base.now += 1000;
  await base.ask({ url: "/readyz" });
  expect(check).toHaveBeenCalledTimes(2);
});

test("/metrics counts requests by route, not by address, and outcomes", async () => {
  const base = await openBase();
  await base.ask({ url: "/api/v1/events?limit=1" });
  await base.ask({ url: "/api/v1/nothing/1" });
  await base.ask({ url: "/api/v1/nothing/2" });
  await base.ask({ method: "POST", url: "/api/v1/events", body: { events: [{}] } });
  await setUpOwner(base);
  const body = { name: "Astrid", password: "not the password" };
  await base.ask({ method: "POST", url: "/api/v1/access/session", body });
  const { text, headers } = await base.ask({ url: "/metrics" });
  expect(headers["content-type"]).toMatch(/^text\/plain; version=0\.0\.4/);
  const value = (line: string) => Number(new RegExp(`^${line} (\\d+)$`, "m").exec(text)?.[1]);
  const count = (method: string, route: string, status: number) =>
    value(`soakline_http_request_seconds_count\\{method="${method}",route="${route}",status="${status}"\\}`);
  expect(count("GET", "/api/v1/events", 200)).toBe(1);
  expect(count("GET", "none", 404)).toBe(2);
  expect(value('soakline_posted_events_total\\{outcome="refused"\\}')).toBe(1);
  expect(value('soakline_sign_ins_total\\{outcome="failed"\\}')).toBe(1);
});

test("the log has a JSON line for each refusal and change, and no secret in any", async () => {
  const base = await openBase({});
  const owner = await setUpOwner(base);
  const { token } = await newTokenOf(base, "device", owner);
  await base.ask({ url: "/api/v1/users", token });
  await base.ask({ url: `/api/v1/base?password=${encodeURIComponent(PASSWORD)}` });
  const lines = base.logged.map((text) => JSON.parse(text));
  expect(lines).toContainEqual(
    expect.objectContaining({ method: "GET", path: "/api/v1/users", status: 403, caller: "token a device" }),
  );
  expect(lines).toContainEqual(
    expect.objectContaining({
      method: "POST",
      path: "/api/v1/tokens",
      status: 201,
      caller: "session Astrid",
    }),
  );
  expect(lines).toContainEqual(expect.objectContaining({ msg: "token made", by: "Astrid", kind: "device" }));
  const all = base.logged.join("");
  for (const secret of [token, owner.split("=")[1]!, PASSWORD, encodeURIComponent(PASSWORD)]) {
    expect(all).not.toContain(secret);
  }
});

test("a secret that is handed to the log by mistake is hidden", async () => {
  const base = await openBase();
  base.app.log.warn(
    { password: "p1", body: { token: "t1", current: "c1" }, headers: { cookie: "k1" } },
    "mistake",
  );
  const line = JSON.parse(base.logged.at(-1)!);
  expect(line).toMatchObject({
    password: "[hidden]",
    body: { token: "[hidden]", current: "[hidden]" },
    headers: { cookie: "[hidden]" },
  });
});

test("what a name holds cannot begin a line of its own in the log", async () => {
  const base = await openBase();
  await setUpOwner(base);
  const body = { name: 'x\n{"level":30,"msg":"forged"}', password: "not the password" };
  await base.ask({ method: "POST", url: "/api/v1/access/session", body });
  for (const text of base.logged) expect(text.trimEnd()).not.toContain("\n");
  expect(base.logged.map((text) => JSON.parse(text).msg)).not.toContain("forged");
});

test("a request under way is answered when the base stops; new ones are not taken", async () => {
  const base = await openBase();
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  vi.spyOn(base.store, "latestReadings").mockImplementation(async () => {
    await held;
    return [];
  });
  await base.app.listen({ port: 0, host: "127.0.0.1" });
  const { port } = base.app.server.address() as AddressInfo;
  const underWay = fetch(`http://127.0.0.1:${port}/api/v1/base`);
  await vi.waitFor(() => expect(base.store.latestReadings).toHaveBeenCalled());
  const closing = base.app.close();
  await expect(fetch(`http://127.0.0.1:${port}/api/v1/access`)).rejects.toThrow();
  release();
  expect((await underWay).status).toBe(200);
  await closing;
});
