// Imported by file, so that the web app's first page does not wait for every schema.
import { isRecord } from "../documents/issue.js";
import { withHeaterLimits } from "../documents/migrate-1-to-2.js";
import type { Migration } from "../documents/migration.js";
import { type MigrationResult, migrated } from "../documents/migrations.js";

/** Version of the set-up that is written and read here. */
export const SET_UP_VERSION = 3;
export const SET_UP_VERSION_KEY = "soakline_base";

/** A base of any earlier version in the form of today's. */
export function setUpMigrated(base: unknown): MigrationResult {
  return migrated(base, [FROM_1_TO_2, FROM_2_TO_3], SET_UP_VERSION, SET_UP_VERSION_KEY);
}

/** Version 2 says what a switch is told and what it tells in words of its own, and names a heater's limits. */
const FROM_1_TO_2: Migration = {
  from: 1,
  migrate(document) {
    const base = withHeaterLimits(document) as Record<string, unknown>;
    const { aircraft } = base;
    return Array.isArray(aircraft) ? { ...base, aircraft: aircraft.map(withSayAndHear) } : base;
  },
};

/** Version 3 says how a probe is read as it says how a switch is told. */
const FROM_2_TO_3: Migration = {
  from: 2,
  migrate(document) {
    const { aircraft } = document;
    const base = withProbeVia(document);
    return Array.isArray(aircraft) ? { ...base, aircraft: aircraft.map(withProbeVia) } : base;
  },
};

function withProbeVia<T>(owner: T): T {
  if (!isRecord(owner) || !Array.isArray(owner.probes)) return owner;
  const probes = owner.probes.map((probe: unknown) => {
    if (!isRecord(probe)) return probe;
    const { topic, pointer, time_pointer, ...rest } = probe;
    const via = given({ topic, pointer, time_pointer });
    return Object.keys(via).length === 0 ? probe : { ...rest, via: { kind: "mqtt", ...via } };
  });
  return { ...owner, probes };
}

function withSayAndHear(aircraft: unknown): unknown {
  if (!isRecord(aircraft) || !Array.isArray(aircraft.switches)) return aircraft;
  const switches = aircraft.switches.map((one: unknown) =>
    isRecord(one) && isRecord(one.via) ? { ...one, via: viaFrom(one.via) } : one,
  );
  return { ...aircraft, switches };
}

/** What stands where nothing was known is left, so that reading names it. */
function viaFrom(via: Readonly<Record<string, unknown>>): unknown {
  if (via.kind === "mqtt") {
    const { command_topic, on, off, retain, state_topic, state_pointer, state_on, state_off, ...rest } = via;
    return {
      ...rest,
      say: given({ topic: command_topic, on, off, keep: retain }),
      hear: given({ topic: state_topic, pointer: state_pointer, on: state_on, off: state_off }),
    };
  }
  if (via.kind !== "http") return via;
  const { on, off, state, ...rest } = via;
  return { ...rest, say: given({ on, off }), hear: state };
}

function given(entries: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined));
}
