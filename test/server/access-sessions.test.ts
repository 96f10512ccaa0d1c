import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { openBase, PASSWORD, START, setUpOwner, signedInAs, type TestBase } from "./base.js";

const MINUTE = 60e3;

function signIn(base: TestBase, extra: { cookie?: string; password?: string; name?: string } = {}) {
  const { cookie, password = PASSWORD, name = "Astrid" } = extra;
  return base.ask({
    method: "POST",
    url: "/api/v1/access/session",
    body: { name, password },
    ...(cookie === undefined ? {} : { cookie }),
  });
}

async function getsIn(base: TestBase, cookie: string): Promise<boolean> {
  return (await base.ask({ url: "/api/v1/base", cookie })).status === 200;
}

describe("the session cookie", () => {
  test("cannot be read by scripts nor sent by other sites, and holds 256 random bits", async () => {
    const base = await openBase();
    await setUpOwner(base);
    const answer = await signIn(base);
    const header = String(answer.headers["set-cookie"]);
    expect(header).toMatch(/^soakline_session=[\w-]{43}; Max-Age=43200; Path=\/; HttpOnly; SameSite=Strict$/);
    const another = await signIn(base);
    expect(another.cookie).not.toBe(answer.cookie);
    expect(Buffer.from(answer.cookie!.split("=")[1]!, "base64url").length).toBe(32);
  });

  test("goes over TLS alone where the base is reached over TLS", async () => {
    const base = await openBase({ access: { https: true } });
    const headers = { origin: "https://127.0.0.1:8140" };
    const body = { name: "Astrid", password: PASSWORD };
    const answer = await base.ask({ method: "POST", url: "/api/v1/access/owner", body, headers });
    const header = String(answer.headers["set-cookie"]);
    expect(header).toMatch(/^__Host-soakline_session=/);
    expect(header).toMatch(/; Secure/);
    expect(answer.headers["strict-transport-security"]).toMatch(/^max-age=31536000/);
    expect(await getsIn(base, answer.cookie!)).toBe(true);
  });

  test("is kept only as SHA-256", async () => {
    const base = await openBase();
    const cookie = await setUpOwner(base);
    const token = cookie.split("=")[1]!;
    const hash = createHash("sha256").update(token).digest("hex");
    expect(await base.store.session(hash)).toMatchObject({ tokenHash: hash });
    expect(await base.store.session(token)).toBeUndefined();
  });
});

describe("a session", () => {
  test("that was planted before the sign-in is not the one signed in (session fixation)", async () => {
    const base = await openBase();
    await setUpOwner(base);
    const planted = `soakline_session=${"A".repeat(43)}`;
    const answer = await signIn(base, { cookie: planted });
    expect(answer.cookie).not.toBe(planted);
    expect(await getsIn(base, planted)).toBe(false);
    expect(await getsIn(base, answer.cookie!)).toBe(true);
  });

  test("of the attacker that was planted ends when the victim signs in", async () => {
    const base = await openBase();
    const owner = await setUpOwner(base);
    const attackers = await signedInAs(base, owner, "viewer", "Mallory");
    const victims = await signIn(base, { cookie: attackers });
    expect(await getsIn(base, attackers)).toBe(false);
    expect(await getsIn(base, victims.cookie!)).toBe(true);
  });

  test("ends when it lay idle for half an hour, but not while it is used", async () => {
    const base = await openBase();
    const cookie = await setUpOwner(base);
    for (let i = 0; i < 4; i += 1) {
      base.now += 29 * MINUTE;
      expect(await getsIn(base, cookie)).toBe(true);
    }
    base.now += 30 * MINUTE;
    expect(await getsIn(base, cookie)).toBe(false);
    base.now -= 20 * MINUTE;
    expect(await getsIn(base, cookie), "it is gone, not asleep").toBe(false);
  });

  test("ends after twelve hours however much it is used", async () => {
    const base = await openBase();
    const cookie = await setUpOwner(base);
    while (base.now + 20 * MINUTE < START + 12 * 60 * MINUTE) {
      base.now += 20 * MINUTE;
      expect(await getsIn(base, cookie)).toBe(true);
    }
    base.now = START + 12 * 60 * MINUTE;
    expect(await getsIn(base, cookie)).toBe(false);
  });

  test("lasts as long as the base is told", async () => {
    const base = await openBase({ access: { sessionIdleMin: 60 * 24, sessionLongestH: 24 * 30 } });
    const cookie = await setUpOwner(base);
    base.now += 23 * 60 * MINUTE;
    expect(await getsIn(base, cookie)).toBe(true);
  });

  test("ends with signing out, on the server and in the browser", async () => {
    const base = await openBase();
    const cookie = await setUpOwner(base);
    const answer = await base.ask({ method: "DELETE", url: "/api/v1/access/session", cookie });
    expect(answer.status).toBe(204);
    expect(answer.cookie).toBe("");
    expect(await getsIn(base, cookie)).toBe(false);
  });

  test("is renewed, and the others end, when the password changes", async () => {
    const base = await openBase();
    const here = await setUpOwner(base);
    const other = (await signIn(base)).cookie!;
    const next = "five grey geese over the lake";
    const wrong = await base.ask({
      method: "PUT",
      url: "/api/v1/access/password",
      cookie: here,
      body: { current: "not the password at all", next },
    });
    expect([wrong.status, wrong.body.error.code]).toEqual([401, "sign-in-failed"]);
    const answer = await base.ask({
      method: "PUT",
      url: "/api/v1/access/password",
      cookie: here,
      body: { current: PASSWORD, next },
    });
    expect(answer.status).toBe(204);
    expect([await getsIn(base, here), await getsIn(base, other), await getsIn(base, answer.cookie!)]).toEqual(
      [false, false, true],
    );
    expect((await signIn(base)).status).toBe(401);
    expect((await signIn(base, { password: next })).status).toBe(200);
  });

  test("of a removed account ends", async () => {
    const base = await openBase();
    const owner = await setUpOwner(base);
    const pilot = await signedInAs(base, owner, "pilot", "Bjarne");
    const { users } = (await base.ask({ url: "/api/v1/users", cookie: owner })).body;
    const { id } = users.find(({ name }: { name: string }) => name === "Bjarne");
    await base.ask({ method: "DELETE", url: `/api/v1/users/${id}`, cookie: owner });
    expect(await getsIn(base, pilot)).toBe(false);
  });
});
