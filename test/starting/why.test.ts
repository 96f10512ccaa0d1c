import { describe, expect, test } from "vitest";
import { INSTALLATIONS, type Installation, installationById } from "../../src/aircraft/index.js";
import { explainWhy, type WhyTopic, whyTopics } from "../../src/starting/index.js";
import { plain } from "./plain.js";

const cases = INSTALLATIONS.flatMap((i) =>
  whyTopics(i).map((t): [string, WhyTopic, Installation] => [i.id, t, i]),
);
const reference = installationById("four-carburettor-160");

describe("why", () => {
  test.each(cases)(
    "%s, %s: a number with unit, sentence, equation, source and a curve through it",
    (_, topic, installation) => {
      const answer = explainWhy(topic, -20, installation);
      expect(Number.isFinite(answer.value)).toBe(true);
      expect(answer.plot.x_c).toHaveLength(81);
      expect(answer.plot.x_c[0]).toBe(-40);
      expect(answer.plot.y.every(Number.isFinite)).toBe(true);
      expect(answer.plot.y[20]).toBe(answer.value);
      expect(plain(answer.sentence)).toMatch(/-20 °C/);
      expect(plain(answer.sentence)).not.toMatch(/NaN|Infinity|undefined|e\+/);
      expect(answer.equation.length).toBeGreaterThan(10);
      expect(answer.source.length).toBeGreaterThan(20);
    },
  );

  test("curves go the way they should", () => {
    const rising = (topic: WhyTopic) => {
      const { y } = explainWhy(topic, 0, reference).plot;
      return y.every((value, i) => i === 0 || value >= y[i - 1]!);
    };
    for (const topic of [
      "cranking-power",
      "cranking-speed",
      "fuel-vapour",
      "bearing-clearance",
      "piston-clearance",
      "battery-freezing",
      "frost-point",
    ] as const) {
      expect(rising(topic), topic).toBe(true);
    }
    for (const topic of ["oil-viscosity", "oil-pressure", "cranking-drag"] as const) {
      expect(rising(topic), topic).toBe(false);
    }
  });

  test("sentences tell what decides", () => {
    expect(plain(explainWhy("oil-viscosity", -20, reference).sentence)).toMatch(
      /22 times as much as at 20 °C; it is too stiff to crank below -20 °C and may not reach the pump below -38 °C/,
    );
    expect(plain(explainWhy("cranking-drag", 20, reference).sentence)).toMatch(
      /compression and dry friction are most of it/,
    );
    expect(plain(explainWhy("cranking-drag", -20, reference).sentence)).toMatch(/oil films are most of it/);
    expect(plain(explainWhy("battery-freezing", -20, reference).sentence)).toMatch(
      /empty it would freeze at -9 °C/,
    );
    expect(plain(explainWhy("oil-pressure", -20, reference).sentence)).toMatch(
      /a rough range\. Stop the engine when there is no pressure within 10 s/,
    );
    expect(explainWhy("frost-point", -20, reference).value).toBeGreaterThan(-20);
    expect(plain(explainWhy("frost-point", 5, reference).sentence)).toMatch(/dew, not frost/);
  });

  test("an engine without the part has no such topic", () => {
    const radial = installationById("radial-nine-360");
    expect(whyTopics(radial)).not.toContain("bearing-clearance");
    expect(() => explainWhy("bearing-clearance", 0, radial)).toThrow(
      /^unknown topic: bearing-clearance \(radial-nine-360 has no such part or fit\)/,
    );
    expect(() => explainWhy("camshaft" as WhyTopic, 0, reference)).toThrow(
      /^unknown topic: camshaft \(expected one of oil-viscosity, /,
    );
    expect(() => explainWhy("oil-viscosity", -60, reference)).toThrow(
      /^invalid tempC: -60 \(expected -40 to 40 °C\)/,
    );
  });
});
