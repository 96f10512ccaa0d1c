import type { AddressInfo } from "node:net";
import { isoOf } from "../base/index.js";
import type { BaseSetUp, ProbeReading } from "../logbook/index.js";
import {
  type AccessOptions,
  createServer,
  type Live,
  type LiveChange,
  type ServerOptions,
} from "../server/index.js";
import type { Store } from "../store/index.js";
import { openBook } from "./book.js";
import { clientIdOf, startBroker } from "./broker.js";
import { createClock } from "./clocks.js";
import { openDemo } from "./demo/open.js";
import { type DemoProcess, startDemoProcess } from "./demo/start.js";
import { createFacts } from "./facts.js";
import { createIngest } from "./ingest.js";
import { createLive } from "./live.js";
import { createKeeperLog } from "./log.js";
import { createKeeperMetrics } from "./metrics.js";
import { createPilot } from "./pilot.js";
import type { Planner } from "./planner.js";
import { listenToProbes } from "./probes.js";
import { createRefusals } from "./refusals.js";
import { createSwitchboard } from "./switchboard.js";
import { windowsOf } from "./windows.js";

export interface KeeperOptions {
  /** Closed by the keeper, as the planner is. */
  readonly store: Store;
  readonly planner: Planner;
  /** Address of the MQTT broker; without it one is run inside this process. */
  readonly brokerUrl?: string;
  readonly http: { readonly host: string; readonly port: number };
  readonly access?: Partial<AccessOptions>;
  readonly webFolder?: string;
  readonly log?: ServerOptions["log"];
  /** The invented base with its made aircraft. */
  readonly demo?: { readonly worldFile?: string; readonly talks?: boolean };
  /** Where secrets of switches over HTTP are looked up. */
  readonly environment?: Readonly<Record<string, string | undefined>>;
  /** Seconds by the base's clock in a real one; 1 but for showing and testing. */
  readonly speed?: number;
}

export interface Keeper {
  readonly url: string;
  readonly brokerUrl: string;
  readonly live: Live;
  readonly demoPid: number | undefined;
  /** Heaters off and confirmed, or given up on, then everything written down and closed. */
  close(): Promise<void>;
}

/** [ms] by the base's clock. */
const TICK = 1000;
const LOOK_OVER = 15_000;
const ROLL_UP = 60_000;
/** [ms] real time for messages between two pieces of rolling up: a message takes several turns of the loop on its way. */
const ROLL_UP_PAUSE = 20;
const TIDY = 3_600_000;
const DAY = 24 * 3_600_000;
/** [ms] raw readings are kept, and means by the minute; longer ones stay. Project judgement: a winter of minutes. */
const KEEP_RAW = 30 * DAY;
const KEEP_MINUTES = 240 * DAY;
/** [s] real time heaters are given to confirm that they are off. */
const STOP_WITHIN_S = 15;

/** Starts what keeps a base: it listens, plans, switches and answers until it is closed. */
export async function startKeeper(options: KeeperOptions): Promise<Keeper> {
  /** What is to be closed, the last first. */
  const closing: (() => unknown)[] = [() => options.store.close(), () => options.planner.close()];
  try {
    return await started(options, closing);
  } catch (error) {
    for (const close of closing.reverse()) await close();
    throw error;
  }
}

