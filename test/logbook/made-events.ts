import fc from "fast-check";
import { FAULTS } from "../../src/logbook/events.js";
import type { LogbookEvent } from "../../src/logbook/index.js";
import { BASE, id, LYNX, WREN } from "./example-base.js";

// Events of every kind over a few ids, times and aircraft, so that they meet: in references, in times, in ids.

const ids = (most: number) => fc.integer({ min: 1, max: most }).map(id);
const START = Date.parse("2026-01-10T00:00:00Z");
/** Quarters of an hour over four days, so that many events happen in the same moment; some written with an offset. */
const moments = fc
  .record({ quarter: fc.integer({ min: 0, max: 4 * 96 }), offset: fc.boolean() })
  .map(({ quarter, offset }) => {
    const time = START + quarter * 900_000;
    if (!offset) return new Date(time).toISOString();
    return new Date(time + 3_600_000).toISOString().replace("Z", "+01:00");
  });
const optional = <T>(key: string, value: fc.Arbitrary<T>) =>
  fc.option(value, { nil: undefined }).map((v) => (v === undefined ? {} : { [key]: v }));
const words = fc.string({ minLength: 1, maxLength: 40, unit: "grapheme" });
const heaters = fc.subarray(["whole-engine-4", "in-cowl-400", "sump-pad-100", "gone pad"], { minLength: 1 });
const covers = fc.subarray(["insulated-cover", "improvised-quilt", "gone"], { minLength: 1 });
const aircraft = fc.constantFrom("lynx", "wren", "gone");
const switches = fc.constantFrom("outlet-1", "outlet-2", "gone");
const temps = fc.integer({ min: -400, max: 2000 }).map((tenths) => tenths / 10);
const BAND = { p05_c: [-4], p50_c: [1.5], p95_c: [8] };
const shares = fc.constantFrom(0.5, 0.8, 0.95);
const points = fc
  .array(fc.record({ at_h: fc.integer({ min: 0, max: 48 }), air_c: temps.map((t) => Math.min(60, t)) }), {
    minLength: 1,
    maxLength: 3,
  })
  .map((list) => ({ points: list }));
const bases = fc
  .record({ lynxAt: moments, wren: fc.boolean(), place: fc.constantFrom("ramp", "hangar") })
  .map(({ lynxAt, wren, place }) => ({
    ...BASE,
    aircraft: [{ ...LYNX, known: { ...LYNX.known, at: lynxAt, place } }, ...(wren ? [WREN] : [])],
  }));

function parts(most: number): readonly fc.Arbitrary<object>[] {
  const of = ids(most);
  const own = (kind: string, rest: object = {}) =>
    fc.record({ kind: fc.constant(kind), aircraft, ...rest }) as fc.Arbitrary<object>;
  const plain = (kind: string, rest: object = {}) =>
    fc.record({ kind: fc.constant(kind), ...rest }) as fc.Arbitrary<object>;
  const withOptional = (base: fc.Arbitrary<object>, ...more: fc.Arbitrary<object>[]) =>
    fc.tuple(base, ...more).map((all) => Object.assign({}, ...all));
  return [
    own("plugged-in", { heaters }),
    own("unplugged", { heaters }),
    own("cover-on", { covers }),
    own("cover-off", { covers }),
    own("moved", { to: fc.constantFrom("ramp", "hangar") }),
    own("shut-down"),
    own("started", { how: fc.constantFrom("easy", "hard", "failed") }),
    own("reading", { part: fc.constantFrom("oil", "heads", "outside_air"), temp_c: temps }),
    withOptional(
      own("departure-wanted", { departure: moments }),
      optional("chance", shares),
      optional("pulled_out", fc.boolean()),
      optional("heaters", heaters),
    ),
    own("departure-dropped", { of }),
    plain("set-up", { base: bases }),
    plain("forecast", { origin: words, weather: points }),
    withOptional(plain("note"), optional("aircraft", aircraft)),
    withOptional(
      own("plan-issued", {
        of,
        status: fc.constantFrom("ready", "not-reachable"),
        plug_in: fc.option(moments),
        unplug: moments,
        departure: moments,
        heaters: fc.subarray(["whole-engine-4", ""]),
        chance: shares,
        weakest: fc.constantFrom("", "oil"),
        message: words,
        energy_kwh: fc.constantFrom(0, 1.25),
      }),
      optional("bands", fc.record({ at: fc.tuple(moments), parts: fc.constant({ oil: BAND }) })),
      optional("corrected", fc.constant({ air_k: -2.5, spread: 1.2 })),
    ),
    own("plan-withdrawn", { of, reason: words }),
    own("probes-read", {
      of,
      readings: fc.tuple(fc.record({ part: fc.constantFrom("oil", "heads"), temp_c: temps })),
    }),
    own("switch-commanded", { switch: switches, to: fc.constantFrom("on", "off"), reason: words }),
    own("switch-confirmed", { switch: switches, is: fc.constantFrom("on", "off") }),
    withOptional(
      plain("fault", { fault: fc.constantFrom(...FAULTS), text: words }),
      optional("aircraft", aircraft),
      optional("switch", switches),
      optional("probe", fc.constantFrom("oil", "gone")),
    ),
    plain("fault-cleared", { of }),
  ];
}

/** One event with an id among the first `most`, that may refer to any of them. */
export function madeEvent(most: number): fc.Arbitrary<LogbookEvent> {
  const common = fc
    .tuple(fc.record({ id: ids(most), at: moments }), optional("by", words), optional("note", words))
    .map((all) => Object.assign({}, ...all));
  const plain = fc.tuple(common, fc.oneof(...parts(most))).map(([head, rest]) => ({ ...head, ...rest }));
  const correction = fc
    .record({ head: common, of: ids(most), instead: fc.option(plain) })
    .map(({ head, of, instead }) => ({ ...head, kind: "correction", of, instead }));
  return fc.oneof(
    { weight: 3, arbitrary: plain },
    { weight: 1, arbitrary: correction },
  ) as fc.Arbitrary<LogbookEvent>;
}

/** Events with ids of their own, the first of them a set-up. */
export function madeLogbook(most: number): fc.Arbitrary<LogbookEvent[]> {
  return fc
    .uniqueArray(madeEvent(most), { selector: (event) => event.id, maxLength: most })
    .map((events) => [
      { id: id(most + 1), at: new Date(START).toISOString(), kind: "set-up", base: BASE },
      ...events,
    ]);
}
