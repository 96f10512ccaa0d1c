import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SWITCH_FAULTS } from "../../src/switching/faults.js";
import { switchRules } from "../../src/switching/index.js";
import { INPUT_KINDS } from "../../src/switching/inputs.js";
import { PHASES } from "../../src/switching/state.js";
import { transitionsFor } from "../../src/switching/table.js";
import { overMqtt, padSwitch } from "./machine.js";
import { type Action, World } from "./world.js";

// Thousands of random lives of one switch; test/switching/world.ts says what must hold after every single input.

const guards = [{ probe: "sump", atMostC: 90, silentAfterS: 60 }];
const short = { ...padSwitch, longest_on_min: 2, rest_min: 1, confirm_within_s: 5 };
const kinds = {
  "plain, guarded": switchRules(short, guards),
  "with an on-time sent": switchRules(
    { ...short, on_time_s: 30, via: { ...overMqtt, say: { ...overMqtt.say, on: "on {on_time_s}" } } },
    guards,
  ),
  "with an on-time of fixed length": switchRules({ ...short, on_time_s: 30 }, []),
};

const onOff = fc.constantFrom("on" as const, "off" as const);
const event = (e: fc.Arbitrary<Extract<Action, { do: "event" }>["event"]>) =>
  e.map((it): Action => ({ do: "event", event: it }));

const action: fc.Arbitrary<Action> = fc.oneof(
  {
    weight: 16,
    arbitrary: fc.record({ do: fc.constant("go on" as const), answers: fc.constantFrom(1, 2, 3, 4, 4, 4) }),
  },
  { weight: 3, arbitrary: fc.constant<Action>({ do: "acknowledge all" }) },
  {
    weight: 8,
    arbitrary: fc.record({
      do: fc.constant("lapse" as const),
      seconds: fc.constantFrom(0.5, 3, 6, 12, 61, 115),
    }),
  },
  { weight: 30, arbitrary: fc.constant<Action>({ do: "good answer" }) },
  {
    weight: 12,
    arbitrary: fc.record({ do: fc.constant("ticks" as const), seconds: fc.integer({ min: 1, max: 40 }) }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant("hang" as const),
      seconds: fc.constantFrom(6, 45, 61, 119, 121, 500),
    }),
  },
  {
    weight: 8,
    arbitrary: fc.record({
      do: fc.constant("plan" as const),
      fromS: fc.constantFrom(-10, 0, 20),
      toS: fc.constantFrom(-5, 40, 400, 4000),
    }),
  },
  { weight: 3, arbitrary: fc.constant<Action>({ do: "save" }) },
  { weight: 1, arbitrary: fc.constant<Action>({ do: "save fails" }) },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant("kill" as const), deadS: fc.constantFrom(0, 0.2, 30, 90, 1000) }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant("set clock" as const),
      byS: fc.constantFrom(-86_400, -100, -1, 1, 100, 86_400),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant("read" as const),
      tempC: fc.constantFrom(-20, 60, 90, 91),
      ageS: fc.constantFrom(0, 1, 59, 61),
    }),
  },
  { weight: 5, arbitrary: event(fc.record({ kind: fc.constant("confirmed" as const), is: onOff })) },
  { weight: 1, arbitrary: event(fc.record({ kind: fc.constant("command-failed" as const), to: onOff })) },
  { weight: 2, arbitrary: event(fc.record({ kind: fc.constant("device" as const), online: fc.boolean() })) },
  { weight: 3, arbitrary: event(fc.record({ kind: fc.constant("store" as const), writable: fc.boolean() })) },
  {
    weight: 2,
    arbitrary: event(
      fc.record({
        kind: fc.constant("by-hand" as const),
        to: fc.constantFrom("on" as const, "off" as const, "plan" as const),
        forS: fc.constantFrom(0, 15, 50, 1e5),
      }),
    ),
  },
  { weight: 1, arbitrary: event(fc.constant({ kind: "plan" as const, plan: null })) },
  { weight: 4, arbitrary: event(fc.constant({ kind: "saved" as const, id: 1 })) },
  {
    weight: 4,
    arbitrary: event(
      fc.record({ kind: fc.constant("acknowledge" as const), fault: fc.constantFrom(...SWITCH_FAULTS) }),
    ),
  },
  { weight: 1, arbitrary: event(fc.constant({ kind: "stop" as const })) },
);

const RUNS = 1200;

/** Lines of the table that stand there only because a row is written for every input. */
const CANNOT = {
  "on / command-failed / a third of the on-time has passed, and on-time is left":
    "a failed command is a reason to be off, which comes before a renewal",
};

describe("random lives", () => {
  const reached = new Set<string>();

  test.each(Object.entries(kinds))(
    "%s: nothing that must hold is ever broken",
    (_, rules) => {
      let onCommands = 0;
      let kills = 0;
      fc.assert(
        fc.property(fc.array(action, { minLength: 30, maxLength: 80, size: "max" }), (actions) => {
          const world = new World(rules);
          for (const each of actions) world.act(each);
          onCommands += world.onCommands;
          kills += world.kills;
          for (const { phase, input, row } of world.taken) {
            reached.add(`${phase} / ${input} / ${row.when}`);
          }
        }),
        { numRuns: RUNS, seed: 20260114, verbose: 1 },
      );
      console.info(`${RUNS} lives, ${onCommands} times on, ${kills} kills`);
      // Else the lives would be too dull to prove anything.
      expect(onCommands).toBeGreaterThan(RUNS);
      expect(kills).toBeGreaterThan(RUNS / 2);
    },
    180_000,
  );

  test("and every line of the table was taken, but those that cannot be", () => {
    const lines = PHASES.flatMap((phase) =>
      INPUT_KINDS.flatMap((input) =>
        transitionsFor(phase, input).map((row) => `${phase} / ${input} / ${row.when}`),
      ),
    );
    expect(lines.filter((line) => !reached.has(line)).sort()).toEqual(Object.keys(CANNOT).sort());
  });
});
