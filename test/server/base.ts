import type { InjectOptions } from "fastify";
import { Registry } from "prom-client";
import type { NowDocument } from "../../src/documents/index.js";
import { finding } from "../../src/findings/index.js";
import { type BaseSetUp, deriveBase, type EventKind } from "../../src/logbook/index.js";
import {
  createServer,
  type HandSwitching,
  type Live,
  type LiveChange,
  type ServerOptions,
  type StandingPlan,
} from "../../src/server/index.js";
import { openStore, type Store } from "../../src/store/index.js";

export const START = Date.parse("2026-01-14T18:00:00Z");

export const SET_UP: BaseSetUp = {
  soakline_base: 3,
  name: "Ravnholt Strip",
  notice: "Invented.",
  zone: "Europe/Oslo",
  circuits: [{ id: "ramp", name: "Ramp", limit_a: 16, voltage_v: 230, outlets: 2 }],
  aircraft: [
    {
      id: "lynx",
      name: "Lynx",
      engine: "four-carburettor-160",
      kit: { heaters: ["sump-pad-220"], covers: ["insulated-cover"] },
      known: { at: "2026-01-14T12:00:00Z", place: "ramp", covers_on: [], initial: { all_c: -20 } },
      circuit: "ramp",
      probes: [{ id: "oil-1", name: "Oil", at: "oil", unit: "c" }],
      switches: [
        {
          id: "pad-switch",
          name: "Pad",
          heaters: ["sump-pad-220"],
          longest_on_min: 360,
          via: {
            kind: "mqtt",
            say: { topic: "lynx/pad/set", on: "ON", off: "OFF" },
            hear: { topic: "lynx/pad/state", on: "ON", off: "OFF" },
          },
        },
      ],
    },
  ],
  probes: [{ id: "air-1", name: "Outside", at: "outside_air", unit: "c" }],
};

export interface TestBase {
  readonly app: Awaited<ReturnType<typeof createServer>>;
  readonly store: Store;
  readonly live: LiveDouble;
  readonly logged: string[];
  /** [ms] since 1970 UTC; tests turn it on. */
  now: number;
  ask(request: Ask): Promise<Answer>;
}

interface Ask {
  readonly method?: InjectOptions["method"] & string;
  readonly url: string;
  readonly body?: unknown;
  readonly from?: string;
  readonly host?: string;
  readonly cookie?: string;
  readonly token?: string;
  /** Over those that the web app sends. */
  readonly headers?: Record<string, string | undefined>;
}

export interface Answer {
  readonly status: number;
  readonly headers: Record<string, string | string[] | number | undefined>;
  readonly text: string;
  // biome-ignore lint/suspicious/noExplicitAny: answers are looked into by the tests
  readonly body: any;
  /** "name=value" of the session cookie it sets; empty when it clears it. */
  readonly cookie: string | undefined;
}

interface LiveDouble extends Live {
  readonly switched: HandSwitching[];
  readonly planMap: Map<string, StandingPlan>;
  readonly nowMap: Map<string, NowDocument>;
  ready: boolean;
  tell(change: LiveChange): void;
  readonly listeners: ReadonlySet<(change: LiveChange) => void>;
  reload(): Promise<void>;
}

export async function openBase(
  options: Omit<Partial<ServerOptions>, "access"> & { access?: Partial<ServerOptions["access"]> } = {},
): Promise<TestBase> {
  const logged: string[] = [];
  const base = { now: START, logged } as { -readonly [K in keyof TestBase]: TestBase[K] };
  const clock = () => base.now;
  base.store = await openStore(":memory:", { clock });
  base.live = liveDouble(base.store);
  base.app = await createServer({
    store: base.store,
    clock,
    live: base.live,
    log: { level: "info", stream: { write: (line) => void logged.push(line) } },
    metrics: new Registry(),
    ...options,
    access: { hosts: ["base.lan"], https: false, ...options.access },
  });
  base.ask = (request) => ask(base.app, request);
  return base;
}

