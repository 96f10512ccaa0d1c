/** Writes dy/db at x into `slopes` and returns y. */
export type NistModel = (b: Float64Array, x: number, x2: number, slopes: Float64Array) => number;

const { exp, log, PI } = Math;

/** The models of the data sets, as their files print them, with slopes by hand (a test holds them against differences). */
export const NIST_MODELS: Readonly<Record<string, NistModel>> = {
  Bennett5: ([b1, b2, b3], x, _, slopes) => {
    const power = (b2 + x) ** (-1 / b3);
    slopes.set([power, (-b1 * power) / (b3 * (b2 + x)), (b1 * power * log(b2 + x)) / b3 ** 2]);
    return b1 * power;
  },
  BoxBOD: saturation,
  Chwirut1: decayOverLine,
  Chwirut2: decayOverLine,
  DanWood: ([b1, b2], x, _, slopes) => {
    const power = x ** b2;
    slopes.set([power, b1 * power * log(x)]);
    return b1 * power;
  },
  Eckerle4: ([b1, b2, b3], x, _, slopes) => {
    const z = (x - b3) / b2;
    const y = (b1 / b2) * exp(-0.5 * z * z);
    slopes.set([y / b1, (y * (z * z - 1)) / b2, (y * z) / b2]);
    return y;
  },
  ENSO: (b, x, _, slopes) => {
    slopes[0] = 1;
    slopes[1] = Math.cos((2 * PI * x) / 12);
    slopes[2] = Math.sin((2 * PI * x) / 12);
    let y = b[0] + b[1] * slopes[1] + b[2] * slopes[2];
    for (const k of [3, 6]) {
      const angle = (2 * PI * x) / b[k];
      slopes[k + 1] = Math.cos(angle);
      slopes[k + 2] = Math.sin(angle);
      slopes[k] = (angle / b[k]) * (b[k + 1] * slopes[k + 2] - b[k + 2] * slopes[k + 1]);
      y += b[k + 1] * slopes[k + 1] + b[k + 2] * slopes[k + 2];
    }
    return y;
  },
  Gauss1: twoPeaks,
  Gauss2: twoPeaks,
  Gauss3: twoPeaks,
  Hahn1: (b, x, _, slopes) => rational(b, x, 3, slopes),
  Kirby2: (b, x, _, slopes) => rational(b, x, 2, slopes),
  Lanczos1: threeDecays,
  Lanczos2: threeDecays,
  Lanczos3: threeDecays,
  MGH09: ([b1, b2, b3, b4], x, _, slopes) => {
    const below = x * x + x * b3 + b4;
    const y = (b1 * (x * x + x * b2)) / below;
    slopes.set([(x * x + x * b2) / below, (b1 * x) / below, (-y * x) / below, -y / below]);
    return y;
  },
  MGH10: ([b1, b2, b3], x, _, slopes) => {
    const growth = exp(b2 / (x + b3));
    const y = b1 * growth;
    slopes.set([growth, y / (x + b3), (-y * b2) / (x + b3) ** 2]);
    return y;
  },
  MGH17: ([b1, b2, b3, b4, b5], x, _, slopes) => {
    const [first, second] = [exp(-x * b4), exp(-x * b5)];
    slopes.set([1, first, second, -x * b2 * first, -x * b3 * second]);
    return b1 + b2 * first + b3 * second;
  },
  Misra1a: saturation,
  Misra1b: ([b1, b2], x, _, slopes) => {
    const base = 1 + (b2 * x) / 2;
    slopes.set([1 - base ** -2, b1 * x * base ** -3]);
    return b1 * (1 - base ** -2);
  },
  Misra1c: ([b1, b2], x, _, slopes) => {
    const base = 1 + 2 * b2 * x;
    slopes.set([1 - base ** -0.5, b1 * x * base ** -1.5]);
    return b1 * (1 - base ** -0.5);
  },
  Misra1d: ([b1, b2], x, _, slopes) => {
    const base = 1 + b2 * x;
    slopes.set([(b2 * x) / base, (b1 * x) / base ** 2]);
    return (b1 * b2 * x) / base;
  },
  Nelson: ([b1, b2, b3], x, x2, slopes) => {
    const decay = exp(-b3 * x2);
    slopes.set([1, -x * decay, b2 * x * x2 * decay]);
    return b1 - b2 * x * decay;
  },
  Rat42: ([b1, b2, b3], x, _, slopes) => {
    const e = exp(b2 - b3 * x);
    const y = b1 / (1 + e);
    slopes.set([1 / (1 + e), (-y * e) / (1 + e), (y * e * x) / (1 + e)]);
    return y;
  },
  Rat43: ([b1, b2, b3, b4], x, _, slopes) => {
    const e = exp(b2 - b3 * x);
    const y = b1 / (1 + e) ** (1 / b4);
    const slope = (y * e) / (b4 * (1 + e));
    slopes.set([y / b1, -slope, slope * x, (y * log(1 + e)) / b4 ** 2]);
    return y;
  },
  Roszman1: ([b1, b2, b3, b4], x, _, slopes) => {
    const below = x - b4;
    const circle = PI * (below * below + b3 * b3);
    slopes.set([1, -x, -below / circle, -b3 / circle]);
    return b1 - b2 * x - Math.atan(b3 / below) / PI;
  },
  Thurber: (b, x, _, slopes) => rational(b, x, 3, slopes),
};

function saturation([b1, b2]: Float64Array, x: number, _: number, slopes: Float64Array): number {
  const decay = exp(-b2 * x);
  slopes.set([1 - decay, b1 * x * decay]);
  return b1 * (1 - decay);
}

function decayOverLine([b1, b2, b3]: Float64Array, x: number, _: number, slopes: Float64Array): number {
  const y = exp(-b1 * x) / (b2 + b3 * x);
  slopes.set([-x * y, -y / (b2 + b3 * x), (-x * y) / (b2 + b3 * x)]);
  return y;
}

function twoPeaks(b: Float64Array, x: number, _: number, slopes: Float64Array): number {
  const decay = exp(-b[1] * x);
  slopes[0] = decay;
  slopes[1] = -b[0] * x * decay;
  let y = b[0] * decay;
  for (const k of [2, 5]) {
    const z = (x - b[k + 1]) / b[k + 2];
    slopes[k] = exp(-z * z);
    slopes[k + 1] = (2 * b[k] * slopes[k] * z) / b[k + 2];
    slopes[k + 2] = slopes[k + 1] * z;
    y += b[k] * slopes[k];
  }
  return y;
}

function threeDecays(b: Float64Array, x: number, _: number, slopes: Float64Array): number {
  let y = 0;
  for (const k of [0, 2, 4]) {
    slopes[k] = exp(-b[k + 1] * x);
    slopes[k + 1] = -x * b[k] * slopes[k];
    y += b[k] * slopes[k];
  }
  return y;
}

/** (b1 + b2 x + … x^degree) / (1 + … x^degree) */
function rational(b: Float64Array, x: number, degree: number, slopes: Float64Array): number {
  let above = 0;
  let below = 1;
  for (let k = 0; k <= degree; k++) above += b[k] * x ** k;
  for (let k = 1; k <= degree; k++) below += b[degree + k] * x ** k;
  for (let k = 0; k <= degree; k++) slopes[k] = x ** k / below;
  for (let k = 1; k <= degree; k++) slopes[degree + k] = (-above * x ** k) / below ** 2;
  return above / below;
}
