import { createHash } from "node:crypto";
import { beforeEach, describe, expect, test } from "vitest";
import { newTokenOf, openBase, PASSWORD, setUpOwner, signedInAs, type TestBase } from "./base.js";

let base: TestBase;
let owner: string;

beforeEach(async () => {
  base = await openBase();
  owner = await setUpOwner(base);
});

function add(body: object) {
  return base.ask({ method: "POST", url: "/api/v1/users", cookie: owner, body });
}

async function users(): Promise<{ id: string; name: string; role: string }[]> {
  return (await base.ask({ url: "/api/v1/users", cookie: owner })).body.users;
}

describe("accounts", () => {
  test("are added, listed and removed by the owner", async () => {
    const answer = await add({ name: "Bjarne", password: PASSWORD, role: "pilot" });
    expect([answer.status, answer.body]).toEqual([
      201,
      { id: expect.any(String), name: "Bjarne", role: "pilot" },
    ]);
    expect((await users()).map(({ name, role }) => [name, role])).toEqual([
      ["Astrid", "owner"],
      ["Bjarne", "pilot"],
    ]);
    const removed = await base.ask({
      method: "DELETE",
      url: `/api/v1/users/${answer.body.id}`,
      cookie: owner,
    });
    expect(removed.status).toBe(204);
    expect((await users()).length).toBe(1);
  });

  test("differ by more than capitals", async () => {
    expect((await add({ name: "ASTRID", password: PASSWORD, role: "viewer" })).status).toBe(409);
  });

  test("cannot take a name by which the logbook calls the program itself", async () => {
    for (const name of ["local", "Keeper", "SOAKLINE"]) {
      expect((await add({ name, password: PASSWORD, role: "pilot" })).status, name).toBe(409);
    }
  });

  test.each(["", " Astrid", "a\r\nb", "<b>", "'; DROP TABLE users; --", "=cmd", "x".repeat(65)])(
    "cannot be called %j",
    async (name) => {
      const answer = await add({ name, password: PASSWORD, role: "viewer" });
      expect(answer.status).toBe(400);
      expect(answer.body.error.issues[0].path).toBe("name");
    },
  );

  test("are of no role but owner, pilot and viewer, and bring no key of their own", async () => {
    expect((await add({ name: "Bjarne", password: PASSWORD, role: "device" })).status).toBe(400);
    const sneaked = await add({
      name: "Bjarne",
      password: PASSWORD,
      role: "viewer",
      id: "1",
      passwordHash: "x",
    });
    expect(sneaked.status).toBe(400);
    expect((await users()).length).toBe(1);
  });

  test("the last owner stays, even when two owners remove each other at once", async () => {
    const [astrid] = await users();
    const remove = (id: string, cookie: string) =>
      base.ask({ method: "DELETE", url: `/api/v1/users/${id}`, cookie });
    expect((await remove(astrid!.id, owner)).status).toBe(409);
    const second = await signedInAs(base, owner, "owner", "Sigrid");
    const sigrid = (await users()).find(({ name }) => name === "Sigrid")!;
    const answers = await Promise.all([remove(sigrid.id, owner), remove(astrid!.id, second)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([204, 409]);
    expect((await base.store.users()).filter(({ role }) => role === "owner").length).toBe(1);
  });

  test("with an id that means something to a database are just not there", async () => {
    for (const id of ["' OR 1=1 --", "1; DROP TABLE users", "../../etc/passwd", "%00", "__proto__"]) {
      const url = `/api/v1/users/${encodeURIComponent(id)}`;
      expect((await base.ask({ method: "DELETE", url, cookie: owner })).status, id).toBe(404);
    }
    expect((await users()).length).toBe(1);
  });

  test("are not changed without an account: the open door has no password", async () => {
    const open = await openBase();
    const body = { current: PASSWORD, next: "five grey geese over the lake" };
    expect((await open.ask({ method: "PUT", url: "/api/v1/access/password", body })).status).toBe(409);
  });

  test("a new password that will not do leaves the old one", async () => {
    const body = { current: PASSWORD, next: "short" };
    const answer = await base.ask({ method: "PUT", url: "/api/v1/access/password", cookie: owner, body });
    expect([answer.status, answer.body.error.issues[0].path]).toEqual([400, "next"]);
    expect((await base.ask({ url: "/api/v1/base", cookie: owner })).status).toBe(200);
  });
});

describe("tokens", () => {
  test("are shown once and kept as SHA-256", async () => {
    const { id, token } = await newTokenOf(base, "device", owner);
    expect(Buffer.from(token, "base64url").length).toBe(32);
    const [row] = await base.store.deviceTokens();
    expect(row!.tokenHash).toBe(createHash("sha256").update(token).digest("hex"));
    const listed = await base.ask({ url: "/api/v1/tokens", cookie: owner });
    expect(listed.body.tokens).toEqual([
      { id, name: "a device", kind: "device", created: "2026-01-14T18:00:00.000Z" },
    ]);
    expect(listed.text).not.toContain(row!.tokenHash);
    expect(base.logged.join("")).not.toContain(token);
  });

  test("work until they are taken back", async () => {
    const { id, token } = await newTokenOf(base, "device", owner);
    const bring = () =>
      base.ask({
        method: "POST",
        url: "/api/v1/readings",
        token,
        from: "192.168.1.30",
        host: "base.lan",
        body: { readings: [{ aircraft: "lynx", probe: "oil-1", at: "2026-01-14T18:00:00Z", temp_c: -20 }] },
        headers: { "soakline-request": undefined, origin: undefined },
      });
    expect((await bring()).status, "a device needs no header of the web app").toBe(200);
    const gone = await base.ask({ method: "DELETE", url: `/api/v1/tokens/${id}`, cookie: owner });
    expect(gone.status).toBe(204);
    expect((await bring()).status).toBe(401);
    const again = await base.ask({ method: "DELETE", url: `/api/v1/tokens/${id}`, cookie: owner });
    expect(again.status).toBe(404);
  });

  test("that are wrong let nobody in, also not by the open door or a session beside them", async () => {
    const open = await openBase();
    expect((await open.ask({ url: "/api/v1/base", token: "A".repeat(43) })).status).toBe(401);
    expect((await base.ask({ url: "/api/v1/base", cookie: owner, token: "A".repeat(43) })).status).toBe(401);
    const basic = await base.ask({
      url: "/api/v1/base",
      cookie: owner,
      headers: { authorization: "Basic eA==" },
    });
    expect(basic.status).toBe(401);
  });

  test("of a calendar are none of a device, and the other way round", async () => {
    const calendar = await newTokenOf(base, "calendar", owner);
    const device = await newTokenOf(base, "device", owner);
    expect((await base.ask({ url: "/metrics", token: calendar.token, from: "10.0.0.1" })).status).toBe(401);
    expect((await base.ask({ url: `/api/v1/calendar.ics?token=${device.token}` })).status).toBe(401);
    expect((await base.ask({ url: `/api/v1/base?token=${calendar.token}`, from: "10.0.0.1" })).status).toBe(
      401,
    );
  });
});
