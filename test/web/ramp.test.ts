import { describe, expect, test } from "vitest";
import {
  contrast,
  distance,
  heatColor,
  inkOn,
  labOfSrgb,
  luminance,
  RAMP,
} from "../../src/web/design/ramp.js";

type Triple = readonly [number, number, number];

// Full strength, G. Machado, M. Oliveira, L. Fernandes (2009), from memory; applied to linear light.
const SEEN_BY = {
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};

describe("the cold-to-warm scale", () => {
  test("its steps are equally far apart to the eye, within the rounding into the screen's colours", () => {
    const steps = RAMP.slice(1).map((color, i) => distance(labOfSrgb(RAMP[i]), labOfSrgb(color)));
    const mean = steps.reduce((a, b) => a + b) / steps.length;
    for (const step of steps) expect(Math.abs(step / mean - 1)).toBeLessThan(0.06);
  });

  test("it grows lighter with every step, and evenly", () => {
    const lightness = RAMP.map((color) => labOfSrgb(color)[0]);
    const steps = lightness.slice(1).map((l, i) => l - lightness[i]);
    const mean = steps.reduce((a, b) => a + b) / steps.length;
    for (const step of steps) expect(step).toBeGreaterThan(mean / 3);
  });

  test.each(Object.entries(SEEN_BY))("ten kelvins are told apart by %s eyes", (_, matrix) => {
    const seen = RAMP.map((color) => labOfSrgb(through(matrix, color)));
    for (let i = 0; i + 10 < seen.length; i++) {
      // 0.02 in OKLab is about a just noticeable difference of neighbouring patches.
      expect(distance(seen[i], seen[i + 10])).toBeGreaterThan(0.04);
    }
  });

  test("every number on it is readable (WCAG 2.2: 4.5)", () => {
    for (let temp = -60; temp <= 120; temp++) {
      const [ground, ink] = [heatColor(temp), inkOn(temp)].map((css) => luminance(rgbOf(css)));
      expect(contrast(ground, ink)).toBeGreaterThanOrEqual(4.5);
    }
  });
});

function through(m: readonly number[], color: Triple): Triple {
  const lin = color.map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4));
  const row = (k: number) => m[k] * lin[0] + m[k + 1] * lin[1] + m[k + 2] * lin[2];
  const out = [row(0), row(3), row(6)].map((v) => {
    const w = Math.min(1, Math.max(0, v));
    return w <= 0.0031308 ? 12.92 * w : 1.055 * w ** (1 / 2.4) - 0.055;
  });
  return [out[0], out[1], out[2]];
}

function rgbOf(css: string): Triple {
  const [r, g, b] = [1, 3, 5].map((i) => Number.parseInt(css.slice(i, i + 2), 16) / 255);
  return [r, g, b];
}
