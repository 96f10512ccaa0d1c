import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { DESK, PHONE } from "./browser.js";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
/** Every rule in the first light; in the other only those that look at colours, for nothing else follows the light. */
const RULES = {
  light: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
  dark: ["color-contrast", "link-in-text-block"],
} as const;

/** Judges the page as it stands in both lights, and its width and targets. */
export async function judge(page: Page, name: string, failures: string[]): Promise<void> {
  if (!(await page.evaluate<boolean>("'axe' in globalThis"))) await page.evaluate(AXE);
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    await page.evaluate(EASED);
    const found = await page.evaluate<{ id: string; nodes: { html: string; failureSummary: string }[] }[]>(
      `axe.run(document, { runOnly: ${JSON.stringify(RULES[colorScheme])} }).then(({ violations }) => violations)`,
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

/** Colours that ease over are measured once they have. */
const EASED = `new Promise(requestAnimationFrame).then(() => Promise.allSettled(
  document.getAnimations().filter((each) => each instanceof CSSTransition).map(({ finished }) => finished)))`;

/** [px] the page is wider than the screen. */
export function widthOver(page: Page): Promise<number> {
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

/** Opens every fold; how many there were, so that nobody judges folded ones for unfolded. */
export function unfold(page: Page): Promise<number> {
  return page.evaluate(`(() => {
    const all = [...document.querySelectorAll("main details")];
    for (const each of all) each.open = true;
    return all.length;
  })()`);
}

/** Where pictures of what was judged are put, for eyes; nowhere unless named. */
const PICTURES = process.env.SOAKLINE_PICTURES;

/** Accessible, wide enough and with targets for gloves, on a phone and a desk, and no wider than 320 px. */
export async function judgedAtSizes(page: Page, name: string): Promise<void> {
  const failures: string[] = [];
  for (const [size, viewport] of [
    ["desk", DESK],
    ["phone", PHONE],
  ] as const) {
    await page.setViewportSize(viewport);
    await judge(page, `${name} on a ${size}`, failures);
    if (PICTURES !== undefined) {
      const picture = await page.screenshot({ fullPage: true });
      writeFileSync(join(PICTURES, `${name.replace(/\W+/g, "-")}-${size}.png`), picture);
    }
  }
  await page.setViewportSize({ width: 320, height: 640 });
  if ((await widthOver(page)) > 0) failures.push(`${name}: wider than 320 px`);
  await page.setViewportSize(PHONE);
  expect(failures).toEqual([]);
}
