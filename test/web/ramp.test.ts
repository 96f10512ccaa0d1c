import { describe, expect, test } from "vitest";
import { heatColor, inkOn } from "../../src/web/design/ramp.js";

type Triple = readonly [number, number, number];

/** sRGB [0..1] of every kelvin of the scale. */
const RAMP = Array.from({ length: 101 }, (_, i) => rgbOf(heatColor(i - 40)));

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
    // The screen's colours are rounded to 1/255: that is up to a third of a step, and little of ten.
    for (const step of steps) expect(Math.abs(step / mean - 1)).toBeLessThan(0.35);
    for (let i = 0; i + 10 <= steps.length; i++) {
      const ten = steps.slice(i, i + 10).reduce((a, b) => a + b);
      expect(Math.abs(ten / (10 * mean) - 1)).toBeLessThan(0.06);
    }
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
  const lin = color.map(linear);
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

function contrast(a: number, b: number): number {
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Relative luminance of an sRGB colour (WCAG 2.2). */
function luminance(srgb: Triple): number {
  const [r, g, b] = srgb.map(linear);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function labOfSrgb(srgb: Triple): Triple {
  const [r, g, b] = srgb.map(linear);
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

function distance(p: Triple, q: Triple): number {
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

function linear(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}
