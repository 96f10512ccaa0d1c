import type { AddressInfo } from "node:net";
import { isoOf } from "../base/index.js";
import type { ProbeReading } from "../logbook/index.js";
import {
  type AccessOptions,
  createServer,
  type Live,
  type LiveChange,
  type ServerOptions,
} from "../server/index.js";
import type { Store } from "../store/index.js";
import { type Book, openBook } from "./book.js";
import { clientIdOf, startBroker } from "./broker.js";
import { type BaseClock, createClock } from "./clocks.js";
import { type OpenedDemo, openDemo } from "./demo/open.js";
import { type DemoProcess, startDemoProcess } from "./demo/start.js";
import { createIngest } from "./ingest.js";
import { createLive } from "./live.js";
import { createKeeperLog } from "./log.js";
import { createKeeperMetrics } from "./metrics.js";
import { createPlanScheduler } from "./plan-scheduler.js";
import type { Planner } from "./planner.js";
import { listenToProbes } from "./probes.js";
import { createRefusals } from "./refusals.js";
import { createStoreWatch } from "./store-watch.js";
import { createSwitchboard } from "./switchboard.js";
import { rollUpAndTidy } from "./upkeep.js";
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
/** [s] real time heaters are given to confirm that they are off. */
const STOP_WITHIN_S = 15;

/** What is to be closed, the last first. */
type Closing = (() => unknown)[];

/** Starts what keeps a base: it listens, plans, switches and answers until it is closed. */
export async function startKeeper(options: KeeperOptions): Promise<Keeper> {
  const { store, planner } = options;
  const closing: Closing = [() => store.close(), () => planner.close()];
  try {
    const clock = createClock(options.speed ?? 1);
    const brokerUrl = options.brokerUrl ?? (await embeddedBroker(closing));
    const book = await openBook(store);
    const demo = options.demo === undefined ? undefined : await openDemo(book, store, clock.now());
    const links = { brokerUrl, clientId: await clientIdOf(store) };
    const keeper = new RunningKeeper(options, { book, clock, closing, ...links });
    return await keeper.start(demo);
  } catch (error) {
    for (const close of closing.reverse()) await close();
    throw error;
  }
}

async function embeddedBroker(closing: Closing): Promise<string> {
  const broker = await startBroker();
  closing.push(broker.close);
  return broker.url;
}

interface Opened {
  readonly book: Book;
  readonly clock: BaseClock;
  readonly brokerUrl: string;
  readonly clientId: string;
  readonly closing: Closing;
}

class RunningKeeper {
  private readonly log;
  private readonly metrics = createKeeperMetrics();
  private readonly listeners = new Set<(change: LiveChange) => void>();
  private readonly refusals = createRefusals();
  private readonly watch;
  private readonly switchboard;
  private readonly scheduler;
  private readonly ingest;
  private readonly probes;
  private readonly live: Live;
  private child: DemoProcess | undefined;
  private endings: (() => void)[] = [];
  private closed: Promise<void> | undefined;

  constructor(
    private readonly options: KeeperOptions,
    private readonly opened: Opened,
  ) {
    const { store, planner, environment = {} } = options;
    const { book, clock, brokerUrl, clientId } = opened;
    const log = createKeeperLog(options.log ?? false);
    this.log = log;
    const watch = createStoreWatch({
      store,
      book,
      log: log.write,
      onFailed: () => this.switchboard.storeFailed(),
    });
    this.watch = watch;
    this.switchboard = createSwitchboard({
      store,
      brokerUrl,
      clientId,
      environment,
      clock: clock.forSwitches,
      onLog: log.onLog,
      record: watch.facts.add,
      state: book.state,
    });
    this.scheduler = createPlanScheduler({
      store,
      book,
      planner,
      clock: clock.now,
      onChange: (change) => this.tell(change),
      log: log.write,
    });
    this.ingest = createIngest({
      keep: async (rows) => {
        const { kept, known } = await store.appendReadings(rows);
        this.metrics.kept(kept, known);
      },
      onKept: this.metrics.ingested,
      onTrouble: watch.failed,
      mono: () => performance.now(),
    });
    this.probes = listenToProbes({
      brokerUrl,
      clientId: `${clientId}-probes`,
      clock: clock.now,
      onLog: log.onLog,
      onReading: (reading) => {
        this.metrics.received();
        this.ingest.add(reading);
        this.heard(reading);
      },
      onRefused: this.metrics.refused,
    });
    this.live = createLive({
      store,
      book,
      scheduler: this.scheduler,
      switchboard: this.switchboard,
      listeners: this.listeners,
      heard: (reading) => this.heard(reading),
      recordFailed: () => void watch.lookOver(),
      unable: () => [...watch.troubles(), ...this.switchboard.troubles(), ...this.probes.troubles()],
    });
  }

