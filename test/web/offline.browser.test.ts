import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  EVENING,
  expectNoComplaints,
  firstAircraft,
  note,
  openDemo,
  openSite,
  PHONE,
  type Site,
  type Visit,
  visit,
  withoutBrowser,
} from "./browser.js";
import { StubBase } from "./stub-base.js";

describe.skipIf(withoutBrowser)("without a network", () => {
  let site: Site;
  beforeAll(async () => {
    site = await openSite();
  }, 120_000);
  afterAll(() => site?.close());

  test("the app opens again, shows the last plans, and plans anew", { timeout: 180_000 }, async () => {
    const seen = await visit(site, { viewport: PHONE });
    const { page, context } = seen;
    await openDemo(page);
    await kept(page);
    await context.setOffline(true);
    await page.reload();
    const sentence = page.locator(".placard .main");
    await sentence.filter({ hasText: /start at 10:00|not ready at 10:00/ }).waitFor({ timeout: 30_000 });
    await page.getByText("Offline", { exact: true }).waitFor();
    await page.getByRole("button", { name: /one hour later/i }).click();
    await sentence.filter({ hasText: /start at 11:00|not ready at 11:00/ }).waitFor({ timeout: 30_000 });
    for (const screen of ["Aircraft", "Away", "Logbook"]) {
      await page.getByRole("link", { name: screen }).click();
      await page.locator("main h1").waitFor();
    }
    await page.getByRole("link", { name: "Away" }).click();
    await page
      .locator(".main")
      .filter({ hasText: /eady when back at \d\d:\d\d: .* with covers on now/ })
      .waitFor({ timeout: 60_000 });
    expectOnlyLostNetwork(seen);
    await context.close();
  });

  test("a second tab sees what is written down in the first", { timeout: 180_000 }, async () => {
    const seen = await visit(site, { viewport: PHONE });
    await openDemo(seen.page);
    const other = await seen.context.newPage();
    await other.goto(`${site.url}#/logbook`);
    await other.getByText("Base set up: Ravnholt Strip").waitFor();
    await seen.page.goto(`${site.url}#/logbook`);
    await seen.page.getByLabel("A note").fill("Lead frayed at the ramp end");
    await seen.page.getByRole("button", { name: "Write a note" }).click();
    await other.getByText("Note: Lead frayed at the ramp end").waitFor({ timeout: 30_000 });
    expectNoComplaints(seen);
    await seen.context.close();
  });
});

describe.skipIf(withoutBrowser)("with a base's server", () => {
  let site: Site;
  const base = new StubBase();
  beforeAll(async () => {
    site = await openSite(base.answer);
  }, 120_000);
  afterAll(() => site?.close());

  test("events made offline are queued, shown as waiting, and sent once", { timeout: 240_000 }, async () => {
    const seen = await visit(site, { viewport: PHONE });
    const { page, context } = seen;
    await firstAircraft(page);
    await expect
      .poll(() => base.events.map(({ kind }) => kind), { timeout: 30_000 })
      .toEqual(["set-up", "forecast", "departure-wanted"]);
    await page.getByText("Synced with the base").waitFor();
    await kept(page);

    await context.setOffline(true);
    await page.reload();
    await page.goto(`${site.url}#/logbook`);
    await note(page, "written on the ice");
    await note(page, "and again");
    await page.getByText("2 to send").waitFor();
    await page.getByText("Offline", { exact: true }).waitFor();
    expect(base.events).toHaveLength(3);
    await page.reload();
    await page.getByText("2 to send").waitFor();
    await page.getByText("Note: written on the ice").waitFor();

    await context.setOffline(false);
    await page.getByText("Synced with the base").waitFor({ timeout: 60_000 });
    await expect.poll(() => base.events.length, { timeout: 30_000 }).toBe(5);
    // Another page of the same device has nothing more to send.
    const other = await context.newPage();
    await other.goto(`${site.url}#/logbook`);
    await other.getByText("Synced with the base").waitFor();
    expect(base.posted).toHaveLength(new Set(base.posted).size);
    expect(new Set(base.posted).size).toBe(5);

    base.tell({
      ...{ id: "7e0f2f44-6f1e-4f77-9a55-1b7d6f4b0a01", kind: "note" },
      ...{ at: new Date(EVENING).toISOString(), by: "somebody", note: "from the hangar" },
    } as { id: string; kind: string });
    // Whichever of the two fetched it, both show it.
    await page.getByText("Note: from the hangar").waitFor({ timeout: 30_000 });
    await other.getByText("Note: from the hangar").waitFor({ timeout: 30_000 });
    expectOnlyLostNetwork(seen);
    await context.close();
  });

  test("a base that does not answer is said so, and what was written goes out when it does", {
    timeout: 180_000,
  }, async () => {
    const seen = await visit(site, { viewport: PHONE });
    const { page, context } = seen;
    await page.getByRole("button", { name: /open the base here/i }).click();
    await page.getByText("Synced with the base").waitFor({ timeout: 30_000 });
    await page.goto(`${site.url}#/logbook`);
    await page.getByText("Note: written on the ice").waitFor({ timeout: 30_000 });
    base.isDown = true;
    await note(page, "while it was off");
    await page.getByText("1 to send").waitFor();
    await page.getByText("Base not reached").waitFor();
    const before = base.events.length;
    base.isDown = false;
    await page.getByText("Synced with the base").waitFor({ timeout: 60_000 });
    expect(base.events).toHaveLength(before + 1);
    expectOnlyLostNetwork(seen);
    await context.close();
  });
});

/** The app's files are on the device. */
async function kept(page: Page): Promise<void> {
  await page.evaluate("navigator.serviceWorker.ready.then(() => undefined)");
  await expect
    .poll(() => page.evaluate("navigator.serviceWorker.controller !== null"), { timeout: 30_000 })
    .toBe(true);
}

/** Browsers complain of every request that finds no network; of nothing else the page may complain. */
function expectOnlyLostNetwork({ complaints }: Visit): void {
  expect(complaints.filter((text) => !/^Failed to load resource: net::ERR_/.test(text))).toEqual([]);
}
