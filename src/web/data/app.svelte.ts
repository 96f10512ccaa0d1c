import type { LogbookEvent } from "../../logbook/index.js";
import { USUAL_MEMBERS } from "../../simulation/members.js";
import { isoOf } from "../units/times.js";
import { Dropped, Planner } from "../worker/planner.js";
import type { AircraftView, BaseView, FrostView, ReplanPart } from "../worker/protocol.js";
import { type Book, clearBook, type Db, eventsOf, keepOwn, note, openBook, saveNote } from "./db.js";
import { type PlanState, readablePlans, withFirst } from "./plan-state.js";
import { settings } from "./settings.svelte.js";
import { Sync } from "./sync.svelte.js";

/** A departure that is tried out; nothing is kept of it. */
interface Trial {
  readonly aircraft: string;
  readonly departure: number;
  readonly chance?: number;
}

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
      if (plans !== undefined) this.plans = readablePlans(plans);
      this.events = await eventsOf(db);
    }
    await this.refresh();
    if (book === "own" && db !== undefined) this.sync.start(db, () => this.#heardOfNews());
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
  tryOut(trial: Trial): void {
    this.trial = trial;
    void this.#replan();
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

  dropTrial(): void {
    if (this.trial === undefined) return;
    this.#unsettle(this.trial.aircraft);
    this.trial = undefined;
    void this.#replan();
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
    this.plans = Object.fromEntries(Object.entries(this.plans).filter(([id]) => ids.includes(id)));
    for (const id of ids) this.#unsettle(id);
    await this.#replan();
  }

  /** What is shown of this aircraft has to be worked out anew. */
  #unsettle(id: string): void {
    const before = this.plans[id];
    this.#show(id, { ...before, isBusy: true, at: before?.at ?? this.now });
  }

  #show(id: string, state: PlanState): void {
    this.plans = { ...this.plans, [id]: state };
  }

  /** Plans what is unsettled, and first of all what is being tried. A newer question takes the place of this one. */
  async #replan(): Promise<void> {
    const { trial } = this;
    if (trial !== undefined) this.#unsettle(trial.aircraft);
    const others = Object.keys(this.plans).filter((id) => this.plans[id].isBusy && id !== trial?.aircraft);
    const now = this.#moment();
    const tried =
      trial === undefined
        ? []
        : [
            {
              ...{ id: trial.aircraft, departure: trial.departure },
              ...(trial.chance === undefined ? {} : { chance: trial.chance }),
            },
          ];
    const asked = [...tried, ...others.map((id) => ({ id }))];
    if (asked.length === 0) return;
    try {
      // The end of it is the end of getting ready for the next question; each plan was shown as it came.
      await this.planner.ask(
        "replan",
        { now, members: USUAL_MEMBERS, aircraft: asked },
        { lane: "replan", onPart: (part) => this.#heard(part, now) },
      );
    } catch (error) {
      if (error instanceof Dropped) return;
      const reasons = [error instanceof Error ? error.message : String(error)];
      for (const { id } of asked) {
        if (this.plans[id]?.isBusy) this.#show(id, { reasons, isBusy: false, at: now });
      }
      this.#settled();
    }
  }

  /** What is kept and what is asked next once all plans are there: what then still makes replanning faster is not waited for. */
  #settled(): void {
    if (this.trial !== undefined || Object.values(this.plans).some(({ isBusy }) => isBusy)) return;
    this.#keep("plans", this.plans);
    void this.#planFrost();
  }

  #heard(part: ReplanPart, now: number): void {
    const before = this.plans[part.aircraft];
    if (part.grade === "whole") this.#show(part.aircraft, { plan: part.plan, isBusy: false, at: now });
    else if (part.grade === "refused") {
      this.#show(part.aircraft, { reasons: part.reasons, isBusy: false, at: now });
    } else this.#show(part.aircraft, withFirst(before, part.plan, now));
    if (part.grade === "whole" || part.grade === "refused") this.#settled();
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

  /** The tab that fetched from the server tells the others, for whom nothing is left to be fetched. */
  #heardOfNews(): void {
    this.#others?.postMessage("events");
    void this.#reload();
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
