import { expect, test } from "vitest";
// @ts-expect-error the check is plain JavaScript, run by npm run lint
import { deepImports, impureLines } from "../scripts/check-core-purity.mjs";

test("the clock and unseeded randomness are found wherever they stand", () => {
  const text = [
    "const a = 1;",
    "const t = Date.now();",
    "x = Math . random()",
    "new Date()",
    "performance.now()",
  ].join("\n");
  expect(impureLines(text)).toEqual([
    [2, "Date.now"],
    [3, "Math.random"],
    [4, "new Date()"],
    [5, "performance.now"],
  ]);
});

test("words in comments and dates made from numbers are allowed", () => {
  expect(impureLines("// not Date.now()\n * never Math.random\nnew Date(0)")).toEqual([]);
});

test("the app takes folders of the core by their index", () => {
  const file = "src/web/screens/night/sentence.ts";
  expect(deepImports(file, 'import { a } from "../../../planning/index.js";')).toEqual([]);
  expect(deepImports(file, 'import { a } from "../../data/app.svelte.js";')).toEqual([]);
  expect(deepImports(file, '\nimport { a } from "../../../planning/search.js";')).toEqual([
    [2, "planning/search.js"],
  ]);
});
