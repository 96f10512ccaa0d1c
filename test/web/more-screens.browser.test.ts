import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { demoOpening, scenarioOf } from "../../src/base/index.js";
import { deriveBase } from "../../src/logbook/index.js";
import { simulateFromDocument } from "../../src/questions/index.js";
import { english } from "../../src/words/index.js";
import {
  EVENING,
  expectNoComplaints,
  laterBy,
  mainSays,
  onDemo,
  PHONE,
  settled,
  withoutBrowser,
} from "./browser.js";
import { judgedAtSizes, unfold } from "./judge.js";

const HOUR = 3_600_000;
/** The demo was opened so long ago, so that a log of a night since then can be learned from. */
const AGO = 7 * HOUR;
const NOW = Date.parse(EVENING);

describe.skipIf(withoutBrowser)("the screens of less common questions", () => {
  const from = new Date(NOW - AGO).toISOString();
  const here = onDemo({ from }, async (seen) => {
    await settled(seen.page);
    await laterBy(seen, AGO);
  });

  test("why: another question and temperature give another answer", { timeout: 180_000 }, async () => {
    await open("why");
    const answer = here.page.locator(".big");
    const at20 = await answer.textContent();
    await here.page.getByRole("button", { name: "At: less" }).click();
    await expect.poll(() => answer.textContent()).not.toBe(at20);
    await here.page.getByLabel("Question").selectOption("bearing-clearance");
    await here.page.getByRole("heading", { name: "What is left of the main-bearing clearance?" }).waitFor();
    await judged("why");
  });

  test("thaw: says when it may leave", { timeout: 240_000 }, async () => {
    await open("thaw");
    await here.page.getByRole("button", { name: /^Work it out/ }).click();
    await main(/dry/i);
    await here.page.getByRole("heading", { name: "What to do" }).waitFor();
    await here.page.getByText("every control and the trim to their stops").waitFor();
    await here.page.getByText("Everything else").click();
    await here.page.getByRole("heading", { name: "When is what done" }).waitFor();
    await judged("thaw");
  });

  test("kit: two kits stand side by side", { timeout: 400_000 }, async () => {
    await open("kit/lynx");
    await here.page.getByRole("button", { name: "Compare" }).click();
    const cold = here.page.getByRole("region", { name: "In the cold" });
    await cold.waitFor({ timeout: 300_000 });
    expect(await cold.getByRole("columnheader").allTextContents()).toEqual([
      "Weather",
      "Lynx",
      "pad under the sump",
    ]);
    await judged("kit");
  });

  test("learn: a log of last night is learned from, used, and taken back", { timeout: 500_000 }, async () => {
    await open("learn/lynx");
    await judged("learn, before");
    await bring("early.csv", "time,oil_c\n2020-01-10T05:00Z,-27.5\n2020-01-10T05:10Z,-27.4\n");
    await here.page.getByRole("button", { name: "Learn from it" }).click();
    await main(/does not cover this log/);

    await bring("local.csv", "time,left thing\n2020-01-10 05:00,-27.5\n2020-01-10 05:10,-27.4\n");
    await here.page.getByLabel(/What is the column “left thing”/).selectOption("oil");
    await here.page.getByLabel(/In which unit is “left thing”/).selectOption("c");
    await here.page.getByText(/^2 readings/).waitFor();
    // The base's zone was taken, and what was chosen is remembered for the next file with these columns.
    await bring(
      "again.csv",
      "time,left thing\n2020-01-11 05:00,-27.5\n2020-01-11 05:10,-27.4\n2020-01-11 05:20,-27\n",
    );
    await here.page.getByText(/^3 readings/).waitFor();
    await bring("flight.csv", readFileSync("examples/logs/wren-flight.csv", "utf8"));
    await here.page.getByText(/^Cool-downs after a flight found, from/).waitFor();
    expect(await here.page.getByLabel("CHT1 … CHT6: Taken for").inputValue()).toBe("heads");

    await bring("night.csv", nightLog());
    await here.page.getByText(/left out or doubtful \(1\)/i).waitFor();
    await here.page.getByRole("button", { name: "Learn from it" }).click();
    await main(/^(Learned \d+ of|The log taught nothing)/, 300_000);
    const tonight = here.page.getByText(/^Before: .* With this log: /);
    await tonight.waitFor({ timeout: 180_000 });
    await judged("learn");
    await here.page.getByRole("button", { name: "Use it for Lynx" }).click();
    await here.page.getByText(/^Lynx is planned with what \d+ logged readings taught/).waitFor();
    await here.page.getByRole("button", { name: "Back to the catalogue values" }).click();
    await here.page.getByText("Lynx is planned with the catalogue values of its engine.").waitFor();
  });

  test("base: faults stand at their field; what is right is kept as a new set-up", {
    timeout: 400_000,
  }, async () => {
    await open("base");
    await here.page.getByLabel("Breaker [A]").fill("-3");
    await here.page.getByLabel("Breaker [A]").press("Tab");
    await here.page.getByRole("button", { name: "Save" }).click();
    await here.page.getByText("Not saved: one thing is wrong.").waitFor();
    expect(await here.page.getByLabel("Breaker [A]").getAttribute("aria-invalid")).toBe("true");
    await judged("base, with a fault");
    await here.page.getByLabel("Breaker [A]").fill("10");
    await here.page.getByLabel("Breaker [A]").press("Tab");
    await here.page.getByRole("button", { name: "Add an aircraft" }).click();
    const added = here.page
      .locator("details", { has: here.page.locator("summary", { hasText: "Aircraft 5" }) })
      .first();
    await added.getByLabel("Name", { exact: true }).first().fill("Stoat");
    await added.getByLabel("Name", { exact: true }).first().press("Tab");
    await here.page.getByRole("button", { name: "Save" }).click();
    await here.page.getByText("Saved. All plans are recalculated.").waitFor();
    await here.page.reload();
    // What this screen needs comes after the plans that the reload begins.
    await here.page.locator("summary", { hasText: "Stoat" }).waitFor({ timeout: 120_000 });
    expect(await here.page.getByLabel("Breaker [A]").inputValue()).toBe("10");
    expect(await unfold(here.page)).toBeGreaterThan(20);
    await judged("base, all unfolded");
    await open("settings");
    await here.page.getByRole("link", { name: "Set-up of the base" }).click();
    await here.page.getByRole("heading", { level: 1, name: "Set-up of the base" }).waitFor();
  });

  test("base: a switch over HTTP, a cart, a generator and hours of hands are asked for and kept", {
    timeout: 300_000,
  }, async () => {
    await open("base");
    const lynx = here.page
      .locator("details.sheet")
      .filter({ has: here.page.locator("summary", { hasText: /^Lynx$/ }) });
    // The test before may have left them open.
    for (const fold of [
      lynx,
      lynx.locator("details", { has: here.page.locator("summary", { hasText: /^Switches/ }) }),
    ]) {
      await fold.evaluate((details) => details.setAttribute("open", ""));
    }
    const onTime = lynx.getByLabel("On time [s]");
    await onTime.fill("");
    await onTime.press("Tab");
    // Over MQTT that is allowed, with a caution beside the switch.
    const stays = lynx.getByText(/If the broker or the network stops too, the heater stays on/);
    await stays.waitFor();
    await lynx.getByRole("radio", { name: "HTTP" }).check();
    await stays.waitFor({ state: "detached" });
    await here.page.getByRole("button", { name: "Save" }).click();
    // Three requests and no address of any.
    await here.page.getByText("Not saved: 3 things are wrong.").waitFor();
    const addresses = lynx.getByLabel("Address");
    for (const [n, path] of ["on", "off", "state"].entries()) {
      await addresses.nth(n).fill(`http://127.0.0.1:9/${path}`);
      await addresses.nth(n).press("Tab");
    }
    await here.page.getByRole("button", { name: "Save" }).click();
    await here.page.getByText("Not saved: one thing is wrong.").waitFor();
    await lynx.getByText(/over plain HTTP nobody switches it off when the server dies/).waitFor();
    expect(await onTime.getAttribute("aria-invalid")).toBe("true");
    await onTime.fill("120");
    await onTime.press("Tab");
    await lynx.getByLabel("Authorization header").first().fill("Bearer {RAMP}");
    await lynx.getByLabel("Authorization header").first().press("Tab");
    await here.page.getByRole("checkbox", { name: "a generator, started by hand" }).check();
    await here.page.getByText(/A generator's exhaust kills/).waitFor();
    await here.page.getByRole("button", { name: "Add a cart" }).click();
    await here.page.getByRole("button", { name: "Add hours" }).click();
    await here.page.getByLabel("From").fill("2027-01-15T06:00");
    const to = here.page.getByLabel("To", { exact: true });
    await to.fill("2027-01-15T05:00");
    await here.page.getByRole("button", { name: "Save" }).click();
    await here.page.getByText("Not saved: one thing is wrong.").waitFor();
    const hours = here.page.getByRole("group", { name: "Hours 1" });
    await hours.getByText("The end must be later than the beginning.").waitFor();
    await to.fill("");
    await here.page.getByRole("button", { name: "Save" }).click();
    await hours.getByText("Give a date and a time.").waitFor();
    expect(await to.getAttribute("aria-invalid")).toBe("true");
    await here.page.getByText("Not saved: one thing is wrong.").waitFor();
    await to.fill("2027-01-15T12:00");
    await here.page.getByRole("button", { name: "Save" }).click();
    await here.page.getByText("Saved. All plans are recalculated.").waitFor();
    await here.page.reload();
    await lynx.locator("summary").first().waitFor({ timeout: 120_000 });
    await unfold(here.page);
    expect(await addresses.nth(1).inputValue()).toBe("http://127.0.0.1:9/off");
    expect(await lynx.getByLabel("Authorization header").first().inputValue()).toBe("Bearer {RAMP}");
    expect(await here.page.getByLabel("From").inputValue()).toBe("2027-01-15T06:00");
    await here.page.getByRole("button", { name: "Remove Cart 1" }).waitFor();
    await judged("base, with HTTP, a cart and hours");
  });

  test("nothing was complained of", () => expectNoComplaints(here));

  async function open(address: string): Promise<void> {
    await here.page.setViewportSize(PHONE);
    await here.page.goto(`${here.url}#/${address}`);
    await here.page.locator("main h1").waitFor();
  }

  const main = (text: RegExp, timeout?: number) => mainSays(here.page, text, timeout);

  async function bring(name: string, text: string): Promise<void> {
    await here.page
      .getByLabel("Log file (CSV)")
      .setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
  }

  const judged = (name: string) => judgedAtSizes(here.page, name);
});

/** What three probes of the demo's first aircraft would have shown since the demo was opened, with a false reading. */
function nightLog(): string {
  const base = deriveBase(demoOpening(NOW - AGO).events);
  if (base === undefined) throw new Error("the demo has no set-up");
  const found = scenarioOf(base, "lynx", { now: NOW, from: "anchor", members: 20 });
  if (!found.ok) throw new Error(english(found.reason));
  const run = simulateFromDocument(found.document());
  if (run.status !== "completed") throw new Error(run.status);
  const { time_h, parts } = run.result.course;
  const start = found.facts.start;
  const rows = time_h.flatMap((h, i) => {
    const at = start + h * HOUR;
    if (at > NOW - HOUR / 2) return [];
    const off = 0.2 * Math.sin(i);
    const values = (["oil", "crankcase", "heads"] as const).map((part) =>
      (parts[part].p50_c[i] + off).toFixed(1),
    );
    return [[new Date(at).toISOString(), ...(i === 5 ? ["127.0", ...values.slice(1)] : values)].join(",")];
  });
  return ["time,oil_c,crankcase_c,heads_c", ...rows, ""].join("\n");
}
