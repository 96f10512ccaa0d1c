import fc from "fast-check";
import { COVERS, HEATERS, type Heater, INSTALLATIONS, type Installation } from "../../src/aircraft/index.js";
import type { ScenarioDocument } from "../../src/documents/index.js";
import { GENERIC_OILS } from "../../src/properties/index.js";

// Scenario documents of all kinds: every catalogue aircraft, kits that fit it, any place, weather and wish.

const START = Date.parse("2026-01-14T17:00:00Z");
const MINUTE = 60_000;
/** Of all random cases; another one with ADVICE_SEED. */
export const SEED = Number(process.env.ADVICE_SEED ?? 1);
/** The least that a document takes: what is looked for are broken rules, not exact chances. */
export const MEMBERS = 20;

export const isoAt = (hours: number) => new Date(START + Math.round(hours * 60) * MINUTE).toISOString();

const oneOf = <T>(...values: readonly T[]) => fc.constantFrom(...values);
const maybe = <T>(arbitrary: fc.Arbitrary<T>, share = 0.5) =>
  fc
    .tuple(fc.double({ min: 0, max: 1, noNaN: true }), arbitrary)
    .map(([x, value]) => (x < share ? value : undefined));
const within = (min: number, max: number, step = 0.5) =>
  fc.integer({ min: Math.ceil(min / step), max: Math.floor(max / step) }).map((n) => n * step);

function fits({ cylinders, bodies }: Installation, heater: Heater): boolean {
  if (heater.cylinders !== undefined && heater.cylinders !== cylinders) return false;
  return bodies.coolant !== undefined || heater.elements.every((e) => e.target !== "coolant");
}

/** Up to two heaters, at most one with a duct: a document takes no second. */
function heatersFor(installation: Installation): fc.Arbitrary<string[]> {
  const fitting = HEATERS.filter((h) => fits(installation, h));
  return fc
    .oneof(
      { weight: 1, arbitrary: fc.constant(0) },
      { weight: 5, arbitrary: fc.constant(1) },
      { weight: 5, arbitrary: fc.constant(2) },
    )
    .chain((count) => fc.shuffledSubarray(fitting, { minLength: count, maxLength: count }))
    .map((heaters) => {
      const ducts = heaters.filter((h) => h.duct !== undefined);
      return heaters.filter((h) => !ducts.slice(1).includes(h)).map(({ id }) => id);
    });
}

/** [h] from now: soon most often, for that is where limits meet. */
const leads = fc.oneof(
  { weight: 3, arbitrary: within(0.05, 1.5, 0.05) },
  { weight: 5, arbitrary: within(1.5, 6, 0.25) },
  { weight: 3, arbitrary: within(6, 20, 0.5) },
);

type Points = NonNullable<ScenarioDocument["weather"]["points"]>;

/** Air that changes steadily from six hours before the start on, with a gust front or none. */
function weatherOver(hours: number): fc.Arbitrary<Points> {
  return fc
    .record({
      first: fc.oneof({ weight: 3, arbitrary: within(-25, 8) }, { weight: 1, arbitrary: within(-45, 15) }),
      change: within(-8, 8),
      back: within(-6, 6),
      wind: within(0, 14),
      dry: within(0, 8),
    })
    .map(({ first, change, back, wind, dry }) =>
      [-6, 0, hours / 2, hours].map((at_h, i) => {
        const air_c = Math.min(15, Math.max(-45, first + [0, back, back + change / 2, back + change][i]));
        return { at_h, air_c, wind_mps: i === 2 ? wind / 2 : wind, dew_point_c: air_c - dry };
      }),
    );
}

type Events = NonNullable<ScenarioDocument["events"]>;

/** What happens anyway: moves, covers, and heaters that somebody else switches. */
function eventsWithin(
  hours: number,
  heaters: readonly string[],
  covers: readonly string[],
): fc.Arbitrary<Events> {
  const at_h = within(0, hours, 0.25);
  const kinds: fc.Arbitrary<Events[number]>[] = [
    fc.record({ at_h, do: fc.constant("move" as const), to: oneOf("ramp" as const, "hangar" as const) }),
  ];
  if (covers.length > 0) {
    kinds.push(
      fc.record({
        at_h,
        do: oneOf("cover_on" as const, "cover_off" as const),
        covers: fc.subarray([...covers], { minLength: 1 }),
      }),
    );
  }
  if (heaters.length > 0) {
    const some = fc.subarray([...heaters], { minLength: 1 });
    kinds.push(fc.record({ at_h, do: oneOf("plug_in" as const, "unplug" as const), heaters: some }));
  }
  return maybe(fc.array(fc.oneof(...kinds), { minLength: 1, maxLength: 3 }), 0.35).map(
    (events) => events ?? [],
  );
}

function initialFor(points: Points): fc.Arbitrary<ScenarioDocument["initial"] | undefined> {
  const air = points[1].air_c;
  return maybe(
    fc.oneof(
      fc.record({ all_c: within(air - 3, air + 25), uncertainty_k: within(0, 4) }),
      fc.record({ shut_down_h_ago: within(0, 8) }),
      fc.record({ oil_c: within(air, air + 8) }),
    ),
    0.5,
  );
}

