import { z } from "zod";
import { findingSchema, record } from "../documents/index.js";
import {
  type AircraftState,
  type BaseState,
  baseSetUpSchema,
  eventSchema,
  type ProbeReading,
  type UnsafeSwitches,
  unsafeSwitches,
} from "../logbook/index.js";
import { cautionsOf } from "../switching/index.js";
import type { LiveHealth } from "./live.js";

// What stands at the base, as GET base answers it. Everything in it follows from the logbook and the newest readings.

const moment = z.iso.datetime().meta({ description: "ISO 8601, UTC" });
const onOff = z.enum(["on", "off"]);

/** One event of the logbook; a component of the OpenAPI document. */
export const logbookEventSchema = eventSchema.meta({ ...eventSchema.meta(), id: "LogbookEvent" });

const standing = record({
  id: z.string(),
  place: z.enum(["ramp", "hangar"]),
  running: z.boolean().meta({ description: "started and not shut down since" }),
  covers_on: z.array(z.string()),
  heaters_on: z.array(z.string()).meta({ description: "plugged in or switched on, as the logbook has it" }),
  departures: z.array(
    record({
      id: z.string().meta({ description: "of the departure-wanted event" }),
      departure: moment,
      chance: z.number().exactOptional(),
      pulled_out: z.boolean(),
      heaters: z.array(z.string()).exactOptional(),
    }),
  ),
  plan: logbookEventSchema.nullable().meta({ description: "the plan-issued event that holds" }),
  last_start: record({ at: moment, how: z.enum(["easy", "hard", "failed"]) }).nullable(),
  readings: z
    .array(record({ probe: z.string(), at: moment, temp_c: z.number() }))
    .meta({ description: "the newest of each probe" }),
  readings_by_hand: z.array(record({ at: moment, part: z.string(), temp_c: z.number() })),
  switches: z.array(
    record({
      id: z.string(),
      commanded: record({ to: onOff, at: moment }).nullable(),
      confirmed: record({ is: onOff, at: moment }).nullable(),
      refused: findingSchema
        .nullable()
        .meta({ description: "why it is never switched on, by plan or by hand; null where it may be" }),
      cautions: z.array(findingSchema).meta({ description: "what whoever switches it has to know" }),
    }),
  ),
  faults: z.array(logbookEventSchema),
});

export const baseSchema = record({
  kind: z.literal("base"),
  time: moment.meta({ description: "the clock of the base" }),
  set_up: baseSetUpSchema.nullable().meta({ description: "null before the base was entered" }),
  aircraft: z.array(standing),
  readings: z.array(record({ probe: z.string(), at: moment, temp_c: z.number() })).meta({
    description: "the newest of each probe of the base itself",
  }),
  forecasts: z.array(record({ id: z.string(), at: moment, origin: z.string() })).meta({
    description: "newest first; the weather itself is in the event",
  }),
  faults: z.array(logbookEventSchema).meta({ description: "of no aircraft, not cleared" }),
  without_effect: z.array(record({ id: z.string(), reason: z.string() })),
  keeper: record({ ready: z.boolean(), reasons: z.array(findingSchema) }),
}).meta({ id: "Base", title: "Soakline base as it stands" });

export type BaseDocument = z.infer<typeof baseSchema>;

export function baseDocument(
  state: BaseState | undefined,
  latest: readonly ProbeReading[],
  health: LiveHealth,
  now: number,
): BaseDocument {
  const keeper = { ready: health.ready, reasons: [...health.reasons] };
  const common = { kind: "base" as const, time: utc(now), keeper };
  if (state === undefined) {
    return {
      ...common,
      set_up: null,
      aircraft: [],
      readings: [],
      forecasts: [],
      faults: [],
      without_effect: [],
    };
  }
  const byAircraft = new Map<string, ProbeReading[]>();
  for (const reading of latest) {
    const others = byAircraft.get(reading.aircraft);
    if (others === undefined) byAircraft.set(reading.aircraft, [reading]);
    else others.push(reading);
  }
  const unsafe = unsafeSwitches(state.setUp);
  return {
    ...common,
    set_up: state.setUp,
    aircraft: [...state.aircraft].map(([id, each]) => ({
      ...standingOf(id, each, byAircraft.get(id) ?? []),
      switches: switchesOf(each, unsafe),
    })),
    readings: (byAircraft.get("base") ?? []).map(readingOf),
    forecasts: state.forecasts.map(({ id, at, origin }) => ({ id, at: utc(Date.parse(at)), origin })),
    faults: [...state.faults],
    without_effect: state.withoutEffect.map(({ id, reason }) => ({ id, reason })),
  };
}

function standingOf(
  id: string,
  state: AircraftState,
  latest: readonly ProbeReading[],
): Omit<BaseDocument["aircraft"][number], "switches"> {
  return {
    id,
    place: state.place,
    running: state.running,
    covers_on: [...state.coversOn],
    heaters_on: [...state.heatersOn],
    departures: state.departures.map(({ id, departure, chance, pulledOut, heaters }) => ({
      id,
      departure: utc(departure),
      ...(chance === undefined ? {} : { chance }),
      pulled_out: pulledOut,
      ...(heaters === undefined ? {} : { heaters: [...heaters] }),
    })),
    plan: state.plan ?? null,
    last_start:
      state.lastStart === undefined ? null : { at: utc(state.lastStart.at), how: state.lastStart.how },
    readings: latest.map(readingOf),
    readings_by_hand: state.readings.map(({ at, part, tempC }) => ({ at: utc(at), part, temp_c: tempC })),
    faults: [...state.faults],
  };
}

function switchesOf(
  { setUp, switches }: AircraftState,
  unsafe: UnsafeSwitches,
): BaseDocument["aircraft"][number]["switches"] {
  return setUp.switches.map((one) => {
    const { commanded, confirmed } = switches.get(one.id) ?? {};
    return {
      id: one.id,
      commanded: commanded === undefined ? null : { to: commanded.to, at: utc(commanded.at) },
      confirmed: confirmed === undefined ? null : { is: confirmed.is, at: utc(confirmed.at) },
      refused: unsafe.get(`${setUp.id}/${one.id}`) ?? null,
      cautions: [...cautionsOf(one)],
    };
  });
}

function readingOf({ probe, time, tempC }: ProbeReading) {
  return { probe, at: utc(time), temp_c: tempC };
}

export function utc(time: number): string {
  return new Date(time).toISOString();
}
