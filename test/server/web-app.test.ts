import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { openBase, setUpOwner, type TestBase } from "./base.js";

let base: TestBase;
const HASHED = "/assets/index-Bx3kT9_a.js";

beforeAll(async () => {
  const outer = mkdtempSync(join(tmpdir(), "soakline-web-"));
  const webFolder = join(outer, "web");
  mkdirSync(join(webFolder, "assets"), { recursive: true });
  writeFileSync(join(outer, "secret.txt"), "not for the web");
  writeFileSync(join(webFolder, "index.html"), "<!doctype html><title>Soakline</title>");
  writeFileSync(join(webFolder, "service-worker.js"), "// worker");
  writeFileSync(join(webFolder, ".env"), "SECRET=1");
  writeFileSync(join(webFolder, HASHED), "export {};");
  writeFileSync(join(webFolder, "assets", "highs-CkQw2p_Z.wasm"), "");
  symlinkSync(join(outer, "secret.txt"), join(webFolder, "assets", "link.txt"));
  base = await openBase({ webFolder });
});

const navigation = { accept: "text/html,application/xhtml+xml;q=0.9" };

describe("the web app", () => {
  test("is served to everybody, also before signing in", async () => {
    const own = await base.ask({ url: "/", from: "192.168.1.20", host: "base.lan" });
    expect([own.status, own.text]).toEqual([200, "<!doctype html><title>Soakline</title>"]);
    expect(own.headers["content-type"]).toMatch(/^text\/html/);
  });

  test("is told that a base with an API stands behind it", async () => {
    const answer = await base.ask({ url: "/server.json", from: "192.168.1.20", host: "base.lan" });
    expect([answer.status, answer.body]).toEqual([200, { api: "/api/v1" }]);
    expect(answer.headers["cache-control"]).toBe("no-cache");
  });

  test("answers every page's address with its index, but not what is no page", async () => {
    const page = await base.ask({ url: "/aircraft/lynx", headers: navigation });
    expect([page.status, page.headers["cache-control"]]).toEqual([200, "no-cache"]);
    expect(page.text).toContain("<title>Soakline</title>");
    for (const ask of [
      { url: "/aircraft/lynx" },
      { url: "/assets/missing.js", headers: { accept: "*/*" } },
      { url: "/api/v1/nothing", headers: navigation },
      { url: "/aircraft/lynx", method: "POST", headers: navigation } as const,
    ]) {
      const answer = await base.ask(ask);
      expect([answer.status, answer.body?.error.code], JSON.stringify(ask)).toEqual([404, "unknown"]);
    }
  });

  test.each([
    [HASHED, "public, max-age=31536000, immutable"],
    ["/assets/highs-CkQw2p_Z.wasm", "public, max-age=31536000, immutable"],
    ["/index.html", "no-cache"],
    ["/", "no-cache"],
    ["/service-worker.js", "no-cache"],
  ])("%s is kept as: %s", async (url, expected) => {
    const answer = await base.ask({ url });
    expect([answer.status, answer.headers["cache-control"]]).toEqual([200, expected]);
  });

  test("gives WebAssembly its type, so that it can be compiled while it comes", async () => {
    expect((await base.ask({ url: "/assets/highs-CkQw2p_Z.wasm" })).headers["content-type"]).toBe(
      "application/wasm",
    );
  });
});

describe("files outside of the web app's folder", () => {
  test.each([
    "/../secret.txt",
    "/assets/../../secret.txt",
    "/..%2fsecret.txt",
    "/%2e%2e/secret.txt",
    "/%2e%2e%2fsecret.txt",
    "/..%5csecret.txt",
    "/assets/..%2f..%2fsecret.txt",
    "/%252e%252e/secret.txt",
    "//etc/passwd",
    "/%00/secret.txt",
    "/.env",
    "/assets/%2e%2e/.env",
  ])("are not given away by %s", async (url) => {
    const answer = await base.ask({ url });
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
    expect(answer.text).not.toMatch(/not for the web|SECRET|root:/);
  });
});

describe("security headers", () => {
  test("stand on every answer: app, API, error, event stream's door", async () => {
    for (const url of [
      "/",
      HASHED,
      "/api/v1/access",
      "/api/v1/nothing",
      "/nothing",
      "/api/v1/events?limit=x",
    ]) {
      const { headers } = await base.ask({ url });
      expect(headers["content-security-policy"], url).toBeDefined();
      expect(headers["x-content-type-options"], url).toBe("nosniff");
      expect(headers["x-frame-options"], url).toBe("DENY");
      expect(headers["referrer-policy"], url).toBe("no-referrer");
      expect(headers["cross-origin-opener-policy"], url).toBe("same-origin");
      expect(headers["x-powered-by"], url).toBeUndefined();
      expect(headers.server, url).toBeUndefined();
      expect(headers["strict-transport-security"], `${url}: only over TLS`).toBeUndefined();
    }
    await setUpOwner(base);
    const refused = await base.ask({ url: "/api/v1/changes" });
    expect([refused.status, refused.headers["x-content-type-options"]]).toEqual([401, "nosniff"]);
  });

  test("allow own files and WebAssembly in own workers, and nothing inline", async () => {
    const policy = String((await base.ask({ url: "/" })).headers["content-security-policy"]);
    const directives = new Map(
      policy.split(";").map((each) => [each.split(" ")[0], each.split(" ").slice(1)]),
    );
    expect(Object.fromEntries(directives)).toEqual({
      "default-src": ["'self'"],
      "script-src": ["'self'", "'wasm-unsafe-eval'"],
      "worker-src": ["'self'"],
      "base-uri": ["'none'"],
      "form-action": ["'self'"],
      "frame-ancestors": ["'none'"],
      "object-src": ["'none'"],
    });
  });
});
