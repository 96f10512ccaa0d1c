// One scale of colour for all temperatures on all screens: from night blue over grey to lamp yellow. Lightness always
// rises with temperature, and the way from blue to yellow is the one that the common kinds of colour blindness keep.
// Constructed for this project in OKLab (B. Ottosson, 2020: matrices from its author's publication, from memory).

type Triple = readonly [number, number, number];

/** Lightness [0..1], chroma, hue [degrees] of the points the scale passes through; project judgement. */
const KNOTS: readonly Triple[] = [
  [0.27, 0.1, 285],
  [0.42, 0.125, 266],
  [0.55, 0.085, 250],
  [0.66, 0.02, 230],
  [0.76, 0.09, 82],
  [0.84, 0.135, 86],
  [0.92, 0.13, 98],
];

/** [°C] ends of the scale; what lies beyond has the colour of the end, its number says the rest. */
export const RAMP_COLDEST = -40;
export const RAMP_WARMEST = 60;

/** Steps of the scale; one is 1 K. */
const STEPS = 100;

/** sRGB [0..1] of every step, equally far apart in OKLab. */
export const RAMP: readonly Triple[] = evenSteps(KNOTS.map(labOfPolar), STEPS).map(srgbOfLab);

/** Colour of a temperature [°C], for CSS. */
export function heatColor(tempC: number): string {
  return cssOf(RAMP[stepOf(tempC)]);
}

/** Ink that is read best on the colour of a temperature [°C]. */
export function inkOn(tempC: number): string {
  const ground = luminance(RAMP[stepOf(tempC)]);
  return contrast(ground, 1) > contrast(ground, 0) ? "#ffffff" : "#000000";
}

export function contrast(a: number, b: number): number {
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Relative luminance of an sRGB colour (WCAG 2.2). */
export function luminance(srgb: Triple): number {
  const [r, g, b] = srgb.map(linear);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

export function labOfSrgb(srgb: Triple): Triple {
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

function stepOf(tempC: number): number {
  const share = (tempC - RAMP_COLDEST) / (RAMP_WARMEST - RAMP_COLDEST);
  return Math.round(Math.min(1, Math.max(0, Number.isFinite(share) ? share : 0)) * STEPS);
}

/** Points on the line through the knots, as far apart as each other. */
function evenSteps(knots: readonly Triple[], steps: number): Triple[] {
  const fine = knots.slice(1).flatMap((to, k) => {
    const from = knots[k];
    return Array.from({ length: 200 }, (_, i) => mix(from, to, (i + 1) / 200));
  });
  const line = [knots[0], ...fine];
  const run = [0];
  for (let i = 1; i < line.length; i++) run.push(run[i - 1] + distance(line[i - 1], line[i]));
  const whole = run[run.length - 1];
  let k = 0;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const wanted = (whole * i) / steps;
    while (k < run.length - 2 && run[k + 1] < wanted) k++;
    return mix(line[k], line[k + 1], (wanted - run[k]) / (run[k + 1] - run[k]));
  });
}

export function distance(p: Triple, q: Triple): number {
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

function mix(p: Triple, q: Triple, share: number): Triple {
  return [0, 1, 2].map((i) => p[i] + (q[i] - p[i]) * share) as unknown as Triple;
}

function labOfPolar([lightness, chroma, hue]: Triple): Triple {
  const angle = (hue * Math.PI) / 180;
  return [lightness, chroma * Math.cos(angle), chroma * Math.sin(angle)];
}

function srgbOfLab([L, a, b]: Triple): Triple {
  const l = (L + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (L - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (L - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    gamma(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
    gamma(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
    gamma(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s),
  ];
}

function gamma(value: number): number {
  const v = Math.min(1, Math.max(0, value));
  return v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055;
}

function linear(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

function cssOf(srgb: Triple): string {
  return `#${srgb
    .map((v) =>
      Math.round(v * 255)
        .toString(16)
        .padStart(2, "0"),
    )
    .join("")}`;
}
