import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
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

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
const SCREENS = ["night", "aircraft", "away", "logbook", "forecast", "settings"];

describe.skipIf(withoutBrowser)("every screen", () => {
  let site: Site;
  beforeAll(async () => {
    site = await openSite();
  }, 120_000);
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
        await page
          .locator("main details")
          .evaluateAll("(all) => all.forEach((each) => { each.open = true; })");
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

async function judge(page: Page, name: string, failures: string[]): Promise<void> {
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    // Colours that ease over are measured once they have.
    await page.waitForTimeout(250);
    await page.evaluate(AXE);
    const found = await page.evaluate<{ id: string; nodes: { html: string; failureSummary: string }[] }[]>(
      `axe.run(document, { runOnly: ${JSON.stringify(RULES)} }).then(({ violations }) => violations)`,
    );
    for (const { id, nodes } of found) {
      failures.push(`${name}, ${colorScheme}: ${id}: ${nodes[0].html} ${nodes[0].failureSummary}`);
    }
  }
  const over = await widthOver(page);
  if (over > 0) failures.push(`${name}: ${over} px wider than the screen`);
  const small = await page.evaluate<string[]>(SMALL_TARGETS);
  failures.push(...small.map((target) => `${name}: target smaller than a gloved thumb: ${target}`));
}

function widthOver(page: Page): Promise<number> {
  return page.evaluate("Math.max(0, document.documentElement.scrollWidth - innerWidth)");
}

/** Buttons, links outside sentences, fields and folds that are less than 44 px high or wide. */
const SMALL_TARGETS = `
  [...document.querySelectorAll("button, select, input, textarea, summary, nav a, [role=slider]")].flatMap((element) => {
    const field = element.matches("input[type=radio], input[type=checkbox]") ? element.closest("label") : element;
    const { width, height } = field.getBoundingClientRect();
    const isShown = width > 0 && element.checkVisibility({ visibilityProperty: true });
    return isShown && Math.min(width, height) < 43.5 ? [element.outerHTML.slice(0, 120) + " " + width + "x" + height] : [];
  })`;
