import { describe, expect, test } from "vitest";
import { CALIBRATED, PARAMETERS } from "../../src/aircraft/index.js";
import { createRandom, latinHypercubeNormals } from "../../src/numerics/index.js";
import { drawEnsemble, type MultiplierPosterior } from "../../src/simulation/index.js";
import { steadyWeather } from "../simulation/example-scenario.js";

const weather = steadyWeather(253.15);
const request = { members: 2000, seed: 5, weather };

/** Two parameters learned together, strongly against each other. */
const posterior: MultiplierPosterior = {
  names: ["ventilation", "heater_contact"],
  mean: [0.4, -0.3],
  factor: [
    [0.2, 0],
    [-0.12, 0.05],
  ],
};

const logsOf = (name: string, draws = drawEnsemble({ ...request, posterior })) =>
  Array.from(draws.multipliers.get(name) ?? [], Math.log);
const meanOf = (values: readonly number[]) => values.reduce((a, b) => a + b) / values.length;
const covariance = (a: readonly number[], b: readonly number[]) =>
  meanOf(a.map((value, k) => (value - meanOf(a)) * (b[k] - meanOf(b))));

describe("drawing from what was learned", () => {
  test("without it every draw is what the priors alone give, to the last bit", () => {
    // The rule written out again, so that a change of the usual path cannot pass unseen.
    const normals = latinHypercubeNormals(
      PARAMETERS.length + 1,
      request.members,
      createRandom(request.seed).stream("parameters"),
    );
    const draws = drawEnsemble(request);
    const { members } = request;
    PARAMETERS.forEach(({ name }, i) => {
      const { mean, factor } = CALIBRATED;
      const logs = Float64Array.from({ length: members }, (_, m) => {
        let log: number = mean[i];
        for (let j = 0; j <= i; j++) log += factor[i][j] * normals[j * members + m];
        return Math.exp(log);
      });
      expect(draws.multipliers.get(name)).toEqual(logs);
    });
  });

  test("means, spreads and correlation are those learned", () => {
    const a = logsOf("ventilation");
    const b = logsOf("heater_contact");
    expect(meanOf(a)).toBeCloseTo(0.4, 2);
    expect(meanOf(b)).toBeCloseTo(-0.3, 2);
    expect(Math.sqrt(covariance(a, a))).toBeCloseTo(0.2, 2);
    expect(Math.sqrt(covariance(b, b))).toBeCloseTo(0.13, 2);
    expect(covariance(a, b) / Math.sqrt(covariance(a, a) * covariance(b, b))).toBeCloseTo(-0.12 / 0.13, 1);
  });

  test("what was not learned, the start and the weather are drawn as without it", () => {
    const plain = drawEnsemble(request);
    const learned = drawEnsemble({ ...request, posterior });
    for (const { name } of PARAMETERS) {
      if (posterior.names.includes(name)) continue;
      expect(learned.multipliers.get(name), name).toEqual(plain.multipliers.get(name));
    }
    expect(learned.initialOffset).toEqual(plain.initialOffset);
    expect(learned.weather).toEqual(plain.weather);
  });

  test("refuses parameters nobody knows and rows that are missing", () => {
    const bad = { ...posterior, names: ["ventilation", "magic"] };
    expect(() => drawEnsemble({ ...request, posterior: bad })).toThrow("unknown parameter: magic");
    expect(() => drawEnsemble({ ...request, posterior: { ...posterior, mean: [0] } })).toThrow(
      "invalid posterior: 1 means and 2 rows (expected 2 of each)",
    );
  });
});
