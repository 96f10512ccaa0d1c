import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import mqtt from "mqtt";
import type { PlanDocument } from "../../src/documents/index.js";
import { type Keeper, startKeeper } from "../../src/keeper/keeper.js";
import type { Planner } from "../../src/keeper/planner.js";
import type { BaseSetUp, EventKind, EventOf, HeaterSwitch, LogbookEvent } from "../../src/logbook/index.js";
import { planOf } from "../../src/questions/index.js";
import { openStore, type Store } from "../../src/store/index.js";
import { OPENED, opening, stateOf } from "../base/example-base.js";
import { Heater, padSwitch } from "../devices/heater.js";
import { Relay } from "../devices/relay.js";

/** One aircraft with one pad on a switch and one probe, all real but the aircraft. */
export const setUp: BaseSetUp = {
  soakline_base: 3,
  name: "Test hangar",
  zone: "UTC",
  circuits: [],
  aircraft: [
    {
      id: "lynx",
      name: "Lynx",
      engine: "four-carburettor-160",
      kit: { heaters: ["sump-pad-220"], covers: [] },
      known: { at: "2026-01-10T00:00:00Z", place: "ramp", covers_on: [], initial: { all_c: -18 } },
      probes: [
        {
          id: "oil",
          name: "oil",
          at: "oil",
          via: { kind: "mqtt", topic: "lynx/oil", pointer: "/temp_c" },
          unit: "c",
          at_most_c: 90,
        },
      ],
      switches: [padSwitch],
    },
  ],
  probes: [],
};

/** [ms] how long before the departure the plans here heat, and how long before it they stop. */
export const HEAT_BEFORE = 9000;
export const UNPLUG_BEFORE = 3000;

/** A real plan, made once before anything else runs; planning itself is held elsewhere. */
const template = realPlan();

function realPlan(): PlanDocument {
  const outcome = planOf(stateOf(opening.events), "lynx", { now: OPENED, members: 20 });
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result.plan;
}

/** It, moved to the times that a test needs. */
function movedPlan(departure: number, now: number): PlanDocument {
  const stamp = (ms: number) => ({ at_h: (ms - now) / 3_600_000, time: new Date(ms).toISOString() });
  return {
    ...template,
    ...{ status: "ready", message: null, chance: 0.95, too_hot: [], start: stamp(now) },
    look_first: [],
    heating: null,
    heaters: [{ ...template.heaters[0], id: "sump-pad-220", name: "pad", attended: false, longest_on_h: 24 }],
    plug_in: stamp(departure - HEAT_BEFORE),
    unplug: stamp(departure - UNPLUG_BEFORE),
    departure: stamp(departure),
  };
}

/** Plans every departure to be heated for in the same seconds before it; estimates nothing. */
const secondsPlanner: Planner = {
  waiting: 0,
  async update({ aircraft, state, now, withPlan }) {
    const estimate = {
      status: "refused" as const,
      issues: [{ path: "logbook", expected: "weather", received: "none" }],
    };
    const departure = state.aircraft.get(aircraft)?.departures.find((one) => one.departure > now);
    if (!withPlan || departure === undefined) return { estimate };
    return {
      estimate,
      plan: { status: "completed", result: { plan: movedPlan(departure.departure, now), departure } },
    };
  },
  close: async () => undefined,
};

export interface Hangar {
  readonly keeper: Keeper;
  readonly store: Store;
  readonly data: string;
  readonly heater: Heater | Relay;
  /** Wants a departure so many [ms] from now; gives the event's id. */
  want(inMs: number): Promise<string>;
  events<K extends EventKind>(kind: K): Promise<EventOf<K>[]>;
  say(tempC: number): void;
  close(): Promise<void>;
}

/** A relay that is told over HTTP in the place of the switch. */
function overHttp(url: string, endless: boolean): HeaterSwitch {
  const get = (query: string) => ({ method: "GET", url: `${url}/r${query}` }) as const;
  const say = { on: get("?turn=on"), off: get("?turn=off") };
  const hear = { request: get(""), pointer: "/ison", on: "true", off: "false" };
  return { ...padSwitch, ...(endless ? {} : { on_time_s: 300 }), via: { kind: "http", say, hear } };
}

/** @param at the store's address; a new file where left out. */
export async function openHangar({
  at,
  over = "mqtt",
  endless = false,
}: {
  readonly at?: string;
  readonly over?: "mqtt" | "http";
  /** As an older logbook may have it: the relay does not go off by itself, and was left on. */
  readonly endless?: boolean;
} = {}): Promise<Hangar> {
  const folder = mkdtempSync(join(tmpdir(), "soakline-keeper-"));
  const data = at ?? join(folder, "base.sqlite");
  const store = await openStore(data);
  const relay = new Relay();
  relay.on = endless;
  const [lynx] = setUp.aircraft;
  const base: BaseSetUp =
    over === "mqtt"
      ? setUp
      : { ...setUp, aircraft: [{ ...lynx, switches: [overHttp(await relay.start(), endless)] }] };
  await store.append([{ kind: "set-up", id: randomUUID(), at: new Date().toISOString(), base }]);
  const keeper = await startKeeper({
    ...{ store, planner: secondsPlanner, http: { host: "127.0.0.1", port: 0 } },
    log: false,
  });
  const heater = over === "mqtt" ? new Heater(Number(new URL(keeper.brokerUrl).port)) : relay;
  if (heater instanceof Heater) await heater.start();
  const client = await mqtt.connectAsync(keeper.brokerUrl, { protocolVersion: 4 });
  client.on("error", () => undefined);
  let temp = -18;
  const talking = setInterval(() => {
    temp += 0.01;
    client.publish("lynx/oil", JSON.stringify({ temp_c: temp }));
  }, 200);
  const reader = await openStore(data);
  return {
    ...{ keeper, store, data, heater },
    async want(inMs) {
      const event: LogbookEvent = {
        ...{ kind: "departure-wanted", id: randomUUID(), at: new Date().toISOString() },
        ...{ aircraft: "lynx", departure: new Date(Date.now() + inMs).toISOString() },
      };
      await keeper.live.record([event]);
      return event.id;
    },
    async events<K extends EventKind>(kind: K) {
      const all = await reader.eventsAfter(0, 10_000);
      return all.flatMap(({ event }) => (event.kind === kind ? [event as EventOf<K>] : []));
    },
    say(tempC) {
      temp = tempC;
    },
    async close() {
      clearInterval(talking);
      await keeper.close();
      await client.endAsync(true);
      await heater.stop();
      await reader.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
