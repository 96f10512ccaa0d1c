import { describe, expect, test } from "vitest";
import { CALIBRATED } from "../../src/aircraft/index.js";
import { type FittedAircraft, withFleet } from "../../src/learning/index.js";
import { createRandom } from "../../src/numerics/index.js";
import { PRIOR } from "../../src/simulation/index.js";

const BASE = "four-carburettor-160";
const SETTING = { place: "ramp", covers: ["insulated-cover"] } as const;
const USE = { setting: SETTING, heaters: ["sump-pad-220"] };
const NAMES = PRIOR.names;
const SDS = PRIOR.factor.map((row) => Math.hypot(...row));
const VENTILATION = NAMES.indexOf("ventilation");
const PRIOR_SD = SDS[VENTILATION];
/** What aircraft and their nights differ by; the rest they have in common. */
const BETWEEN_SD = Math.hypot(
  CALIBRATED.between_aircraft[VENTILATION],
  CALIBRATED.between_nights[VENTILATION],
);
const COMMON_SD = Math.sqrt(PRIOR_SD ** 2 - BETWEEN_SD ** 2);

/** An aircraft whose log told how far every multiplier is off the prior, to within a share of its spread. */
function learned(
  off: readonly number[],
  left: number,
  setting: typeof SETTING | null = SETTING,
): FittedAircraft {
  return {
    version: 1,
    base: BASE,
    multipliers: {
      names: NAMES,
      mean: PRIOR.mean.map((mean, i) => mean + off[i]),
      factor: SDS.map((sd, i) => SDS.map((_, j) => (i === j ? left * sd : 0))),
    },
    evidence: [
      {
        ...{ origin: "made", hash: "1", readings: 100, from: 0, to: 1, heaters: USE.heaters, probes: [] },
        settings: setting === null ? [] : [setting],
      },
    ],
  };
}

const flat = (value: number) => NAMES.map(() => value);
const offOf = (aircraft: FittedAircraft) => aircraft.multipliers.mean[VENTILATION] - PRIOR.mean[VENTILATION];
const sdOf = (aircraft: FittedAircraft, i: number) => Math.hypot(...aircraft.multipliers.factor[i]);
const fleetOf = (...all: FittedAircraft[]) => all.map((one, n) => ({ name: `aircraft ${n}`, learned: one }));

describe("aircraft of one base", () => {
  test("share what they have in common: never all of it, and no more than the others know", () => {
    const certain = fleetOf(...Array.from({ length: 50 }, () => learned(flat(0.4), 0.05)));
    const one = withFleet(undefined, certain, USE, BASE)!;
    expect(offOf(one)).toBeCloseTo(0.4, 1);
    // However many there are, the next one still differs by what is its own.
    expect(sdOf(one, VENTILATION)).toBeGreaterThan(BETWEEN_SD);
    expect(sdOf(one, VENTILATION)).toBeLessThan(1.1 * BETWEEN_SD);
    const single = withFleet(undefined, certain.slice(0, 1), USE, BASE)!;
    expect(offOf(single)).toBeCloseTo(0.4 * (COMMON_SD / PRIOR_SD) ** 2, 1);
    expect(sdOf(single, VENTILATION)).toBeLessThan(PRIOR_SD);
  });

  test("of another kind, or stood otherwise, teach nothing of it", () => {
    expect(withFleet(undefined, fleetOf(learned(flat(0.4), 0.05)), USE, "two-light-60")).toBeUndefined();
    const hangar = withFleet(undefined, fleetOf(learned(flat(0.4), 0.05, null)), USE, BASE)!;
    // Only what the other parameters tell of it.
    expect(Math.abs(offOf(hangar))).toBeLessThan(0.1);
    expect(sdOf(hangar, VENTILATION)).toBeGreaterThan(0.95 * PRIOR_SD);
  });

  test("move one with a log of its own by little, and name the others", () => {
    const own = learned(flat(-0.3), 0.2);
    const both = withFleet(own, fleetOf(learned(flat(0.4), 0.1), learned(flat(0.4), 0.1)), USE, BASE)!;
    expect(offOf(both)).toBeGreaterThan(-0.3);
    expect(offOf(both)).toBeLessThan(-0.2);
    expect(sdOf(both, VENTILATION)).toBeLessThan(0.2 * PRIOR_SD);
    expect(both.evidence.map(({ of }) => of)).toEqual(["aircraft 0", "aircraft 1", undefined]);
    expect(withFleet(own, [], USE, BASE)).toBe(own);
  });

  test("drawn as the hierarchy says: the band of the next aircraft holds nine times in ten, and is narrower", () => {
    const random = createRandom(5).stream("fleet");
    let held = 0;
    let narrower = 0;
    const trials = 400;
    for (let n = 0; n < trials; n++) {
      const common = COMMON_SD * random.normal();
      const next = common + BETWEEN_SD * random.normal();
      const left = 0.3;
      const others = Array.from({ length: 4 }, () => {
        const truth = common + BETWEEN_SD * random.normal();
        // A log that leaves a share of the prior's sd: noise of precision 1/left² - 1, shrunk by the prior.
        const noise = PRIOR_SD / Math.sqrt(1 / left ** 2 - 1);
        const mean = (1 - left ** 2) * (truth + noise * random.normal());
        return learned(flat(mean), left);
      });
      const { multipliers } = withFleet(undefined, fleetOf(...others), USE, BASE)!;
      const sd = Math.hypot(...multipliers.factor[VENTILATION]);
      if (Math.abs(next - (multipliers.mean[VENTILATION] - PRIOR.mean[VENTILATION])) <= 1.645 * sd) held++;
      narrower += sd / PRIOR_SD / trials;
    }
    // 400 trials tell a share of 0.9 to ±0.03 (two standard deviations).
    expect(held / trials).toBeGreaterThan(0.87);
    expect(held / trials).toBeLessThan(0.93);
    expect(narrower).toBeLessThan(0.92);
  });
});
