import { expect, test } from "vitest";
import { CAUTIONS, type Caution, HEATERS, INSTALLATIONS } from "../../src/aircraft/index.js";
import { AIRFRAME_CAUTIONS } from "../../src/airframe/caution.js";
import { BASE_CAUTIONS } from "../../src/base-documents/cautions.js";
import { explainWhy, START_CAUTIONS, whyTopics } from "../../src/starting/index.js";
import { english } from "../../src/words/index.js";

/** Makers of engines, aircraft, batteries and oil: they stand in sources only, however short the list must be. */
const COMPANIES =
  /\b(Lycoming|Continental|Cessna|Rotax|Piper|Beech\w*|Mooney|Cirrus|Diamond|Pratt|Wright|Franklin|Jabiru|Teledyne|Textron|Superior|Concorde|Gill|Shell|AeroShell|Phillips|Exxon|Mobil)\b/i;

const heaters: readonly { readonly cautions: readonly Caution[]; readonly rejected?: Caution }[] = HEATERS;
const cautions: readonly Caution[] = [
  ...Object.values(CAUTIONS),
  ...Object.values(START_CAUTIONS),
  ...Object.values(AIRFRAME_CAUTIONS),
  ...Object.values(BASE_CAUTIONS),
  ...heaters.flatMap((heater) => [...heater.cautions, ...(heater.rejected ? [heater.rejected] : [])]),
];

test("no caution names a company; its source may", () => {
  expect(cautions.length).toBeGreaterThan(40);
  for (const one of cautions) {
    expect(english(one)).not.toMatch(COMPANIES);
    expect(one.source).not.toBe("");
  }
  expect(cautions.some(({ source }) => COMPANIES.test(source))).toBe(true);
});

test("no answer of `why` and no step of a heater names one", () => {
  const sentences = INSTALLATIONS.flatMap((installation) =>
    whyTopics(installation).flatMap((topic) =>
      [-30, 0, 20].map((celsius) => {
        const { title, sentence } = explainWhy(topic, celsius, installation);
        return `${english(title)} ${english(sentence)}`;
      }),
    ),
  );
  const steps = HEATERS.flatMap(({ name, procedure }) => [name, ...(procedure?.steps ?? []).map(english)]);
  for (const text of [...sentences, ...steps]) expect(text).not.toMatch(COMPANIES);
});
