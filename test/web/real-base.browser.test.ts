import type { AddressInfo } from "node:net";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { estimateNow } from "../../src/questions/index.js";
import { openBase, PASSWORD, setUpOwner, type TestBase } from "../server/base.js";
import { firstAircraft, note, openSite, PHONE, type Site, visit, withoutBrowser } from "./browser.js";

/** The server believes what the pages believe: the invented evening of the tests. */
const NOW = Date.parse("2027-01-14T20:00:00Z");

describe.skipIf(withoutBrowser)("with the real server of a base", () => {
  let base: TestBase;
  let site: Site;
  let cookie: string;
  beforeAll(async () => {
    // Its own files are not asked for; what is built is served by the base itself.
    const files = await openSite();
    base = await openBase({ webFolder: join(import.meta.dirname, "../../dist/web") });
    base.now = NOW;
    cookie = await setUpOwner(base);
    await base.app.listen({ port: 0, host: "127.0.0.1" });
    const { port } = base.app.server.address() as AddressInfo;
    site = { ...files, url: `http://127.0.0.1:${port}/` };
  }, 180_000);
  afterAll(async () => {
    await site?.close();
    await base?.app.close();
  });

  test("what is written offline is in its logbook once, and what others write comes by itself", {
    timeout: 240_000,
  }, async () => {
    const seen = await visit(site, { viewport: PHONE });
    const { page, context } = seen;
    await firstAircraft(page);
    await signIn(page);
    await expect.poll(kinds, { timeout: 60_000 }).toEqual(["set-up", "forecast", "departure-wanted"]);
    await page.getByText("Synced with the base").waitFor();
    await page.evaluate("navigator.serviceWorker.ready.then(() => undefined)");

    await context.setOffline(true);
    await page.goto(`${site.url}#/logbook`);
    await note(page, "written on the ice");
    await page.getByText("1 to send").waitFor();
    expect(await kinds()).toHaveLength(3);
    // The first answer after that is lost on the way: the base has the event, the device does not know, and sends again.
    let sends = 0;
    await context.route("**/api/v1/events", async (route) => {
      if (route.request().method() !== "POST") return route.continue();
      const response = await route.fetch();
      if (sends++ === 0) await route.abort();
      else await route.fulfill({ response });
    });
    await context.setOffline(false);
    await page.getByText("Synced with the base").waitFor({ timeout: 60_000 });
    expect(sends).toBe(2);
    await expect.poll(notes, { timeout: 30_000 }).toEqual(["written on the ice"]);
    // A second page of the same device, opened anew, has nothing to send again.
    const other = await context.newPage();
    await other.goto(`${site.url}#/logbook`);
    await other.getByText("Note: written on the ice").waitFor({ timeout: 30_000 });
    await other.getByText("Synced with the base").waitFor();
    expect(await notes()).toEqual(["written on the ice"]);
    await other.close();

    // Nothing but the stream of changes tells a page that is in step.
    await expect.poll(() => base.live.listeners.size).toBeGreaterThan(0);
    const posted = await base.ask({
      method: "POST",
      url: "/api/v1/events",
      cookie,
      body: {
        events: [
          { id: crypto.randomUUID(), at: new Date(NOW).toISOString(), kind: "note", note: "from the hangar" },
        ],
      },
    });
    expect([posted.status, posted.body.kept.length]).toEqual([200, 1]);
    await page.getByText("Note: from the hangar").waitFor({ timeout: 20_000 });
    expect(await notes()).toEqual(["written on the ice", "from the hangar"]);
    await saysWhatTheProbesSay(page);
    // Lost requests, and the one that was answered with the door, before signing in.
    const expected = /^Failed to load resource: (net::ERR_|the server responded with a status of 401)/;
    expect(seen.complaints.filter((text) => !expected.test(text))).toEqual([]);
    await context.close();
  });

  /** The base hears probes and knows better than the logbook: the aircraft screen shows what the base says. */
  async function saysWhatTheProbesSay(page: Page): Promise<void> {
    const state = base.live.state();
    const [id] = state?.aircraft.keys() ?? [];
    if (state === undefined || id === undefined) throw new Error("no base");
    const outcome = estimateNow(state, id, { now: NOW + 300_000, readings: [] });
    if (outcome.status !== "completed") throw new Error(outcome.status);
    const { now } = outcome.result;
    base.live.nowMap.set(id, {
      ...now,
      parts: { ...now.parts, oil: { p05_c: 40, p50_c: 41, p95_c: 42 } },
      probes: [{ name: "oil-1", part: "oil", readings: 30, left_aside: 0 }],
      deviations: [{ finding: "heater-not-heating", chance: 0.97, believed: true }],
    });
    await page.goto(`${site.url}#/aircraft`);
    const sheet = page.getByRole("region", { name: "Can it start now?" });
    await sheet.getByText("Calculated by the base, which hears its probes.").waitFor({ timeout: 60_000 });
    await sheet.getByText("The heater does not seem to heat.").waitFor();
    await sheet.getByText("chance 19 in 20; the numbers here assume that it is so").waitFor();
    await page.getByText("Every part", { exact: true }).click();
    const oil = page.getByRole("row", { name: /^oil / });
    expect(await oil.locator("small").textContent()).toBe("by probe");
    expect(await oil.getByRole("cell").first().textContent()).toMatch(/^41/);
  }

  async function events() {
    return (await base.store.eventsAfter(0, 1000)).map(({ event }) => event);
  }
  async function kinds(): Promise<string[]> {
    return (await events()).map(({ kind }) => kind);
  }
  async function notes(): Promise<(string | undefined)[]> {
    return (await events()).flatMap((event) => (event.kind === "note" ? [event.note] : []));
  }
});

async function signIn(page: Page): Promise<void> {
  const form = page.getByRole("form", { name: "Sign in to the base" });
  await form.getByLabel("Name").fill("Astrid");
  await form.getByLabel("Password").fill(PASSWORD);
  await form.getByRole("button", { name: "Sign in" }).click();
}
