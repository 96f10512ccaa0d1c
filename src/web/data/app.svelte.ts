import type { PlanDocument } from "../../documents/index.js";
import type { LogbookEvent } from "../../logbook/index.js";
import { isoOf } from "../units/times.js";
import { Dropped, Planner, Refusal } from "../worker/planner.js";
import type { AircraftView, BaseView, FrostView } from "../worker/protocol.js";
import { type Book, clearBook, type Db, eventsOf, keepOwn, note, openBook, saveNote } from "./db.js";
import { settings } from "./settings.svelte.js";
import { Sync } from "./sync.svelte.js";

/** A plan as far as it is known, and whether a better one is on its way. */
export interface PlanState {
  readonly plan?: PlanDocument;
  /** Why there is no plan; the last known one stays beside it. */
  readonly reasons?: readonly string[];
  readonly isBusy: boolean;
  /** When it was made. */
  readonly at: number;
}

/** A departure that is tried out; nothing is kept of it. */
export interface Trial {
  readonly aircraft: string;
  readonly departure: number;
  readonly chance?: number;
}

/** Drawn cases: a first answer while a finger moves, a better one, and the one that stays. */
const QUICK = 20;
const FINE = 300;
/** [ms] after which plans are made anew because time has passed. */
const STALE = 10 * 60_000;

/** What everybody's screens show: the base as it stands, its plans, and how both are kept. */
class App {
  view = $state.raw<BaseView>();
  events = $state.raw<readonly LogbookEvent[]>([]);
  plans = $state.raw<Readonly<Record<string, PlanState>>>({});
  frost = $state.raw<FrostView>();
  trial = $state.raw<Trial>();
  now = $state(Date.now());
  /** The aircraft that screens about one aircraft speak of. */
  selected = $state<string>();
  /** What keeps the device from keeping things. */
  storage = $state<"fine" | "full" | "closed" | "other-tab" | "opening">("opening");
  /** Said to those who listen rather than look. */
  spoken = $state("");

  readonly planner = new Planner();
  readonly sync = new Sync();
  #db: Db | undefined;
  #others: BroadcastChannel | undefined;
  #trying = false;

  get aircraft(): AircraftView | undefined {
    const all = this.view?.aircraft ?? [];
    return all.find(({ id }) => id === this.selected) ?? all[0];
  }

  /** The open book says nothing of a base yet. */
  get isEmpty(): boolean {
    return (
      this.storage !== "opening" &&
      this.view === undefined &&
      !this.events.some(({ kind }) => kind === "set-up")
    );
  }

  /** Begins with what the device knows; a page without a chosen book waits for the user. */
  async start(): Promise<void> {
    setInterval(() => this.#tick(), 15_000);
    const { book } = settings.all;
    if (book === undefined) this.storage = "fine";
    else await this.open(book);
  }

  async open(book: Book): Promise<void> {
    try {
      this.#db?.close();
      this.#db = await openBook(book, () => {
        this.storage = "other-tab";
      });
      this.storage = "fine";
    } catch {
      this.storage = "closed";
    }
    settings.change({ book });
    this.#listen(book);
    const db = this.#db;
    if (db !== undefined) {
      const [view, plans] = await Promise.all([note<BaseView>(db, "view"), note<App["plans"]>(db, "plans")]);
      if (view !== undefined) this.view = view;
      if (plans !== undefined) this.plans = plans;
      this.events = await eventsOf(db);
    }
    await this.refresh();
    if (book === "own" && db !== undefined) this.sync.start(db, () => this.#reload());
  }

