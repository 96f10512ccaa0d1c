import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { winterStudySchema } from "../../src/documents/index.js";
import { madeYear, PLACES } from "../../src/weather/index.js";
import { weatherCsv } from "../winter/weather-files.js";
import { expectNoComplaints, mainSays, onDemo, PHONE, withoutBrowser } from "./browser.js";
import { judgedAtSizes } from "./judge.js";

describe.skipIf(withoutBrowser)("the winter screen", () => {
  const here = onDemo({ acceptDownloads: true });

  test("winter: a made winter is worked through, stopped and shown", { timeout: 600_000 }, async () => {
    await open();
    await here.page.getByRole("button", { name: "Winters made: less" }).click();
    await here.page.getByRole("checkbox", { name: "Tuesday" }).uncheck();
    await here.page.getByLabel("Electricity, per kWh").fill("many");
    await here.page.getByLabel("Electricity, per kWh").press("Tab");
    await here.page.getByText("Electricity, per kWh: many is not a number of 0 or more.").waitFor();
    await here.page.getByLabel("Electricity, per kWh").fill("0.25");
    await here.page.getByLabel("Electricity, per kWh").press("Tab");
    await here.page.getByRole("button", { name: "Compare" }).click();
    await here.page.getByRole("button", { name: "Stop" }).click();
    await mainSays(here.page, /Choose up to three kits/);
    await here.page.getByRole("button", { name: "Compare" }).click();
    await mainSays(here.page, /ready in .* departures/, 500_000);
    const table = here.page.getByRole("region", { name: "The winter in numbers" });
    expect(await table.getByRole("row").count()).toBe(4);
    const energies = await table.locator("tbody tr td:nth-child(4)").allTextContents();
    const [always, clock, planned] = energies.map((text) => Number.parseFloat(text.replace(",", "")));
    expect(always).toBeGreaterThan(clock);
    expect(planned).toBeGreaterThan(0);
    expect(planned).toBeLessThan(always);
    const months = here.page.getByRole("region", { name: "Month by month" });
    expect(await months.getByRole("rowheader", { name: "January" }).count()).toBe(1);
    await judgedAtSizes(here.page, "winter");
  });

  test("what was worked out is taken along as the document that the command line writes", async () => {
    const [download] = await Promise.all([
      here.page.waitForEvent("download"),
      here.page.getByRole("button", { name: "Export (JSON)" }).click(),
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
    await here.page.getByRole("checkbox", { name: "Tuesday" }).uncheck();
    await here.page.getByLabel("Weather of").selectOption("file");
    await bring("notes.csv", "time,air_c\n2025-10-01T00:00+01:00,cold\n");
    await here.page.getByRole("button", { name: "Compare" }).click();
    await here.page
      .getByText(/notes\.csv|csv_files\[0\], line 2/)
      .first()
      .waitFor();
    await judgedAtSizes(here.page, "winter, refused");

    const from = Date.parse("2024-09-30T00:00Z") / 1000;
    const to = Date.parse("2025-05-03T00:00Z") / 1000;
    await bring("winter-2024.csv", weatherCsv(madeYear({ place: PLACES[0]!, from, to, seed: 5, year: 1 })));
    await here.page.getByRole("button", { name: "Compare" }).click();
    await mainSays(here.page, /ready in .* departures/, 500_000);
    await here.page.getByText(/^winter-2024\.csv: mean/).waitFor();
  });

  test("nothing was complained of", () => expectNoComplaints(here));

  async function open(): Promise<void> {
    await here.page.setViewportSize(PHONE);
    await here.page.goto(`${here.url}#/winter/lynx`);
    await here.page.locator("main h1").waitFor();
  }

  async function bring(name: string, text: string): Promise<void> {
    await here.page
      .locator("input[type=file]")
      .setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
  }
});
