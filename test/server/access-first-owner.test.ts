import { describe, expect, test } from "vitest";
import { checkBinding, newSetUpCode } from "../../src/server/index.js";
import { openBase, PASSWORD, setUpOwner } from "./base.js";

const OWNER = {
  method: "POST",
  url: "/api/v1/access/owner",
  body: { name: "Astrid", password: PASSWORD },
} as const;

describe("while there is no owner", () => {
  test("whoever sits at the computer is let in without signing in", async () => {
    const base = await openBase();
    for (const [from, host] of [
      ["127.0.0.1", "localhost:8140"],
      ["127.0.0.1", "127.0.0.1:8140"],
      ["::1", "[::1]:8140"],
      ["::ffff:127.0.0.1", "localhost"],
    ] as const) {
      expect((await base.ask({ url: "/api/v1/base", from, host })).status, `${from} ${host}`).toBe(200);
    }
  });

  test("nobody else is let in, by whatever way they come", async () => {
    const base = await openBase();
    const asks = [
      { from: "192.168.1.20" },
      { from: "::ffff:192.168.1.20" },
      { from: "127.0.0.1", host: "base.lan" },
      { from: "127.0.0.1", host: "192.168.1.2:8140" },
      { from: "127.0.0.1", headers: { "x-forwarded-for": "127.0.0.1" } },
      { from: "127.0.0.1", headers: { forwarded: "for=127.0.0.1" } },
      { from: "127.0.0.1", headers: { via: "1.1 proxy" } },
    ];
    for (const ask of asks) {
      const answer = await base.ask({ url: "/api/v1/base", ...ask });
      expect(answer.status, JSON.stringify(ask)).toBe(401);
      expect(answer.body.error.code).toBe("not-signed-in");
    }
  });

  test("a page whose own name was made to point here (DNS rebinding) gets no answer", async () => {
    const base = await openBase();
    for (const host of [
      "evil.example",
      "evil.example:8140",
      "localhost.evil.example",
      "127.0.0.1.evil.example",
    ]) {
      const answer = await base.ask({ url: "/api/v1/base", host });
      expect(answer.status, host).toBe(421);
      expect(answer.body.error.code).toBe("wrong-host");
    }
  });

  test("a Host header that is no host is refused", async () => {
    const base = await openBase();
    for (const host of ["user@localhost", "localhost/", "2130706433", "[::1", "localhost:99999999"]) {
      expect((await base.ask({ url: "/api/v1/base", host })).status, host).toBe(421);
    }
  });

  test("the base may listen only on this computer until an owner is set up", async () => {
    const base = await openBase();
    for (const host of ["127.0.0.1", "::1", "localhost", "127.0.0.2"]) {
      expect(await checkBinding(base.store, host), host).toEqual({ allowed: true });
    }
    for (const host of ["0.0.0.0", "::", "192.168.1.2", "base.lan", ""]) {
      const weakest = await checkBinding(base.store, host);
      expect(weakest.allowed, host).toBe(false);
    }
    await setUpOwner(base);
    expect(await checkBinding(base.store, "0.0.0.0")).toEqual({ allowed: true });
  });
});

