import { describe, expect, test } from "vitest";
import { expectNoComplaints, onDemo, withoutBrowser } from "./browser.js";

describe.skipIf(withoutBrowser)("away", () => {
  const here = onDemo();

  test("asks when it was shut down; until somebody says, the cold side is shown with a cross", {
    timeout: 200_000,
  }, async () => {
    const { page, url } = here;
    await page.goto(`${url}#/away`);
    const facts = page.locator("main dl");
    await facts.waitFor();
    const asked = page.getByRole("group", { name: "When was it shut down?" });
    expect(await asked.getByRole("radio").count()).toBe(6);
    expect(await asked.getByRole("radio", { checked: true }).count()).toBe(0);
    const covers = page.getByRole("group", { name: "Is a cover on now?" });
    expect(await covers.getByRole("radio", { checked: true }).count()).toBe(0);
    expect(await facts.textContent()).toMatch(/taken as cold as the air .*, nothing on the cowl/);
    const placard = page.locator(".placard");
    expect(await placard.textContent()).toMatch(/not ready when back at .*Say when it was shut down/s);
    expect(await placard.locator(".mark.bad").count()).toBe(1);

    await asked.getByLabel("just now").check();
    await facts.getByText("just shut down from cruise").waitFor();
    expect(await facts.textContent()).toMatch(/Ready now\s*yes, /);
    expect(await placard.textContent()).not.toMatch(/Say when/);
    expectNoComplaints(here);
  });
});
