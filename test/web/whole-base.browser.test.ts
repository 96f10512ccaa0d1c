import { describe, expect, test } from "vitest";
import { expectNoComplaints, onDemo, openDemo, settled, withoutBrowser } from "./browser.js";
import { judgedAtSizes } from "./judge.js";

describe.skipIf(withoutBrowser)("the whole base planned together", () => {
  const here = onDemo({}, ({ page }) => settled(page));
  const sheet = () => here.page.getByRole("region", { name: "The whole base" });
  const planned = (timeout = 240_000) =>
    sheet().getByRole("heading", { name: "To do, in order" }).waitFor({ timeout });

  test("is stopped when it is no longer wanted", { timeout: 120_000 }, async () => {
    await sheet().getByRole("button", { name: "Plan together" }).click();
    await sheet().getByRole("button", { name: "Stop" }).click();
    await sheet().getByRole("button", { name: "Plan together" }).waitFor();
    expect(await sheet().getByRole("heading", { name: "To do, in order" }).count()).toBe(0);
  });

  test("says who is ready, what is done in which order, and why", { timeout: 300_000 }, async () => {
    await sheet().getByRole("button", { name: "Plan together" }).click();
    await planned();
    const said = await sheet().locator(".big").textContent();
    expect(said).toMatch(/^All 4 ready in time; all together in \d+\s% of cases\.|^Not ready in time/);
    const reasons = await sheet().locator("ul").first().locator("li").allTextContents();
    for (const name of ["Lynx", "Heron", "Marten", "Wren"])
      expect(
        reasons.some((line) => line.includes(name)),
        name,
      ).toBe(true);
    const todo = await sheet().locator("ol li").allTextContents();
    expect(todo.length).toBeGreaterThan(0);
    for (const line of todo) expect(line).toMatch(/\d\d:\d\d/);
    await judgedAtSizes(here.page, "night, planned together");
  });

  test("planned anew without news it tells everybody the same", { timeout: 300_000 }, async () => {
    const todo = () => sheet().locator("ol li").allTextContents();
    const before = await todo();
    await sheet().getByRole("button", { name: "Plan together again" }).click();
    await sheet().getByRole("button", { name: "Stop" }).waitFor();
    // The plan before stays to be read while the next one is made.
    expect(await todo()).toEqual(before);
    await sheet().getByRole("button", { name: "Plan together again" }).waitFor({ timeout: 240_000 });
    expect(await todo()).toEqual(before);
  });

  test("the sheet for tonight has the list, and is still one page", { timeout: 120_000 }, async () => {
    const pdf = (await here.page.pdf({ preferCSSPageSize: true })).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page\b/g)?.length).toBe(1);
    await here.page.emulateMedia({ media: "print" });
    const onPaper = await here.page.locator("article.on-paper ol li").allTextContents();
    await here.page.emulateMedia({ media: "screen" });
    expect(onPaper).toEqual(await sheet().locator("ol li").allTextContents());
  });

  test("works without a network, once the app is kept", { timeout: 400_000 }, async () => {
    await here.page.waitForFunction(
      "navigator.serviceWorker.controller !== null || navigator.serviceWorker.ready",
      null,
      {
        timeout: 120_000,
      },
    );
    await here.page.evaluate("navigator.serviceWorker.ready");
    await here.page.reload();
    await settled(here.page);
    await here.context.setOffline(true);
    await here.page.reload();
    await sheet().getByRole("button", { name: "Plan together" }).click({ timeout: 120_000 });
    await planned();
    await here.context.setOffline(false);
    here.complaints.splice(
      0,
      here.complaints.length,
      ...here.complaints.filter(
        (text) => !/ERR_INTERNET_DISCONNECTED|Failed to fetch|server\.json/.test(text),
      ),
    );
  });

  test("another logbook has nothing of it", { timeout: 120_000 }, async () => {
    await here.page.goto(`${here.url}#/settings`);
    await here.page.getByRole("button", { name: "Leave the demo" }).click();
    await openDemo(here.page);
    await here.page.goto(`${here.url}#/`);
    await sheet().getByRole("button", { name: "Plan together", exact: true }).waitFor();
    expect(await sheet().getByRole("heading", { name: "To do, in order" }).count()).toBe(0);
  });

  test("nothing else was complained of", () => expectNoComplaints(here));
});