/** Aircraft of the catalogue, now and then with an oil that its maker may not list. */
const aircraft = fc.tuple(
  fc.constantFrom(...INSTALLATIONS),
  maybe(fc.constantFrom(...GENERIC_OILS.map(({ id }) => id)), 0.25),
);

function limitsFor({ limits }: Installation): fc.Arbitrary<ScenarioDocument["limits"]> {
  const engine = limits.no_preheat_c;
  return maybe(
    fc.record(
      {
        engine_at_least_c: within(engine, engine + 10),
        oil_at_least_c: within(engine + 10, engine + 15),
        evenness_at_most_k: within(20, 40),
        warm_through_c: within(-10, 15),
      },
      { requiredKeys: [] },
    ),
    0.2,
  ).map((limits) => limits ?? {});
}

interface Frame {
  readonly installation: Installation;
  readonly oil: string | undefined;
  readonly lead: number;
  readonly heaters: readonly string[];
  readonly covers: readonly string[];
}

const frames: fc.Arbitrary<Frame> = aircraft.chain(([installation, oil]) =>
  fc.record({
    installation: fc.constant(installation),
    oil: fc.constant(oil),
    lead: leads,
    heaters: heatersFor(installation),
    covers: fc.subarray(COVERS.map(({ id }) => id)),
  }),
);

function documentFrom({ installation, oil, lead, heaters, covers }: Frame): fc.Arbitrary<ScenarioDocument> {
  const hours = lead + 1.5;
  const minutes = 60 * lead;
  const wish = fc
    .record({
      chance: within(0.6, 0.95, 0.05),
      heaters: maybe(fc.subarray([...heaters], { minLength: Math.min(1, heaters.length) }), 0.4),
      unplug: maybe(fc.integer({ min: 0, max: Math.min(30, Math.round(minutes) - 1) }), 0.8),
      cover: fc.double({ min: 0, max: 1, noNaN: true }),
      pulled_out: fc.boolean(),
    })
    .map(({ chance, heaters, unplug, cover, pulled_out }) => ({
      departure: isoAt(lead),
      chance: Number(chance.toFixed(2)),
      pulled_out,
      ...(heaters === undefined ? {} : { heaters }),
      ...(unplug === undefined
        ? {}
        : { unplug_before_min: unplug, cover_off_before_min: Math.floor(cover * unplug) }),
    }));
  return weatherOver(hours).chain((points) =>
    fc
      .record({
        place: oneOf("ramp" as const, "ramp" as const, "hangar" as const),
        fitted: fc.subarray([...covers]),
        plugged: maybe(fc.subarray([...heaters]), 0.3),
        since: maybe(fc.oneof(within(0.05, 3, 0.05), within(3, 30)), 0.6),
        battery: maybe(fc.boolean(), 0.3),
        initial: initialFor(points),
        hangar: within(-10, 15),
        events: eventsWithin(lead, heaters, covers),
        limits: limitsFor(installation),
        seed: fc.integer({ min: 1, max: 1000 }),
        want: wish,
      })
      .map(
        ({ place, fitted, plugged = [], since, battery, initial, hangar, events, limits, seed, want }) => ({
          soakline: 2 as const,
          name: "made",
          aircraft:
            oil === undefined
              ? installation.id
              : { ...installation, oil: { ...installation.oil, oil_id: oil } },
          kit: { heaters: [...heaters], covers: [...covers] },
          start: isoAt(0),
          zone: "CET",
          hours,
          place,
          fitted: { covers: fitted },
          plugged_in: plugged,
          ...(plugged.length === 0 || since === undefined ? {} : { plugged_in_since: isoAt(-since) }),
          ...(battery === undefined ? {} : { battery: { fitted: battery } }),
          ...(initial === undefined ? {} : { initial }),
          weather: { points },
          hangar: { air_c: hangar },
          site: { roughness_m: 0.03 },
          events,
          want,
          limits,
          ensemble: { members: MEMBERS, seed },
        }),
      ),
  ) as fc.Arbitrary<ScenarioDocument>;
}

/** Burners on in the hangar by the document's own doing are refused before any planning: such documents are not made. */
function withoutBurnerInside(document: ScenarioDocument): ScenarioDocument {
  const { events = [], place, plugged_in = [], plugged_in_since, ...rest } = document;
  const burner = HEATERS.filter((h) => h.runs === "outdoors").map(({ id }) => id);
  const isInside = place === "hangar" || events.some((e) => e.do === "move" && e.to === "hangar");
  const kept = isInside ? plugged_in.filter((id) => !burner.includes(id)) : plugged_in;
  const own = isInside
    ? events.filter((e) => !(e.do === "plug_in" && e.heaters.some((id) => burner.includes(id))))
    : events;
  return {
    ...rest,
    place,
    events: own,
    plugged_in: kept,
    ...(kept.length === 0 || plugged_in_since === undefined ? {} : { plugged_in_since }),
  };
}

export const madeScenarios: fc.Arbitrary<ScenarioDocument> = frames
  .chain(documentFrom)
  .map(withoutBurnerInside);
