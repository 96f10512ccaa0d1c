import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { winterStudySchema } from "../../src/documents/index.js";
import { madeYear, PLACES } from "../../src/weather/index.js";
import { weatherCsv } from "../winter/weather-files.js";
import {
  expectNoComplaints,
  mainSays,
  openDemo,
  openSite,
  PHONE,
  type Site,
  type Visit,
  visit,
  withoutBrowser,
} from "./browser.js";
import { judgedAtSizes } from "./judge.js";

describe.skipIf(withoutBrowser)("the winter screen", () => {
  let site: Site;
  let seen: Visit;
  let page: Page;

  beforeAll(async () => {
    site = await openSite();
    seen = await visit(site, { viewport: PHONE, reducedMotion: "reduce", acceptDownloads: true });
    ({ page } = seen);
    await openDemo(page);
  }, 300_000);
  afterAll(async () => {
    await seen?.context.close();
    await site?.close();
  });

  test("winter: a made winter is worked through, stopped and shown", { timeout: 600_000 }, async () => {
    await open();
    await page.getByRole("button", { name: "Winters made: less" }).click();
    await page.getByRole("checkbox", { name: "Tuesday" }).uncheck();
    await page.getByLabel("Electricity, per kWh").fill("many");
    await page.getByLabel("Electricity, per kWh").press("Tab");
    await page.getByText("Electricity, per kWh: many is not a number of 0 or more.").waitFor();
    await page.getByLabel("Electricity, per kWh").fill("0.25");
    await page.getByLabel("Electricity, per kWh").press("Tab");
    await page.getByRole("button", { name: "Compare" }).click();
    await page.getByRole("button", { name: "Stop" }).click();
    await mainSays(page, /Choose up to three kits/);
    await page.getByRole("button", { name: "Compare" }).click();
    await mainSays(page, /ready in .* departures/, 500_000);
    const table = page.getByRole("region", { name: "The winter in numbers" });
    expect(await table.getByRole("row").count()).toBe(4);
    const energies = await table.locator("tbody tr td:nth-child(4)").allTextContents();
    const [always, clock, planned] = energies.map((text) => Number.parseFloat(text.replace(",", "")));
    expect(always).toBeGreaterThan(clock);
    expect(planned).toBeGreaterThan(0);
    expect(planned).toBeLessThan(always);
    const months = page.getByRole("region", { name: "Month by month" });
    expect(await months.getByRole("rowheader", { name: "January" }).count()).toBe(1);
    await judgedAtSizes(page, "winter");
  });

  test("what was worked out is taken along as the document that the command line writes", async () => {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Take it with you (JSON)" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("soakline-winter.json");
    const study = winterStudySchema.parse(JSON.parse(readFileSync(await download.path(), "utf8")));
    expect(study.rows.length).toBe(3);
    expect(study.winters.length).toBe(1);
  });

  test("a file that is no weather is refused with its line; an hourly log of the user's own is used", {
    timeout: 600_000,
  }, async () => {
    await open();
    await page.getByRole("checkbox", { name: "Tuesday" }).uncheck();
    await page.getByLabel("Weather of").selectOption("file");
    await bring("notes.csv", "time,air_c\n2025-10-01T00:00+01:00,cold\n");
    await page.getByRole("button", { name: "Compare" }).click();
    await page
      .getByText(/notes\.csv|csv_files\[0\], line 2/)
      .first()
      .waitFor();
    await judgedAtSizes(page, "winter, refused");

    const from = Date.parse("2024-09-30T00:00Z") / 1000;
    const to = Date.parse("2025-05-03T00:00Z") / 1000;
    await bring("winter-2024.csv", weatherCsv(madeYear({ place: PLACES[0]!, from, to, seed: 5, year: 1 })));
    await page.getByRole("button", { name: "Compare" }).click();
    await mainSays(page, /ready in .* departures/, 500_000);
    await page.getByText(/^winter-2024\.csv: mean/).waitFor();
  });

  test("nothing was complained of", () => expectNoComplaints(seen));

  async function open(): Promise<void> {
    await page.setViewportSize(PHONE);
    await page.goto(`${site.url}#/winter/lynx`);
    await page.locator("main h1").waitFor();
  }

  async function bring(name: string, text: string): Promise<void> {
    await page
      .locator("input[type=file]")
      .setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
  }
});