  /** Keeps events and shows what they change. */
  async record(...events: readonly LogbookEvent[]): Promise<void> {
    this.events = [...this.events, ...events];
    if (this.#db !== undefined) {
      try {
        await keepOwn(this.#db, events);
      } catch (error) {
        this.storage =
          error instanceof DOMException && error.name === "QuotaExceededError" ? "full" : "closed";
      }
    }
    this.#others?.postMessage("events");
    await this.refresh();
    if (settings.all.book === "own") void this.sync.send();
  }

  /** Takes the demo in as a book of its own. */
  async openDemo(): Promise<void> {
    const db = await openBook("demo", () => {});
    await clearBook(db);
    const events = await this.planner.ask("demo", { now: this.#moment() });
    await keepOwn(db, events);
    db.close();
    this.#forget();
    await this.open("demo");
  }

  /** Throws away what this device keeps of the open book. */
  async leave(): Promise<void> {
    if (this.#db !== undefined) await clearBook(this.#db);
    this.#db?.close();
    this.#db = undefined;
    this.sync.stop();
    this.#forget();
    settings.change({ book: undefined as unknown as Book });
  }

  /** Shows the logbook's meaning and plans everything anew. */
  async refresh(): Promise<void> {
    if (!this.events.some(({ kind }) => kind === "set-up")) return;
    try {
      this.now = this.#moment();
      this.view = await this.planner.ask("open", {
        events: $state.snapshot(this.events) as LogbookEvent[],
        now: this.now,
      });
      this.#keep("view", this.view);
    } catch (error) {
      if (error instanceof Dropped) return;
      this.spoken = error instanceof Error ? error.message : String(error);
      return;
    }
    void this.#planAll();
  }

  /** Shows what another departure, or another chance, would mean, while it is being chosen. */
  async tryOut(trial: Trial): Promise<void> {
    this.trial = trial;
    if (this.#trying) return;
    this.#trying = true;
    try {
      for (let tried: Trial | undefined; this.trial !== undefined && this.trial !== tried; ) {
        tried = this.trial;
        await this.#plan(tried.aircraft, QUICK, tried);
      }
      if (this.trial !== undefined) await this.#plan(this.trial.aircraft, FINE / 3, this.trial);
    } finally {
      this.#trying = false;
    }
  }

  /** Keeps the departure that was tried. */
  async keepTrial(): Promise<void> {
    const { trial } = this;
    if (trial === undefined) return;
    this.trial = undefined;
    const aircraft = this.view?.aircraft.find(({ id }) => id === trial.aircraft);
    const before = aircraft?.departures[0];
    const at = isoOf(this.#moment());
    const { aircraft: id, departure, chance = before?.chance } = trial;
    await this.record(
      ...(before === undefined
        ? []
        : [{ kind: "departure-dropped", id: newId(), at, aircraft: id, of: before.id } as const]),
      {
        ...{ kind: "departure-wanted", id: newId(), at, aircraft: id, departure: isoOf(departure) },
        pulled_out: before?.pulledOut ?? false,
        ...(chance === undefined ? {} : { chance }),
        ...(before?.heaters === undefined ? {} : { heaters: [...before.heaters] }),
      },
    );
  }

  async dropTrial(): Promise<void> {
    const { trial } = this;
    this.trial = undefined;
    if (trial !== undefined) await this.#plan(trial.aircraft, FINE);
  }

  #forget(): void {
    this.view = undefined;
    this.events = [];
    this.plans = {};
    this.frost = undefined;
    this.trial = undefined;
    this.selected = undefined;
  }

  async #planAll(): Promise<void> {
    const ids = (this.view?.aircraft ?? []).filter((a) => a.departures.length > 0).map(({ id }) => id);
    const plans = Object.fromEntries(Object.entries(this.plans).filter(([id]) => ids.includes(id)));
    if (Object.keys(plans).length !== Object.keys(this.plans).length) this.plans = plans;
    const missing = ids.filter((id) => this.plans[id]?.plan === undefined);
    for (const id of missing) await this.#plan(id, QUICK);
    void this.#planFrost();
    for (const id of ids) if (this.trial?.aircraft !== id) await this.#plan(id, FINE);
    this.#keep("plans", this.plans);
  }

  async #planFrost(): Promise<void> {
    if (this.view?.weather === undefined) return;
    try {
      this.frost = await this.planner.ask("frost", { now: this.now }, { lane: "frost" });
    } catch {
      // The row then stays empty; air and sky are shown all the same.
      this.frost = undefined;
    }
  }

  async #plan(aircraft: string, members: number, trial?: Trial): Promise<void> {
    const before = this.plans[aircraft];
    this.plans = { ...this.plans, [aircraft]: { ...before, isBusy: true, at: before?.at ?? this.now } };
    try {
      const plan = await this.planner.ask(
        "plan",
        {
          ...{ aircraft, members, now: this.#moment() },
          ...(trial === undefined ? {} : { departure: trial.departure }),
          ...(trial?.chance === undefined ? {} : { chance: trial.chance }),
        },
        { lane: `plan ${aircraft}` },
      );
      this.plans = { ...this.plans, [aircraft]: { plan, isBusy: false, at: this.#moment() } };
    } catch (error) {
      if (error instanceof Dropped) return;
      const reasons =
        error instanceof Refusal ? error.reasons : [error instanceof Error ? error.message : String(error)];
      this.plans = { ...this.plans, [aircraft]: { ...before, reasons, isBusy: false, at: this.#moment() } };
    }
  }

  #keep(key: string, value: unknown): void {
    if (this.#db === undefined) return;
    saveNote(this.#db, key, $state.snapshot(value)).catch((error) => {
      if (error instanceof DOMException && error.name === "QuotaExceededError") this.storage = "full";
    });
  }

  /** Tabs of one book tell each other of what is new. */
  #listen(book: Book): void {
    this.#others?.close();
    this.#others = new BroadcastChannel(`soakline-${book}`);
    this.#others.addEventListener("message", () => void this.#reload());
  }

  async #reload(): Promise<void> {
    if (this.#db === undefined) return;
    this.events = await eventsOf(this.#db);
    await this.refresh();
  }

  #tick(): void {
    this.now = this.#moment();
    const oldest = Math.min(...Object.values(this.plans).map(({ at }) => at));
    if (Number.isFinite(oldest) && this.now - oldest > STALE && this.trial === undefined) void this.refresh();
  }

  #moment(): number {
    return Date.now();
  }
}

export function newId(): string {
  return crypto.randomUUID();
}

export const app = new App();