describe("setting up the first owner", () => {
  test("signs the owner in and shuts the open door", async () => {
    const base = await openBase();
    const cookie = await setUpOwner(base);
    expect((await base.ask({ url: "/api/v1/base" })).status).toBe(401);
    expect((await base.ask({ url: "/api/v1/base", cookie })).status).toBe(200);
    const { body } = await base.ask({ url: "/api/v1/access", cookie });
    expect(body).toEqual({
      owner: true,
      you: { name: "Astrid", role: "owner" },
      signed_in: true,
      set_up: "done",
    });
  });

  test("works once, even when asked twice at the same time", async () => {
    const base = await openBase();
    const answers = await Promise.all([
      base.ask(OWNER),
      base.ask({ ...OWNER, body: { ...OWNER.body, name: "Mallory" } }),
    ]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
    expect((await base.store.users()).length).toBe(1);
    expect((await base.ask(OWNER)).status).toBe(409);
  });

  test("from elsewhere needs the code printed at the start", async () => {
    const setUpCode = newSetUpCode();
    const base = await openBase({ access: { setUpCode } });
    const elsewhere = { ...OWNER, from: "192.168.1.20", host: "base.lan" };
    expect((await base.ask({ url: "/api/v1/access", from: "192.168.1.20" })).body.set_up).toBe("with-code");
    expect((await base.ask(elsewhere)).status).toBe(403);
    expect((await base.ask({ ...elsewhere, body: { ...OWNER.body, code: "AAAA-AAAA-AAAA" } })).status).toBe(
      403,
    );
    expect((await base.ask({ ...elsewhere, body: { ...OWNER.body, code: setUpCode } })).status).toBe(201);
  });

  test("from elsewhere is refused where no code was made, and guessing the code is limited", async () => {
    const without = await openBase();
    const elsewhere = { ...OWNER, from: "192.168.1.20", host: "base.lan" };
    expect((await without.ask({ ...elsewhere, body: { ...OWNER.body, code: "" } })).status).toBe(403);

    const base = await openBase({ access: { setUpCode: newSetUpCode() } });
    const statuses: number[] = [];
    for (let i = 0; i < 12; i += 1) {
      statuses.push((await base.ask({ ...elsewhere, body: { ...OWNER.body, code: `guess-${i}` } })).status);
    }
    expect(statuses.slice(0, 10)).toEqual(Array(10).fill(403));
    expect(statuses.slice(10)).toEqual([429, 429]);
  });

  test("other accounts wait until there is an owner", async () => {
    const base = await openBase();
    const body = { name: "Mallory", password: PASSWORD, role: "owner" };
    expect((await base.ask({ method: "POST", url: "/api/v1/users", body })).status).toBe(409);
    expect(await base.store.users()).toEqual([]);
  });

  test("set-up codes have no look-alikes and differ", () => {
    const codes = Array.from({ length: 50 }, newSetUpCode);
    for (const code of codes) expect(code).toMatch(/^([A-HJKMNP-TV-Z2-9]{4}-){2}[A-HJKMNP-TV-Z2-9]{4}$/);
    expect(new Set(codes).size).toBe(50);
  });
});

describe("requests made by another page", () => {
  const body = { name: "pad", kind: "device" };
  const ask = { method: "POST", url: "/api/v1/tokens", body } as const;

  test("are refused by their origin", async () => {
    const base = await openBase();
    const cookie = await setUpOwner(base);
    for (const origin of [
      "https://evil.example",
      "http://evil.example",
      "null",
      "http://127.0.0.1:9999",
      "https://127.0.0.1:8140",
      "http://127.0.0.1:8140.evil.example",
    ]) {
      const answer = await base.ask({ ...ask, cookie, headers: { origin } });
      expect(answer.status, origin).toBe(403);
      expect(answer.body.error.code).toBe("foreign-origin");
    }
    expect((await base.ask({ ...ask, cookie })).status).toBe(201);
  });

  test("are refused by what the browser says of their site, and without the header of the web app", async () => {
    const base = await openBase();
    const cookie = await setUpOwner(base);
    for (const headers of [
      { "sec-fetch-site": "cross-site" },
      { "sec-fetch-site": "same-site" },
      { "soakline-request": undefined },
      { "soakline-request": undefined, origin: undefined },
    ]) {
      expect((await base.ask({ ...ask, cookie, headers })).status, JSON.stringify(headers)).toBe(403);
    }
    expect(await base.store.deviceTokens()).toEqual([]);
    expect((await base.ask({ ...ask, cookie, headers: { "sec-fetch-site": "same-origin" } })).status).toBe(
      201,
    );
  });

  test("are refused also where nobody is signed in: the open door and the sign-in", async () => {
    const base = await openBase();
    const headers = { origin: "https://evil.example" };
    expect((await base.ask({ ...ask, headers })).status).toBe(403);
    const owner = await base.ask({ method: "POST", url: OWNER.url, body: OWNER.body, headers });
    expect(owner.status).toBe(403);
    await setUpOwner(base);
    const signIn = { method: "POST", url: "/api/v1/access/session", body: OWNER.body, headers } as const;
    expect((await base.ask(signIn)).status).toBe(403);
  });

  test("cannot be forms: only JSON is taken", async () => {
    const base = await openBase();
    for (const type of [
      "text/plain",
      "application/x-www-form-urlencoded",
      "multipart/form-data; boundary=x",
    ]) {
      const answer = await base.ask({
        ...ask,
        body: JSON.stringify(body),
        headers: { "content-type": type },
      });
      expect(answer.status, type).toBe(415);
    }
  });

  test("are answered without leave to read the answer (no CORS)", async () => {
    const base = await openBase();
    const answer = await base.ask({ url: "/api/v1/base", headers: { origin: "https://evil.example" } });
    expect(Object.keys(answer.headers).filter((name) => name.startsWith("access-control"))).toEqual([]);
    expect(answer.headers["cross-origin-resource-policy"]).toBe("same-origin");
    const preflight = await base.ask({
      method: "OPTIONS",
      url: "/api/v1/tokens",
      headers: { origin: "https://evil.example", "access-control-request-method": "POST" },
    });
    expect(preflight.status).toBe(405);
  });
});
