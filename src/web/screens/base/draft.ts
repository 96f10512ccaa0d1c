import type { DocumentIssue } from "../../../documents/index.js";
import type {
  BaseAircraft,
  BaseCircuit,
  BaseProbe,
  BaseSetUp,
  HeaterSwitch,
} from "../../../logbook/index.js";
import { idOf } from "../welcome/first-set-up.js";

/** What is wrong with the field at this path of the set-up. */
export type FaultsAt = (path: string) => readonly DocumentIssue[];

type Identified = { readonly id: string };

/** An id made of a name that none of these has. @example freeId("Lynx", [{ id: "lynx" }]) // "lynx-2" */
export function freeId(name: string, others: readonly Identified[]): string {
  const wanted = idOf(name);
  const isTaken = (id: string) => others.some((other) => other.id === id);
  if (!isTaken(wanted)) return wanted;
  for (let n = 2; ; n++) if (!isTaken(`${wanted}-${n}`)) return `${wanted}-${n}`;
}

/** The list with one entry changed, or without it. */
export function replaced<T>(list: readonly T[], at: number, entry: T | undefined): T[] {
  return list.flatMap((each, i) => (i === at ? (entry === undefined ? [] : [entry]) : [each]));
}

/** The object with a key changed, or without it: a set-up leaves out what is not said. */
export function having<T extends object, K extends keyof T>(whole: T, key: K, value: T[K] | undefined): T {
  const { [key]: _, ...rest } = whole;
  return (value === undefined ? rest : { ...rest, [key]: value }) as T;
}

/** The chosen ids, with the full descriptions that a set-up may hold in their place. */
export function keptKit<T extends string | Identified>(before: readonly T[], ids: readonly string[]): T[] {
  return ids.map((id) => before.find((entry) => idIn(entry) === id) ?? (id as T));
}

export function idIn(entry: string | Identified): string {
  return typeof entry === "string" ? entry : entry.id;
}

export function newAircraft(base: BaseSetUp, name: string, engine: string, at: string): BaseAircraft {
  return {
    id: freeId(name, base.aircraft),
    name,
    engine,
    kit: { heaters: [], covers: [] },
    known: { at, place: "ramp", covers_on: [], initial: {} },
    probes: [],
    switches: [],
  };
}

export function newCircuit(base: BaseSetUp, name: string): BaseCircuit {
  return { id: freeId(name, base.circuits), name, limit_a: 16, voltage_v: 230, outlets: 1 };
}

export function newProbe(
  probes: readonly BaseProbe[],
  name: string,
  of: string,
  at: BaseProbe["at"],
): BaseProbe {
  const id = freeId(name, probes);
  return { id, name, at, via: { kind: "mqtt", topic: `base/${of}/${id}` }, unit: "c" };
}

export function newSwitch(aircraft: BaseAircraft, name: string): HeaterSwitch {
  const { switches, kit } = aircraft;
  const id = freeId(name, switches);
  return {
    id,
    name,
    heaters: kit.heaters.slice(0, 1).map(idIn),
    longest_on_min: 240,
    on_time_s: 300,
    via: newVia(aircraft, id, "mqtt"),
  };
}

/** A way to tell a switch, to begin with; topics, words and addresses are those of the user's own device. */
export function newVia(
  { id: of }: BaseAircraft,
  id: string,
  kind: HeaterSwitch["via"]["kind"],
): HeaterSwitch["via"] {
  if (kind === "mqtt") {
    return {
      kind,
      say: { topic: `base/${of}/${id}/wanted`, on: "heat", off: "stop" },
      hear: { topic: `base/${of}/${id}/reports`, on: "heating", off: "idle" },
    };
  }
  // An address that is none: whoever keeps it unwritten is told so.
  const empty = { method: "POST", url: "" } as const;
  return {
    kind,
    say: { on: empty, off: empty },
    hear: { request: { ...empty, method: "GET" }, on: "true", off: "false" },
  };
}