async function ask(app: TestBase["app"], request: Ask): Promise<Answer> {
  const { method = "GET", url, body, from = "127.0.0.1", host = "127.0.0.1:8140", cookie, token } = request;
  const headers: Record<string, string> = { host };
  if (method !== "GET") {
    headers["soakline-request"] = "1";
    headers.origin = `http://${host}`;
  }
  if (cookie !== undefined) headers.cookie = cookie;
  if (token !== undefined) headers.authorization = `Bearer ${token}`;
  for (const [name, value] of Object.entries(request.headers ?? {})) {
    if (value === undefined) delete headers[name];
    else headers[name] = value;
  }
  const response = await app.inject({
    method: method as "GET",
    url,
    headers,
    remoteAddress: from,
    ...(body === undefined ? {} : { payload: body as object }),
  });
  const set = response.cookies.find(({ name }) => name.endsWith("soakline_session"));
  return {
    status: response.statusCode,
    headers: response.headers,
    text: response.body,
    body: /json/.test(String(response.headers["content-type"])) ? JSON.parse(response.body) : undefined,
    cookie: set === undefined ? undefined : set.value === "" ? "" : `${set.name}=${set.value}`,
  };
}

function liveDouble(store: Store): LiveDouble {
  let state: ReturnType<typeof deriveBase>;
  const listeners = new Set<(change: LiveChange) => void>();
  const live: LiveDouble = {
    switched: [],
    planMap: new Map(),
    nowMap: new Map(),
    ready: true,
    listeners,
    tell: (change) => {
      for (const listener of listeners) listener(change);
    },
    async reload() {
      state = deriveBase((await store.eventsAfter(0, 10_000)).map(({ event }) => event));
    },
    state: () => state,
    plans: () => live.planMap,
    now: () => live.nowMap,
    async record(events) {
      const result = await store.append(events);
      await live.reload();
      const sequence = result.kept.at(-1)?.sequence;
      if (sequence !== undefined) live.tell({ what: "logbook", sequence });
      return result;
    },
    ingest: (readings) => store.appendReadings(readings),
    async acknowledge(fault, by) {
      const open = [
        ...(state?.faults ?? []),
        ...[...(state?.aircraft.values() ?? [])].flatMap((a) => a.faults),
      ];
      if (!open.some(({ id }) => id === fault)) return { status: "unknown" };
      const at = new Date(START).toISOString();
      await live.record([{ id: crypto.randomUUID(), at, by, kind: "fault-cleared", of: fault }]);
      return { status: "done" };
    },
    async switchByHand(order) {
      if (order.switch === "pad-switch" && order.minutes === 999) {
        return { status: "refused", reason: finding("on-time-used-up", { longest_min: 60 }) };
      }
      if (order.switch !== "pad-switch") return { status: "unknown" };
      live.switched.push(order);
      return { status: "done" };
    },
    onChange(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    health: () => ({ ready: live.ready, reasons: live.ready ? [] : [finding("broker-unreachable", {})] }),
  };
  return live;
}

export const PASSWORD = "four lame herons on ice";

/** Sets up the owner "Astrid" and signs in; the cookie to send. */
export async function setUpOwner({ ask }: TestBase): Promise<string> {
  const answer = await ask({
    method: "POST",
    url: "/api/v1/access/owner",
    body: { name: "Astrid", password: PASSWORD },
  });
  if (answer.status !== 201) throw new Error(`owner not set up: ${answer.text}`);
  return answer.cookie!;
}

/** Adds an account and signs in as it. */
export async function signedInAs(
  base: TestBase,
  owner: string,
  role: "owner" | "pilot" | "viewer",
  name: string,
) {
  const added = await base.ask({
    method: "POST",
    url: "/api/v1/users",
    cookie: owner,
    body: { name, password: PASSWORD, role },
  });
  if (added.status !== 201) throw new Error(`account not added: ${added.text}`);
  const signedIn = await base.ask({
    method: "POST",
    url: "/api/v1/access/session",
    body: { name, password: PASSWORD },
  });
  return signedIn.cookie!;
}

export async function newTokenOf(base: TestBase, kind: "device" | "calendar", cookie?: string) {
  const made = await base.ask({
    method: "POST",
    url: "/api/v1/tokens",
    body: { name: `a ${kind}`, kind },
    ...(cookie === undefined ? {} : { cookie }),
  });
  return made.body as { id: string; token: string };
}

/** An event with what every event has. */
export function event<T extends { readonly kind: EventKind }>(rest: T, at = START) {
  return { id: crypto.randomUUID() as string, at: new Date(at).toISOString(), ...rest };
}

export function post(base: TestBase, events: readonly unknown[], cookie?: string): Promise<Answer> {
  return base.ask({
    method: "POST",
    url: "/api/v1/events",
    body: { events },
    ...(cookie === undefined ? {} : { cookie }),
  });
}
