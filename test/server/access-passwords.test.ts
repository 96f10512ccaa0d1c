import { verify } from "@node-rs/argon2";
import { describe, expect, test, vi } from "vitest";
import { hashPassword, passwordFits, passwordIssues } from "../../src/server/access/passwords.js";
import { openBase, PASSWORD, setUpOwner } from "./base.js";

vi.mock(import("@node-rs/argon2"), { spy: true });

describe("a new password", () => {
  const wrong = (password: string, name = "astrid") => passwordIssues(password, "password", name).length > 0;

  test("has 12 to 128 characters, whatever they are", () => {
    expect(wrong("elleve tegn")).toBe(true);
    expect(wrong("tolv tegn ÆØ")).toBe(false);
    expect(wrong("ü🛩".repeat(4))).toBe(true);
    expect(wrong("wren ⛄ ptarmigan 雪 loop")).toBe(false);
    const long = "heron lame ice tundra fjell moss ".repeat(4);
    expect(wrong(long.slice(0, 128))).toBe(false);
    expect(wrong(long.slice(0, 129))).toBe(true);
  });

  test.each([
    "password1234",
    "Password!2026",
    "P4ssw0rd!2026",
    "passwordpassword",
    "123456789012",
    "qwertyuiop12",
    "aaaaaaaaaaaa",
    "abcabcabcabc",
    "1q2w3e4r5t6y",
    "letmein-2026-",
    "soakline2026!",
    "poiuytrewq987654",
    "correct horse battery staple",
    "Winter2025/26",
  ])("may not be as common as %s", (password) => {
    expect(wrong(password)).toBe(true);
  });

  test("may not be made of the account's name", () => {
    expect(wrong("Mallory123456", "mallory")).toBe(true);
    expect(wrong("mallory-mallory", "Mallory")).toBe(true);
    expect(wrong("mallory rows to the far shore", "Mallory")).toBe(false);
  });

  test.each(["four lame herons on ice", "vQ8#mZ2!pL6x", "solsikke-bygg-traktor-elv", "12 moose, 3 lakes"])(
    "may be %s",
    (password) => expect(wrong(password)).toBe(false),
  );

  test("is never repeated in the answer that refuses it", async () => {
    const base = await openBase();
    const body = { name: "Astrid", password: "qwertyuiop12" };
    const answer = await base.ask({ method: "POST", url: "/api/v1/access/owner", body });
    expect(answer.status).toBe(400);
    expect(answer.body.error.issues[0].path).toBe("password");
    expect(answer.text).not.toContain("qwertyuiop12");
  });
});

describe("a password is kept", () => {
  test("as argon2id with 19 MiB, 2 passes, 1 lane and its own salt", async () => {
    const hashes = await Promise.all([hashPassword(PASSWORD), hashPassword(PASSWORD)]);
    for (const hash of hashes) expect(hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(hashes[0]).not.toBe(hashes[1]);
    expect(await passwordFits(PASSWORD, hashes[0])).toBe(true);
    expect(await passwordFits(`${PASSWORD} `, hashes[0])).toBe(false);
  });

  test("whole: a character beyond the 72nd counts", async () => {
    const long = "heron lame ice tundra fjell moss ".repeat(4).slice(0, 127);
    const hash = await hashPassword(`${long}a`);
    expect(await passwordFits(`${long}a`, hash)).toBe(true);
    expect(await passwordFits(`${long}b`, hash)).toBe(false);
  });

  test("the same however its letters were typed", async () => {
    expect(await passwordFits("to-rad e\u0301 gran myr", await hashPassword("to-rad \u00e9 gran myr"))).toBe(
      true,
    );
  });

  test("and never leaves the server", async () => {
    const base = await openBase();
    const cookie = await setUpOwner(base);
    for (const url of ["/api/v1/users", "/api/v1/access", "/api/v1/base", "/api/v1/export.json"]) {
      expect((await base.ask({ url, cookie })).text).not.toMatch(/argon2|passwordHash/);
    }
    expect(base.logged.join("")).not.toMatch(/argon2|herons/);
  });
});

describe("a failed sign-in", () => {
  test("says the same of a wrong name and a wrong password", async () => {
    const base = await openBase();
    await setUpOwner(base);
    const attempt = (name: string) =>
      base.ask({
        method: "POST",
        url: "/api/v1/access/session",
        body: { name, password: "not the password" },
      });
    const [known, unknown] = [await attempt("Astrid"), await attempt("Nobody")];
    expect(known.status).toBe(401);
    expect(known.text).toBe(unknown.text);
    expect(known.cookie).toBeUndefined();
  });

  test("works a hash through for a name that is not there, with the cost of one that is", async () => {
    const hash = await hashPassword(PASSWORD);
    await passwordFits("not the password", hash);
    await passwordFits("not the password", undefined);
    const costs = vi
      .mocked(verify)
      .mock.calls.slice(-2)
      .map(([kept]) => /^.*?p=1\$/.exec(String(kept))?.[0]);
    expect(costs[0]).toMatch(/^\$argon2id/);
    expect(costs[1]).toBe(costs[0]);
  });
});
