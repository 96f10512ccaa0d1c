import {
  type BaseAircraft,
  type BaseSetUp,
  type LogbookEvent,
  readBaseSetUp,
} from "../../src/logbook/index.js";

/** An invented base with two aircraft; tests change what they are about. */
export const LYNX: BaseAircraft = {
  id: "lynx",
  name: "Lynx",
  engine: "four-carburettor-160",
  kit: { heaters: ["whole-engine-4", "in-cowl-400"], covers: ["insulated-cover", "propeller-cover"] },
  known: {
    at: "2026-01-10T12:00:00Z",
    place: "ramp",
    covers_on: ["insulated-cover"],
    initial: { all_c: -18, uncertainty_k: 2 },
  },
  circuit: "ramp-16",
  probes: [
    {
      id: "oil",
      name: "Oil",
      at: "oil",
      unit: "c",
      via: { kind: "mqtt", topic: "strip/lynx/oil", pointer: "/temp" },
    },
    { id: "heads", name: "Heads", at: "heads", unit: "f" },
  ],
  switches: [
    {
      id: "outlet-1",
      name: "Outlet 1",
      heaters: ["whole-engine-4"],
      longest_on_min: 480,
      via: {
        kind: "mqtt",
        say: { topic: "strip/outlet-1/set", on: "ON", off: "OFF" },
        hear: { topic: "strip/outlet-1/state", on: "ON", off: "OFF" },
      },
    },
  ],
};

export const WREN: BaseAircraft = {
  id: "wren",
  name: "Wren",
  engine: "two-light-60",
  kit: { heaters: ["sump-pad-100"], covers: ["improvised-quilt"] },
  known: { at: "2026-01-10T12:00:00Z", place: "hangar", covers_on: [], initial: { all_c: 5 } },
  probes: [],
  switches: [
    {
      id: "outlet-2",
      name: "Outlet 2",
      heaters: ["sump-pad-100"],
      longest_on_min: 240,
      on_time_s: 300,
      via: {
        kind: "http",
        say: {
          on: { method: "POST", url: "http://outlet-2.lan/relay", body: "on" },
          off: { method: "POST", url: "http://outlet-2.lan/relay", body: "off" },
        },
        hear: { request: { method: "GET", url: "http://outlet-2.lan/relay" }, on: "1", off: "0" },
      },
    },
  ],
};

export const BASE: BaseSetUp = {
  soakline_base: 3,
  name: "Example strip",
  zone: "Europe/Oslo",
  hangar: { bays: 1, air_c: 5, move_min: 15 },
  circuits: [{ id: "ramp-16", name: "Ramp", limit_a: 16, voltage_v: 230, outlets: 2 }],
  carts: [{ id: "cart-1", heater: "ducted-electric-1500" }],
  aircraft: [LYNX, WREN],
  probes: [
    {
      id: "outside",
      name: "Outside",
      at: "outside_air",
      unit: "c",
      via: { kind: "mqtt", topic: "strip/outside" },
    },
  ],
};

export function baseWith(changes: Partial<Record<keyof BaseSetUp, unknown>>): unknown {
  return { ...BASE, ...changes };
}

/** The base with its first aircraft changed. */
export function lynxWith(changes: Partial<Record<keyof BaseAircraft, unknown>>): unknown {
  return { ...BASE, aircraft: [{ ...LYNX, ...changes }, WREN] };
}

export function issuesOf(source: unknown): readonly string[] {
  const reading = readBaseSetUp(source);
  if (reading.ok) throw new Error("the base was accepted");
  return reading.issues.map(({ path, expected, received }) => `${path}: ${expected}; ${received}`);
}

/** An id that reads well in a failing test: number 7 is 00000000-0000-4000-8000-000000000007. */
export function id(number: number): string {
  return `00000000-0000-4000-8000-${number.toString().padStart(12, "0")}`;
}

export const SET_UP: LogbookEvent = { id: id(1), at: "2026-01-10T12:00:00Z", kind: "set-up", base: BASE };
