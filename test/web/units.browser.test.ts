import { describe, expect, test } from "vitest";
import { sentenceInUnits, WIND_UNITS } from "../../src/units/index.js";
import { sentenceOf } from "../../src/web/screens/night/sentence.js";
import {
  answerIn,
  criterionMargin,
  criterionValue,
  QUANTITIES,
  type Units,
} from "../../src/web/units/units.js";
import { en } from "../../src/web/words/en.js";
import { nb } from "../../src/web/words/nb.js";
import { saidIn } from "../../src/web/words/said.js";
import { onDemo, withoutBrowser } from "./browser.js";

const SETTINGS: readonly Units[] = (["c", "f"] as const).flatMap((temp) =>
  (["mps", "kt", "kmh"] as const).map((wind) => ({ temp, wind, language: "en-GB" })),
);
const others = ({ temp, wind }: Units) => {
  const winds = Object.values(WIND_UNITS).filter((unit) => unit !== WIND_UNITS[wind]);
  return new RegExp(`(?<![\\p{L}/])(${[...winds, temp === "f" ? "°C" : "°F"].join("|")})(?!\\p{L})`, "u");
};
const READER = { language: "en", zone: "UTC", now: 0 } as const;
const FAR_NORTH: Units = { temp: "f", wind: "kmh", language: "en-GB" };

describe("quantities in the user's units", () => {
  test.each(SETTINGS)("$temp and $wind: numbers, sentences and what is typed", (units) => {
    const say = saidIn({ ...READER, units });
    const told = [
      say.temp(-24),
      say.wind(5),
      criterionValue(-6, "c", units),
      criterionMargin(3, "c", units),
      sentenceInUnits("The wind is taken as 5 m/s and the air as -25 to -20 °C.", units),
    ];
    for (const text of told) expect(text).not.toMatch(others(units));
    expect(told[4]).toContain(WIND_UNITS[units.wind]);
    for (const typed of [0, 7, 33]) {
      for (const { shown, given } of Object.values(QUANTITIES))
        expect(shown(given(typed, units), units)).toBeCloseTo(typed, 9);
    }
  });

  test("winds are exact: 1852 m and 1000 m in an hour", () => {
    expect(saidIn({ ...READER, units: { ...FAR_NORTH, wind: "kt" } }).wind(1852 / 360)).toMatch(/^10.kt$/);
    expect(saidIn({ ...READER, units: FAR_NORTH }).wind(10)).toMatch(/^36.km\/h$/);
    expect(sentenceInUnits("between 2.5 and 5.0 m/s", FAR_NORTH)).toMatch(/^between 9\.0 and 18\.0.km\/h$/);
  });

  test("answers of Why follow, whatever is asked", () => {
    expect(answerIn("°C", FAR_NORTH)).toMatchObject({ unit: "°F" });
    expect(answerIn("°C", FAR_NORTH).shown(-40)).toBeCloseTo(-40, 9);
    expect(answerIn("K", FAR_NORTH).shown(10)).toBeCloseTo(18, 9);
    expect(answerIn("rpm", FAR_NORTH).shown(60)).toBe(60);
  });

  test("what would help, and why there is no plan, are said in them", () => {
    const aircraft = { name: "Lynx", departures: [1], heatersOn: [] } as unknown as Parameters<
      typeof sentenceOf
    >[0];
    const place = saidIn({ ...READER, units: FAR_NORTH });
    const state = {
      reasons: ["The sump would get too hot: 5 K over."],
      isBusy: false,
    } as unknown as Parameters<typeof sentenceOf>[1];
    expect(sentenceOf(aircraft, state, en, place).beside).toMatch(/9.F° over/);
  });
});

/** Every text of a language, functions called with words in place of values. */
function textsOf(words: unknown, path = ""): (readonly [string, string])[] {
  if (typeof words === "string") return [[path, words]];
  if (typeof words === "function") return [[path, String(words(...Array(words.length).fill("x")))]];
  if (typeof words !== "object" || words === null) return [];
  return Object.entries(words).flatMap(([key, value]) => textsOf(value, `${path}.${key}`));
}

test.each([
  ["en", en],
  ["nb", nb],
])("no text of %s has a unit of temperature or wind of its own", (_, words) => {
  const texts = textsOf(words).filter(([path]) => path !== ".forecast.example");
  expect(texts.length).toBeGreaterThan(600);
  expect(texts.filter(([, text]) => /°[CF]|m\/s|km\/h|\bkt\b|knots?\b/.test(text))).toEqual([]);
});

describe.skipIf(withoutBrowser)("screens", { timeout: 300_000 }, () => {
  const here = onDemo({}, async ({ page }) => {
    await page.evaluate(`localStorage.setItem("soakline-settings", JSON.stringify({
      ...JSON.parse(localStorage.getItem("soakline-settings") ?? "{}"), temp: "f", wind: "kmh" }))`);
    await page.reload();
    await page.locator("main h1").waitFor();
  });

  test.each(Object.keys(en.screens))("%s speaks °F and km/h alone", async (screen) => {
    await here.page.goto(`${here.url}#/${screen}`);
    await here.page.locator("main h1").waitFor();
    await here.page.locator("[aria-busy='true']").first().waitFor({ state: "detached", timeout: 120_000 });
    const text = await here.page.evaluate<string>(OWN_WORDS);
    expect(text.length).toBeGreaterThan(40);
    if (["night", "aircraft", "forecast", "why"].includes(screen)) expect(text).toMatch(/°F/);
    expect(text.match(/.{0,60}(°C|\d\s*K\b|m\/s|\d\s*kt\b).{0,30}/g) ?? []).toEqual([]);
  });
});

/** What a screen says, folds too, without cautions and sources, which keep their units, and without lists to choose from. */
const OWN_WORDS = `(() => {
  const main = document.querySelector("main").cloneNode(true);
  for (const each of main.querySelectorAll(".cautions, select, fieldset, textarea, style")) each.remove();
  for (const each of main.querySelectorAll("p, td, li")) if (/^Source\\b/.test(each.textContent.trim())) each.remove();
  return [...main.querySelectorAll("*")].flatMap((each) => [...each.childNodes].filter((n) => n.nodeType === 3).map((n) => n.textContent.trim()))
    .filter((line) => line !== "").join("\\n");
})()`;
