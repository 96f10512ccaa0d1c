import { expect, test } from "vitest";
import { en } from "../../src/web/words/en.js";
import { nb } from "../../src/web/words/nb.js";

/** Every text of some sections, functions called with a word in place of each value. */
function textsOf(words: unknown, path = ""): string[] {
  if (typeof words === "string") return [`${path}: ${words}`];
  if (typeof words === "function") return [`${path}: ${words(...Array(words.length).fill("x"))}`];
  if (typeof words !== "object" || words === null) return [];
  return Object.entries(words).flatMap(([key, value]) => textsOf(value, `${path}.${key}`));
}

const { night: _night, away: _away, thaw: _thaw, kit: _kit, winter: _winter, ...english } = en;
const { night: _natt, away: _borte, thaw: _tin, kit: _utstyr, winter: _vinter, ...norwegian } = nb;

/** Words that an idea had beside its one name: weakest point, chance, OK in, cord, calculated, catalogue values, export. */
const OTHER_NAMES =
  /\bbinds?\b|binding|holds in|how sure|what decides|goes first|kept it|taken for true|made anew|extension lead|\bleads?\b|with you\b|general values?|worked out/i;
const OTHER_NAMES_NB =
  /panser|nok til å yte|holder i x|hvor sikkert|avgjør|lages på nytt|vanlige verdi|med deg/i;

test("one idea has one name on the screens", () => {
  const texts = textsOf(english);
  expect(texts.length).toBeGreaterThan(400);
  expect(texts.filter((text) => OTHER_NAMES.test(text.slice(text.indexOf(": "))))).toEqual([]);
});

test("and in bokmål", () => {
  expect(textsOf(norwegian).filter((text) => OTHER_NAMES_NB.test(text.slice(text.indexOf(": "))))).toEqual(
    [],
  );
});
