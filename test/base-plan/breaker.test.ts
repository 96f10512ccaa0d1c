import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { heaterById } from "../../src/aircraft/index.js";
import { baseDocumentOf, readBaseDocument } from "../../src/base-documents/index.js";
import { windowsOf } from "../../src/keeper/windows.js";
import { type BaseSetUp, CONTINUOUS_SHARE, type LogbookEvent } from "../../src/logbook/index.js";
import { axisAt, loadOf, overloads } from "../../src/web/screens/night/night-model.js";
import { baseView } from "../../src/web/worker/views.js";
import { at, HOUR, OPENED, opening, stateOf } from "../base/example-base.js";
import { wattsOf } from "./plan-rules.js";
import { twoTrainers } from "./two-trainers.js";

const PAD = "sump-pad-220";
const VOLTAGE = 230;
/** [A] of both pads. */
const AMPS = (2 * wattsOf([heaterById(PAD)])) / VOLTAGE;
const NAMES = ["lynx", "heron"];

/** The demo base with a pad on each of two aircraft, on one circuit of which both take a share. */
function setUpWith(share: number, generator: boolean): BaseSetUp {
  const [circuit] = opening.setUp.circuits;
  return {
    ...opening.setUp,
    circuits: [{ ...circuit, limit_a: AMPS / share, voltage_v: VOLTAGE, generator }],
    aircraft: opening.setUp.aircraft
      .filter(({ id }) => NAMES.includes(id))
      .map((one) => ({
        ...one,
        circuit: circuit.id,
        kit: { ...one.kit, heaters: [PAD] },
        switches: one.switches.slice(0, 1).map((each) => ({ ...each, heaters: [PAD] })),
      })),
  };
}

/** Both wanted on at the same time. */
function stateWith(base: BaseSetUp) {
  const iso = (hours: number) => new Date(OPENED + hours * HOUR).toISOString();
  const plans = NAMES.map((aircraft): LogbookEvent => {
    const of = opening.events.find((e) => e.kind === "departure-wanted" && e.aircraft === aircraft);
    return {
      ...{ ...at(0.5), kind: "plan-issued", aircraft, of: of?.id ?? "", status: "ready" },
      ...{ plug_in: iso(10), unplug: iso(12), departure: iso(12.25), heaters: [PAD] },
      ...{ chance: 0.9, weakest: "oil", message: "ready", energy_kwh: 1 },
    };
  });
  const changed: LogbookEvent = { ...at(0.1), kind: "set-up", base, id: randomUUID() };
  return stateOf([...opening.events, changed, ...plans]);
}

test.each([false, true])(
  "one rule on all paths: what draws 90 %% of a breaker or generator (%s) is too much, 79 %% is not",
  (generator) => {
    expect(CONTINUOUS_SHARE).toBe(0.8);
    for (const [share, isTooMuch] of [
      [0.9, true],
      [0.79, false],
    ] as const) {
      const base = setUpWith(share, generator);
      const state = stateWith(base);

      const { windows, refused } = windowsOf(state, OPENED + HOUR);
      expect([windows.length, refused.length]).toEqual(isTooMuch ? [1, 1] : [2, 0]);

      const now = OPENED + HOUR;
      const view = baseView(state, now);
      const plugged = view.aircraft.map((one) => ({ ...one, heatersOn: [PAD] }));
      const steps = loadOf(view.circuits[0], plugged, {}, axisAt(now, view.zone), now);
      expect(Math.max(...steps.map(({ amps }) => amps))).toBeCloseTo(AMPS, 6);
      expect(overloads(view.circuits[0], steps).amps.length > 0).toBe(isTooMuch);

      const trainers = twoTrainers({ heater: PAD, members: 20 });
      const scenarios = trainers.aircraft.map(({ scenario }, i) => {
        if (typeof scenario === "string") throw new Error("a file");
        const { soakline, start, zone, hours, weather, ensemble } = trainers;
        return {
          id: NAMES[i],
          scenario: {
            ...scenario,
            soakline,
            start,
            hours,
            weather,
            ...(zone === undefined ? {} : { zone }),
            ...(ensemble === undefined ? {} : { ensemble }),
          },
        };
      });
      const reading = readBaseDocument(baseDocumentOf(base, scenarios));
      if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
      expect(AMPS > reading.limits.circuits[0].currentMost).toBe(isTooMuch);
    }
  },
);
