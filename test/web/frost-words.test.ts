import { expect, test } from "vitest";
import { en } from "../../src/web/words/en.js";
import { nb } from "../../src/web/words/nb.js";

test("no frost expected always says to look all the same, and frost at any chance to look", () => {
  expect(en.weather.noFrost).toMatch(/look all the same/);
  expect(nb.weather.noFrost).toMatch(/se etter likevel/);
  for (const { weather } of [en, nb])
    for (const sentence of [weather.frostFrom("06:00"), weather.frostPossible("06:00")])
      expect(sentence).toMatch(/look before take-off|se etter før avgang/);
  // The row by the hour never says that there is none.
  expect([en.weather.frost.none, nb.weather.frost.none]).toEqual(["no frost expected", "ingen rim ventet"]);
});
