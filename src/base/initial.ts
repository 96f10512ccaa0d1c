import type { NowDocument, ScenarioDocument } from "../documents/index.js";

type Initial = NonNullable<ScenarioDocument["initial"]>;

/** Parts of an estimate by the keys of a document's initial temperatures. */
const KEYS: readonly (readonly [keyof Initial, readonly string[]])[] = [
  ["sump_c", ["sump"]],
  ["oil_c", ["oil"]],
  ["crankcase_c", ["crankcase"]],
  ["crankshaft_c", ["crankshaft"]],
  ["cylinders_c", ["cylinders"]],
  ["heads_c", ["heads_front", "heads_rear"]],
  ["accessories_c", ["accessories"]],
  ["hub_c", ["hub"]],
  ["cowl_air_c", ["cowl_air"]],
  ["cowl_skin_c", ["cowl_skin"]],
  ["battery_c", ["battery"]],
  ["coolant_c", ["coolant"]],
];

/** The engine proper, whose bands give the doubt of the start. */
const ENGINE = ["sump", "oil", "crankcase", "crankshaft", "cylinders", "heads_front", "heads_rear"];
/** Half width of the 90 % band of a normal distribution, in standard deviations. */
const NINETY_PERCENT = 1.6448536269514722;

/**
 * Initial temperatures of a scenario that begins where an estimate stands: each part at its middle value, front and
 * rear heads at the colder of the two, and one doubt for all of them, the root mean square over the engine's parts.
 * Heater elements, which documents do not name, begin as the air under the cowl.
 */
export function initialFrom({ parts }: NowDocument): Initial {
  const initial: Initial = {};
  for (const [key, names] of KEYS) {
    const mids = names.flatMap((name) => parts[name]?.p50_c ?? []);
    if (mids.length > 0) initial[key] = limited(Math.min(...mids));
  }
  if (parts.cowl_air !== undefined) initial.all_c = limited(parts.cowl_air.p50_c);
  const squares = ENGINE.flatMap((name) => {
    const band = parts[name];
    return band === undefined ? [] : ((band.p95_c - band.p05_c) / 2 / NINETY_PERCENT) ** 2;
  });
  if (squares.length > 0) {
    const mean = squares.reduce((sum, square) => sum + square, 0) / squares.length;
    initial.uncertainty_k = Math.min(30, Math.round(100 * Math.sqrt(mean)) / 100);
  }
  return initial;
}

/** What a document takes of metal and oil. */
function limited(celsius: number): number {
  return Math.min(250, Math.max(-90, celsius));
}
