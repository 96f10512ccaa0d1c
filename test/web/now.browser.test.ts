import { describe, expect, test } from "vitest";
import { expectNoComplaints, laterBy, onDemo, settled, withoutBrowser } from "./browser.js";
import { judgedAtSizes, unfold } from "./judge.js";

/** As long as Wren's pad has been on. */
const HEATED = 4 * 3_600_000;

describe.skipIf(withoutBrowser)("can it start now", () => {
  const here = onDemo({}, async (seen) => {
    await openAircraft("Wren");
    await seen.page.getByRole("button", { name: "Plugged in" }).click();
    await seen.page.getByRole("button", { name: "Log it" }).click();
    await seen.page.getByRole("button", { name: "Unplugged" }).waitFor();
    await laterBy(seen, HEATED);
    await openAircraft("Wren");
  });

  const sheet = () => here.page.getByRole("region", { name: "Can it start now?" });
  /** Origin, middle and band of a part, as its row in the table says. */
  async function part(name: string): Promise<{ known: string; middle: string; band: string }> {
    const row = here.page.getByRole("row", { name: new RegExp(`^${name} `) });
    const [middle, band] = await row.getByRole("cell").allTextContents();
    return { known: (await row.locator("small").textContent()) ?? "", middle, band };
  }

  test("hours of a pad under the oil: the oil is warm, the crankshaft is not, and it is said so", {
    timeout: 240_000,
  }, async () => {
    await sheet().getByText("Wren is not ready to start").waitFor({ timeout: 60_000 });
    await sheet()
      .getByText(/^The oil is warm enough, the rest is not: crankshaft and bearings/)
      .waitFor();
    await settled(here.page);
    await judgedAtSizes(here.page, "now");
    await unfold(here.page);
    const [oil, shaft] = [await part("oil"), await part("crankshaft")];
    expect(celsius(oil.middle) - celsius(shaft.middle)).toBeGreaterThan(20);
    expect(celsius(shaft.middle)).toBeLessThan(0);
    expect(shaft.band).toMatch(/−?\d+ … −?\d+/);
    expect([oil.known, shaft.known]).toEqual(["calculated", "calculated"]);
    await sheet()
      .getByText(/Nothing was measured/)
      .waitFor();
    await judgedAtSizes(here.page, "now, all unfolded");
  });

  test("what another wind or the cover taken off would mean is answered first, then decided", {
    timeout: 240_000,
  }, async () => {
    await openAircraft("Lynx");
    await settled(here.page);
    const whatIf = here.page.getByRole("region", { name: "What if" });
    const answer = whatIf.locator("p[aria-live]");
    await whatIf.getByRole("slider", { name: /^Wind/ }).fill("1.3");
    const plugIn = /Lynx: plug in at (?:\w+ )?(\d\d:\d\d), .* Now planned: plug in at (?:\w+ )?(\d\d:\d\d)\./;
    await expect.poll(() => answer.textContent(), { timeout: 60_000 }).toMatch(plugIn);
    await whatIf.getByText("First estimate").waitFor({ state: "detached", timeout: 60_000 });
    const [, windy, planned] = plugIn.exec((await answer.textContent()) ?? "") ?? [];
    // In more wind an engine that is heated loses more: the plug has to go in earlier.
    expect(minutesBefore(windy)).toBeGreaterThan(minutesBefore(planned));
    await whatIf.getByText("off", { exact: true }).click();
    await expect
      .poll(() => answer.textContent(), { timeout: 60_000 })
      .toMatch(/Lynx: plug in at|Lynx: not ready at 10:00: .* Weakest point/);
    await whatIf.getByText("First estimate").waitFor({ state: "detached", timeout: 60_000 });
    const bare = plugIn.exec((await answer.textContent()) ?? "")?.[1];
    if (bare !== undefined) expect(minutesBefore(bare)).toBeGreaterThan(minutesBefore(windy));
    await judgedAtSizes(here.page, "what if");
    await openAircraft("Wren");
  });

  test("a reading counts, and the table tells what was read from what was worked out", {
    timeout: 240_000,
  }, async () => {
    await unfold(here.page);
    const before = celsius((await part("oil")).middle);
    await here.page.getByRole("button", { name: "Reading", exact: true }).click();
    await here.page.getByRole("spinbutton", { name: "It shows" }).fill(String(Math.round(before - 12)));
    await here.page.getByText("10 min ago").click();
    await here.page.getByRole("button", { name: "Log it" }).click();
    await expect.poll(async () => (await part("oil")).known, { timeout: 60_000 }).toMatch(/^read \d\d:\d\d$/);
    const after = celsius((await part("oil")).middle);
    // Below what was worked out: what is shown moves towards it.
    expect(after).toBeLessThan(before - 5);
    expect((await part("crankshaft")).known).toBe("calculated");
    expect(
      await sheet()
        .getByText(/Nothing was measured/)
        .count(),
    ).toBe(0);
  });

  test("without a departure the engine bay and the answer are there all the same", {
    timeout: 240_000,
  }, async () => {
    await neverHappened(/Wren departure wanted/);
    await openAircraft("Wren");
    await here.page.locator(".placard .main", { hasText: "No departure is wanted for Wren" }).waitFor();
    await sheet().getByText("Wren is not ready to start").waitFor({ timeout: 60_000 });
    await here.page.getByRole("img", { name: /^Section through the engine bay of Wren/ }).waitFor();
    expect(await here.page.getByRole("slider", { name: "Time shown" }).count()).toBe(0);
    await judgedAtSizes(here.page, "now without a departure");
    await unfold(here.page);
    await judgedAtSizes(here.page, "now without a departure, all unfolded");
  });

  test("without weather it says that nothing is known yet, why, and what would help", {
    timeout: 240_000,
  }, async () => {
    await neverHappened(/[Ff]orecast/);
    await openAircraft("Wren");
    await sheet().getByText("The state of Wren is not known yet.").waitFor({ timeout: 60_000 });
    await sheet()
      .getByText(/no forecast was entered/)
      .waitFor();
    await judgedAtSizes(here.page, "now unknown");
    await sheet()
      .getByRole("link", { name: /enter a METAR/ })
      .click();
    await here.page.getByLabel("METAR and TAF, as they come").waitFor();
    expectNoComplaints(here);
  });

  async function openAircraft(name: string): Promise<void> {
    await here.page.goto(`${here.url}#/aircraft`);
    await here.page.getByRole("link", { name, exact: true }).click();
    await here.page
      .getByRole("heading", { level: 1, name: `Aircraft: ${name}` })
      .waitFor({ state: "attached" });
  }

  async function neverHappened(entry: RegExp): Promise<void> {
    await here.page.goto(`${here.url}#/logbook`);
    const item = here.page.getByRole("listitem").filter({ hasText: entry }).first();
    await item.getByRole("button", { name: /Correct/ }).click();
    await here.page.getByRole("button", { name: "It never happened" }).click();
    await here.page.getByText("never happened", { exact: true }).first().waitFor();
  }
});

/** [min] before noon, over midnight. */
function minutesBefore(clock: string): number {
  const [hours, minutes] = clock.split(":").map(Number);
  return (24 * 60 + 12 * 60 - (60 * hours + minutes)) % (24 * 60);
}

function celsius(text: string): number {
  return Number.parseFloat(text.replace("−", "-"));
}
