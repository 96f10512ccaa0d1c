import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  DESK,
  EVENING,
  expectNoComplaints,
  openDemo,
  openSite,
  PHONE,
  type Site,
  settled,
  visit,
  withoutBrowser,
} from "./browser.js";

describe.skipIf(withoutBrowser)("the main flows", () => {
  let site: Site;
  beforeAll(async () => {
    site = await openSite();
    // Another test file may be building the app first.
  }, 300_000);
  afterAll(() => site?.close());

  test("a departure moved by keys alone is planned anew, kept, and written into the logbook", {
    timeout: 180_000,
  }, async () => {
    const seen = await visit(site, { viewport: DESK });
    const { page } = seen;
    await page.keyboard.press("Tab");
    expect(await page.evaluate("document.activeElement?.textContent")).toContain("To the content");
    await openDemo(page);
    const flag = page.getByRole("slider", { name: "Departure of Lynx" });
    const sentence = page.locator(".placard .main");
    const before = await sentence.textContent();
    expect(before).toMatch(
      /Lynx: plug in at \d\d:\d\d, unplug at 09:45, start at 10:00\. Chance \d+ in \d+\./,
    );
    await tabTo("Departure of Lynx");
    await page.keyboard.press("PageUp");
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => sentence.textContent(), { timeout: 30_000 }).toMatch(/start at 11:05\./);
    expect(await flag.getAttribute("aria-valuetext")).toBe("11:05");
    await tabTo("Keep 11:05");
    await page.keyboard.press("Enter");
    await settled(page);
    expect(await sentence.textContent()).toMatch(/start at 11:05\./);
    await page.getByRole("link", { name: "Logbook" }).press("Enter");
    await page.getByText(/Lynx departure wanted: .* 11:05/).waitFor();
    await page.getByText("Lynx departure cancelled").waitFor();
    expect(await page.evaluate("document.activeElement?.tagName")).toBe("H1");
    expectNoComplaints(seen);
    await seen.context.close();

    async function tabTo(label: string): Promise<void> {
      for (let i = 0; i < 60; i++) {
        await page.keyboard.press("Tab");
        const here = await page.evaluate<string>(
          "document.activeElement === document.body ? '' : (document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '')",
        );
        if (here.includes(label)) return;
      }
      throw new Error(`no way by Tab to ${label}`);
    }
  });

  test.each([
    { way: "down a phone", viewport: PHONE, dx: 0, dy: 46 },
    { way: "across a desk", viewport: DESK, dx: 60, dy: 0 },
  ])(
    "a departure dragged $way is planned anew while it is held",
    { timeout: 180_000 },
    async ({ viewport, dx, dy }) => {
      const seen = await visit(site, { viewport });
      const { page } = seen;
      await openDemo(page);
      const flag = page.getByRole("slider", { name: "Departure of Lynx" });
      await flag.scrollIntoViewIfNeeded();
      const box = await flag.boundingBox();
      if (box === null) throw new Error("the flag has no place");
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + dx / 2, y + dy / 2);
      await page.mouse.move(x + dx, y + dy);
      const held = await flag.getAttribute("aria-valuetext");
      expect(held).not.toBe("10:00");
      const sentence = page.locator(".placard .main");
      await expect.poll(() => sentence.textContent(), { timeout: 30_000 }).toContain(`start at ${held}.`);
      await page.mouse.up();
      await page.getByRole("button", { name: "Back to 10:00" }).click();
      await expect.poll(() => sentence.textContent(), { timeout: 30_000 }).toContain("start at 10:00.");
      expectNoComplaints(seen);
      await seen.context.close();
    },
  );

  test("what happened is written down with one hand, and the next plan knows it", {
    timeout: 180_000,
  }, async () => {
    const seen = await visit(site, { viewport: PHONE });
    const { page } = seen;
    await openDemo(page);
    await page.getByRole("link", { name: "Aircraft" }).click();
    await page.getByRole("button", { name: "Plugged in" }).click();
    await page.getByText("Inspect wiring, pad and nearby hoses").first().waitFor();
    await page.getByRole("button", { name: "Log it" }).click();
    await page
      .locator(".placard .main", { hasText: "Lynx: heat is on. Unplug at 09:45" })
      .waitFor({ timeout: 30_000 });
    await page.getByRole("button", { name: "Unplugged" }).waitFor();
    await page.getByRole("button", { name: "Reading", exact: true }).click();
    await page.getByRole("spinbutton", { name: "It shows" }).fill("-11");
    await page.getByRole("button", { name: "Log it" }).click();
    await page.getByRole("link", { name: "Logbook" }).click();
    await page.getByText("Lynx read: oil −11 °C").waitFor();
    const entry = page.getByRole("listitem").filter({ hasText: "Lynx plugged in" });
    await entry.getByRole("button", { name: /Correct/ }).click();
    await page.getByRole("button", { name: "It never happened" }).click();
    await page.getByText("never happened", { exact: true }).waitFor();
    await page.getByRole("link", { name: "Night" }).click();
    await page.locator(".placard .main", { hasText: "Lynx: plug in at" }).waitFor({ timeout: 30_000 });
    expectNoComplaints(seen);
    await seen.context.close();
  });

  test("a newcomer with one aircraft has a plan in under two minutes", { timeout: 180_000 }, async () => {
    const seen = await visit(site, { viewport: PHONE });
    const { page } = seen;
    const began = Date.now();
    await page.getByRole("button", { name: /plan my aircraft/i }).click();
    await page.getByLabel("What do you call it?").fill("Ptarmigan");
    await page.getByLabel("Which engine is nearest?").selectOption("four-light-100");
    await page.getByLabel(/whole-engine electric set for 4/).check();
    await page.getByLabel(/insulated cowl cover/).check();
    const day = new Date(EVENING).toISOString().slice(8, 10);
    const hour = new Date(EVENING).toISOString().slice(11, 13);
    const next = String(new Date(Date.parse(EVENING) + 86_400_000).getUTCDate()).padStart(2, "0");
    await page
      .getByLabel("METAR and TAF, as they come")
      .fill(
        `METAR XXRV ${day}${hour}00Z 24006KT CAVOK M20/M23 Q1013=\n` +
          `TAF XXRV ${day}${hour}00Z ${day}${hour}/${next}24 24008KT CAVOK TXM17/${next}12Z TNM26/${next}06Z=`,
      );
    await page.getByText(/^Read:/).waitFor();
    await page.getByRole("button", { name: "Make the plan" }).click();
    await page.locator(".placard .main", { hasText: /Ptarmigan: / }).waitFor({ timeout: 60_000 });
    // Typing and reading are a person's; the machine's share must leave them nearly all of it.
    expect(Date.now() - began).toBeLessThan(30_000);
    await page.reload();
    await page.locator(".placard .main", { hasText: "Ptarmigan" }).waitFor();
    expectNoComplaints(seen);
    await seen.context.close();
  });

  test.each(["02:40", "07:30", "09:50", "13:00"])(
    "at %s too the demo has a night to plan",
    {
      timeout: 120_000,
    },
    async (clock) => {
      const seen = await visit(site, { viewport: PHONE, from: `2027-03-02T${clock}:00+01:00` });
      await openDemo(seen.page);
      await seen.page.reload();
      await seen.page.locator(".placard .main", { hasText: /[Ss]tart at|not ready at/ }).waitFor();
      expectNoComplaints(seen);
      await seen.context.close();
    },
  );

  test("the sheet for tonight is one page of black on white", { timeout: 120_000 }, async () => {
    const seen = await visit(site, { viewport: DESK });
    await openDemo(seen.page);
    const pdf = (await seen.page.pdf({ preferCSSPageSize: true })).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page\b/g)?.length).toBe(1);
    await seen.page.emulateMedia({ media: "print" });
    const colors = await seen.page.evaluate<string[]>(`
      [...new Set([...document.querySelectorAll("article.on-paper, article.on-paper *")].flatMap((each) => {
        const { color, backgroundColor, borderTopColor } = getComputedStyle(each);
        return [color, backgroundColor, borderTopColor];
      }))]`);
    for (const color of colors) expect(color).toMatch(/^(rgb\(0, 0, 0\)|rgba\(0, 0, 0, 0\))$/);
    expect(await seen.page.locator("nav").first().isVisible()).toBe(false);
    await seen.context.close();
  });

  test("bokmål, Fahrenheit and metres a second are shown everywhere at once", {
    timeout: 120_000,
  }, async () => {
    const seen = await visit(site, { viewport: DESK });
    const { page } = seen;
    await openDemo(page);
    await page.goto(`${site.url}#/settings`);
    await page.getByText("°F", { exact: true }).click();
    await page.getByText("m/s", { exact: true }).click();
    await page.getByText("Norsk bokmål").click();
    await page.getByRole("link", { name: "Natten" }).click();
    await page
      .getByText(/Lynx: sett på strøm klokken/)
      .first()
      .waitFor();
    await page.getByText(/kaldest −?\d+\s°F .* m\/s/).waitFor();
    expect(await page.evaluate("document.documentElement.lang")).toBe("nb");
    expectNoComplaints(seen);
    await seen.context.close();
  });
});
