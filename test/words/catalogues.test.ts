import { expect, test } from "vitest";
import { COVERS, HEATERS, INSTALLATIONS } from "../../src/aircraft/index.js";
import { PANELS } from "../../src/airframe/index.js";
import { finding } from "../../src/findings/index.js";
import { GENERIC_OILS } from "../../src/properties/index.js";
import { en } from "../../src/words/en/index.js";
import { type Catalogue, speaker } from "../../src/words/index.js";
import { names, nb } from "../../src/words/nb/index.js";

// What must not compile is held by `tsc -p test`: a directive without an error under it is an error itself.

const { "was-stopped": _, ...incomplete } = en;
// @ts-expect-error a code without a phrase
const short: Catalogue = incomplete;
// @ts-expect-error a code that there is not
const unknown = finding("never-heard-of", {});
// @ts-expect-error a finding without a value that its words need
const empty = finding("not-calculated", {});

test("what does not compile would not be told", () => {
  const say = speaker({ temp: "c", wind: "mps" }, "en", short);
  for (const untold of [unknown, finding("was-stopped", {})]) expect(() => say(untold)).toThrow(TypeError);
  expect(say(empty)).toBeUndefined();
});

test("both languages have a phrase for every code, and no other", () => {
  expect(Object.keys(nb).sort()).toEqual(Object.keys(en).sort());
  expect(Object.keys(en).length).toBeGreaterThan(400);
});

test("values are told in the language and the units of the reader", () => {
  const cold = finding("kit-warm", { cold: { air_c: -20, wind_mps: 5 } });
  const [english, norwegian] = [
    speaker({ temp: "f", wind: "kt" }),
    speaker({ temp: "c", wind: "mps" }, "nb", nb),
  ].map((speak) => speak(cold).replaceAll("\u00a0", " "));
  expect(english).toMatch(/^-4 °F, 10 kt and milder/);
  expect(norwegian).toMatch(/^-20 °C, 5 m\/s og mildere/);
});

test("every heater, cover, engine, oil and piece of wing has a Norwegian name", () => {
  const all = [
    ...HEATERS.flatMap(({ name, elements }) => [name, ...elements.map((element) => element.name)]),
    ...[...COVERS, ...INSTALLATIONS, ...GENERIC_OILS, ...Object.values(PANELS)].map(({ name }) => name),
  ];
  const known = all.map((name) => name.replace(/ over (a|a full) tank$/, ""));
  expect(known.filter((name) => names[name] === undefined)).toEqual([]);
  expect(all.length).toBeGreaterThan(30);
});
