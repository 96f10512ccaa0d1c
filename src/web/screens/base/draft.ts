import type {
  BaseAircraft,
  BaseCircuit,
  BaseProbe,
  BaseSetUp,
  HeaterSwitch,
} from "../../../logbook/index.js";
import { idOf } from "../welcome/first-set-up.js";

/** As it is being written: what is optional may be emptied. */
type Draft<T> = T extends (infer E)[]
  ? Draft<E>[]
  : T extends readonly unknown[]
    ? T
    : T extends object
      ? { [K in keyof T]: object extends Pick<T, K> ? Draft<T[K]> | undefined : Draft<T[K]> }
      : T;
export type DraftBase = Draft<BaseSetUp>;
export type DraftAircraft = Draft<BaseAircraft>;
export type DraftSwitch = Draft<HeaterSwitch>;

/** What was written, without what was emptied. */
export function written(draft: DraftBase): BaseSetUp {
  return withoutEmpty(draft) as BaseSetUp;
}

function withoutEmpty(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutEmpty);
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).filter(([, each]) => each !== undefined);
  return Object.fromEntries(entries.map(([key, each]) => [key, withoutEmpty(each)]));
}

type Identified = { readonly id: string };

/** An id made of a name that none of these has. @example freeId("Lynx", [{ id: "lynx" }]) // "lynx-2" */
export function freeId(name: string, others: readonly Identified[]): string {
  const wanted = idOf(name);
  const isTaken = (id: string) => others.some((other) => other.id === id);
  if (!isTaken(wanted)) return wanted;
  for (let n = 2; ; n++) if (!isTaken(`${wanted}-${n}`)) return `${wanted}-${n}`;
}

/** The chosen ids, with the full descriptions that a set-up may hold in their place. */
export function keptKit<T extends string | Identified>(before: readonly T[], ids: readonly string[]): T[] {
  return ids.map((id) => before.find((entry) => idIn(entry) === id) ?? (id as T));
}

export function idIn(entry: string | Identified): string {
  return typeof entry === "string" ? entry : entry.id;
}

export function newAircraft(base: DraftBase, name: string, engine: string, at: string): BaseAircraft {
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

export function newCircuit(base: DraftBase, name: string): BaseCircuit {
  return { id: freeId(name, base.circuits), name, limit_a: 16, voltage_v: 230, outlets: 1 };
}

export function newProbe(
  probes: readonly Identified[],
  name: string,
  of: string,
  at: BaseProbe["at"],
): BaseProbe {
  const id = freeId(name, probes);
  return { id, name, at, via: { kind: "mqtt", topic: `base/${of}/${id}` }, unit: "c" };
}

export function newSwitch(aircraft: DraftAircraft, name: string): HeaterSwitch {
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
  { id: of }: Identified,
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
    say: { on: empty, off: { ...empty } },
    hear: { request: { ...empty, method: "GET" }, on: "true", off: "false" },
  };
}