async function started(options: KeeperOptions, closing: (() => unknown)[]): Promise<Keeper> {
  const { store, planner, speed = 1 } = options;
  const log = createKeeperLog(options.log ?? false);
  const metrics = createKeeperMetrics();
  const clock = createClock(speed);
  const brokerUrl = options.brokerUrl ?? (await embeddedBroker());
  const book = await openBook(store);
  const demo = options.demo === undefined ? undefined : await openDemo(book, store, clock.now());
  const clientId = await clientIdOf(store);
  const listeners = new Set<(change: LiveChange) => void>();
  let writable = true;
  let child: DemoProcess | undefined;

  const facts = createFacts((events) => book.record(events), storeFails);
  const switchboard = createSwitchboard({
    ...{ store, brokerUrl, clientId, clock: clock.forSwitches, onLog: log.onLog },
    record: facts.add,
    state: book.state,
    environment: options.environment ?? {},
  });
  const pilot = createPilot({ store, book, planner, clock: clock.now, onChange: tell, log: log.write });
  const ingest = createIngest({
    async keep(rows) {
      const { kept, known } = await store.appendReadings(rows);
      metrics.kept(kept, known);
    },
    onKept: metrics.ingested,
    onTrouble: storeFails,
    mono: () => performance.now(),
  });
  const probes = listenToProbes({
    ...{ brokerUrl, clientId: `${clientId}-probes`, clock: clock.now, onLog: log.onLog },
    onReading(reading) {
      metrics.received();
      ingest.add(reading);
      heard(reading);
    },
    onRefused: metrics.refused,
  });
  const refusals = createRefusals();
  book.onKept((events) => {
    if (events.some(({ kind }) => kind === "set-up" || kind === "correction")) takeSetUp();
    switchByPlans();
    pilot.heard(events);
    tell({ what: "logbook", sequence: book.sequence });
    child?.tell({ standing: standing() });
  });

  const live = createLive({
    ...{ store, book, pilot, switchboard, listeners, heard },
    recordFailed: () => void lookOverStore(),
    unable: () => [
      ...(writable ? [] : ["The store cannot be written: heaters stay off."]),
      ...switchboard.troubles(),
      ...probes.troubles(),
    ],
  });
  const app = await createServer({
    ...{ store, clock: clock.now, live, metrics: metrics.registry, log: options.log ?? false },
    access: { hosts: [], https: false, ...options.access },
    ...(options.webFolder === undefined ? {} : { webFolder: options.webFolder }),
  });
  closing.push(() => app.close());
  await app.listen({ host: options.http.host, port: options.http.port });
  takeSetUp();
  switchByPlans();
  if (demo !== undefined) {
    child = startDemoProcess({
      ...{ url: brokerUrl, seed: demo.seed, opened: demo.opened, from: clock.now(), speed },
      ...options.demo,
    });
    child.tell({ standing: standing() });
  }
  const onTrouble = (error: unknown) => log.write("error", "a regular task failed", { error: String(error) });
  const endings = [
    clock.every(TICK, tick, onTrouble),
    clock.every(LOOK_OVER, lookOverStore, onTrouble),
    clock.every(ROLL_UP, rollUp, onTrouble),
    clock.every(TIDY, tidy, onTrouble),
  ];
  pilot.tick();
  let closed: Promise<void> | undefined;
  const { host } = options.http;
  return {
    url: `http://${host.includes(":") ? `[${host}]` : host}:${(app.server.address() as AddressInfo).port}`,
    brokerUrl,
    live,
    demoPid: child?.pid,
    close() {
      closed ??= close();
      return closed;
    },
  };

  async function embeddedBroker(): Promise<string> {
    const broker = await startBroker();
    closing.push(broker.close);
    return broker.url;
  }

  function tell(change: LiveChange): void {
    for (const listener of listeners) listener(change);
  }

  /** Switching does not wait for the disk. */
  function heard(reading: ProbeReading): void {
    switchboard.read(reading);
    pilot.read(reading.aircraft);
  }

  function storeFails(error: unknown): void {
    if (writable) log.write("error", "the store cannot be written: heaters go off", { error: String(error) });
    writable = false;
    switchboard.storeFailed();
  }

  async function lookOverStore(): Promise<void> {
    try {
      await store.check();
    } catch (error) {
      storeFails(error);
      return;
    }
    if (!(await facts.flush())) return;
    if (!writable) log.write("info", "the store can be written again");
    writable = true;
  }

  function takeSetUp(): void {
    const setUp: BaseSetUp | undefined = book.state()?.setUp;
    if (setUp === undefined) return;
    switchboard.setUp(setUp);
    probes.setUp(setUp);
  }

  /** Tells the switches what the plans want of them; those that cannot be carried out are said once. */
  function switchByPlans(): void {
    const state = book.state();
    if (state === undefined) return;
    const { windows, refused } = windowsOf(state, clock.now());
    switchboard.plan(windows);
    for (const event of refusals.news(state, refused, isoOf(clock.now()))) facts.add(event);
  }

  function standing() {
    return Object.fromEntries(
      [...(book.state()?.aircraft ?? [])].map(([id, { place, coversOn, heatersOn }]) => [
        id,
        { place, coversOn, heatersOn },
      ]),
    );
  }

  function tick(): void {
    switchByPlans();
    pilot.tick();
    metrics.waiting(ingest.waiting, planner.waiting);
  }

  async function rollUp(): Promise<void> {
    await store.rollUp(ROLL_UP_PAUSE);
    await book.refresh();
  }

  async function tidy(): Promise<void> {
    const now = clock.now();
    await store.removeExpiredSessions(now);
    await store.dropRawBefore(now - KEEP_RAW);
    await store.dropMinutesBefore(now - KEEP_MINUTES);
  }

  async function close(): Promise<void> {
    const failed = (what: string) => (error: unknown) => log.write("error", what, { error: String(error) });
    log.write("info", "stopping: heaters go off");
    for (const end of endings) end();
    // Heaters first: nothing else may keep them waiting.
    const areOff = await switchboard.stop(STOP_WITHIN_S * speed);
    if (!areOff) log.write("error", "stopping: not every heater confirmed that it is off");
    await probes.close();
    await pilot.close().catch(failed("estimates were not kept"));
    await ingest.flush();
    if (!(await facts.flush())) log.write("error", `stopping: ${facts.waiting} events could not be written`);
    await child?.close();
    for (const end of closing.reverse()) await Promise.resolve(end()).catch(failed("closing failed"));
    log.write("info", "stopped");
  }
}
