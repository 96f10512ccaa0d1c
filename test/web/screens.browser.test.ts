import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  DESK,
  expectNoComplaints,
  openDemo,
  openSite,
  PHONE,
  type Site,
  settled,
  visit,
  withoutBrowser,
} from "./browser.js";
import { judge, unfold, widthOver } from "./judge.js";

const SCREENS = ["night", "aircraft", "away", "logbook", "forecast", "settings"];

describe.skipIf(withoutBrowser)("every screen", () => {
  let site: Site;
  beforeAll(async () => {
    site = await openSite();
    // Another test file may be building the app first.
  }, 300_000);
  afterAll(() => site?.close());

  describe.each([
    { size: "phone", viewport: PHONE },
    { size: "desk", viewport: DESK },
  ])("on a $size", ({ viewport }) => {
    test("is accessible in both lights, fits, and has targets for gloves", { timeout: 300_000 }, async () => {
      const seen = await visit(site, { viewport, reducedMotion: "reduce" });
      const { page } = seen;
      const failures: string[] = [];
      await page.getByRole("heading", { level: 1 }).waitFor();
      await judge(page, "welcome", failures);
      await page.getByRole("button", { name: /plan my aircraft/i }).click();
      await page.getByRole("combobox").waitFor();
      await judge(page, "first aircraft", failures);
      await page.getByRole("button", { name: "Back", exact: true }).click();
      await openDemo(page);
      for (const screen of SCREENS) {
        await page.goto(`${site.url}#/${screen}`);
        await page.locator("main h1").waitFor();
        await page.locator("[aria-busy='true']").first().waitFor({ state: "detached", timeout: 60_000 });
        await settled(page);
        await judge(page, screen, failures);
        await unfold(page);
        await judge(page, `${screen}, all unfolded`, failures);
      }
      expect(failures).toEqual([]);
      expectNoComplaints(seen);
      await seen.context.close();
    });
  });

  test("reflows at 320 px: only the night line may go sideways, in its own frame", {
    timeout: 180_000,
  }, async () => {
    const seen = await visit(site, { viewport: { width: 320, height: 640 } });
    await openDemo(seen.page);
    for (const screen of SCREENS) {
      await seen.page.goto(`${site.url}#/${screen}`);
      await seen.page.locator("main h1").waitFor();
      expect([screen, await widthOver(seen.page)]).toEqual([screen, 0]);
    }
    expectNoComplaints(seen);
    await seen.context.close();
  });
});
