import { expect, test } from "vitest";
import { INSTALLATIONS } from "../../src/aircraft/index.js";
import { FALL_EXCESS, FALL_SHARE, FALL_TIME, placeKind } from "../../src/learning/log-rules.js";
import { drawEnsemble, prepareRun, timelineOf } from "../../src/simulation/index.js";
import { coldSoaked, steadyWeather } from "../simulation/example-scenario.js";

const MEMBERS = 100;
const MINUTES = 90;

test.each(
  INSTALLATIONS.flatMap((installation) => [
    { installation, excess: 60, wind: 12 },
    { installation, excess: 150, wind: 5 },
  ]),
)(
  "$installation.id, $excess K over the air in $wind m/s, uncovered: no part loses its excess as quickly as a probe that fell out",
  ({ installation, excess, wind }) => {
    const weather = steadyWeather(243.15, wind, 3);
    const configuration = {
      place: "ramp" as const,
      heatersOn: new Set<string>(),
      coversOn: new Set<string>(),
    };
    const scenario = coldSoaked({
      ...{ installation, weather, kit: { heaters: [], covers: [] }, duration: MINUTES * 60 },
      initial: { configuration, temps: new Map(), tempOthers: 243.15 + excess, sd: 0 },
    });
    const run = prepareRun(scenario, drawEnsemble({ members: MEMBERS, seed: 1, weather }));
    const sampleTimes = Array.from({ length: MINUTES + 1 }, (_, m) => m * 60);
    const timeline = timelineOf(configuration, []);
    const { samples, status } = run.advance({
      state: run.initial,
      from: 0,
      to: MINUTES * 60,
      timeline,
      sampleTimes,
    });
    expect(status).toBe("completed");
    const parts = run.network.parts.map(({ name }) => name);
    const lag = FALL_TIME / 60;
    let quickest = 0;
    parts.forEach((part, i) => {
      if (placeKind({ part }) !== "mass") return;
      for (let m = 0; m < MEMBERS; m++) {
        for (let s = lag; s <= MINUTES; s++) {
          const air = run.forcing.tempAirAt(s * 60, m);
          const before = samples[((s - lag) * parts.length + i) * MEMBERS + m] - air;
          const after = samples[(s * parts.length + i) * MEMBERS + m] - air;
          if (before >= FALL_EXCESS) quickest = Math.max(quickest, (before - after) / before);
        }
      }
    });
    expect(quickest).toBeGreaterThan(0.3);
    expect(quickest).toBeLessThan(FALL_SHARE);
  },
);