  async start(demo: OpenedDemo | undefined): Promise<Keeper> {
    const { store, http, access, webFolder, speed = 1 } = this.options;
    const { book, clock, brokerUrl, closing } = this.opened;
    book.onKept((events) => {
      if (events.some(({ kind }) => kind === "set-up" || kind === "correction")) this.takeSetUp();
      this.switchByPlans();
      this.scheduler.heard(events);
      this.tell({ what: "logbook", sequence: book.sequence });
      this.child?.tell({ standing: this.standing() });
    });
    const app = await createServer({
      store,
      clock: clock.now,
      live: this.live,
      metrics: this.metrics.registry,
      log: this.options.log ?? false,
      access: { hosts: [], https: false, ...access },
      ...(webFolder === undefined ? {} : { webFolder }),
    });
    closing.push(() => app.close());
    await app.listen(http);
    this.takeSetUp();
    this.switchByPlans();
    if (demo !== undefined) {
      const { seed, opened } = demo;
      this.child = startDemoProcess({
        ...{ url: brokerUrl, seed, opened, from: clock.now(), speed },
        ...this.options.demo,
      });
      this.child.tell({ standing: this.standing() });
    }
    this.beginTasks();
    const host = http.host.includes(":") ? `[${http.host}]` : http.host;
    return {
      url: `http://${host}:${(app.server.address() as AddressInfo).port}`,
      brokerUrl,
      live: this.live,
      demoPid: this.child?.pid,
      close: () => {
        this.closed ??= this.close();
        return this.closed;
      },
    };
  }

  private beginTasks(): void {
    const { book, clock } = this.opened;
    const onTrouble = (error: unknown) =>
      this.log.write("error", "a regular task failed", { error: String(error) });
    this.endings = [
      clock.every(TICK, () => this.tick(), onTrouble),
      clock.every(LOOK_OVER, () => this.watch.lookOver(), onTrouble),
      ...rollUpAndTidy(this.options.store, book, clock, onTrouble),
    ];
    this.scheduler.tick();
  }

  private tick(): void {
    this.switchByPlans();
    this.scheduler.tick();
    this.metrics.waiting(this.ingest.waiting, this.options.planner.waiting);
  }

  private tell(change: LiveChange): void {
    for (const listener of this.listeners) listener(change);
  }

  /** Switching does not wait for the disk. */
  private heard(reading: ProbeReading): void {
    this.switchboard.read(reading);
    this.scheduler.read(reading.aircraft);
  }

  private takeSetUp(): void {
    const setUp = this.opened.book.state()?.setUp;
    if (setUp === undefined) return;
    this.switchboard.setUp(setUp);
    this.probes.setUp(setUp);
  }

  /** Tells the switches what the plans want of them; those that cannot be carried out are said once. */
  private switchByPlans(): void {
    const { book, clock } = this.opened;
    const state = book.state();
    if (state === undefined) return;
    const { windows, refused } = windowsOf(state, clock.now());
    this.switchboard.plan(windows);
    for (const event of this.refusals.news(state, refused, isoOf(clock.now()))) this.watch.facts.add(event);
  }

  /** What people did with the aircraft, for the made world. */
  private standing() {
    const aircraft = [...(this.opened.book.state()?.aircraft ?? [])];
    return Object.fromEntries(
      aircraft.map(([id, { place, coversOn, heatersOn }]) => [id, { place, coversOn, heatersOn }]),
    );
  }

  private async close(): Promise<void> {
    const { write } = this.log;
    const { facts } = this.watch;
    const failed = (what: string) => (error: unknown) => write("error", what, { error: String(error) });
    write("info", "stopping: heaters go off");
    for (const end of this.endings) end();
    // Heaters first: nothing else may keep them waiting.
    const areOff = await this.switchboard.stop(STOP_WITHIN_S * (this.options.speed ?? 1));
    if (!areOff) write("error", "stopping: not every heater confirmed that it is off");
    await this.probes.close();
    await this.scheduler.close().catch(failed("estimates were not kept"));
    await this.ingest.flush();
    if (!(await facts.flush())) write("error", `stopping: ${facts.waiting} events could not be written`);
    await this.child?.close();
    for (const end of this.opened.closing.reverse())
      await Promise.resolve(end()).catch(failed("closing failed"));
    write("info", "stopped");
  }
}
