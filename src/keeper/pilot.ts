import { randomUUID } from "node:crypto";
import { isNews, isoOf, planIssued } from "../base/index.js";
import { issueText, type NowDocument, type Outcome, type SavedEstimate } from "../index.js";
import type { AircraftState, EventOf, LogbookEvent } from "../logbook/index.js";
import type { StandingPlan } from "../server/index.js";
import type { Store } from "../store/index.js";
import { isWanted, LONGEST_PAST, slim, strays } from "./aircraft-news.js";
import type { Book } from "./book.js";
import { createFindingFaults } from "./findings.js";
import type { Planner, UpdateResult } from "./planner.js";
import { readingsSince } from "./readings-since.js";

/** Keeps estimates and plans of all aircraft fresh, and writes down what changes. */
export interface Pilot {
  readonly plans: ReadonlyMap<string, StandingPlan>;
  readonly now: ReadonlyMap<string, NowDocument>;
  /** Once a minute, and whenever something was asked for. */
  tick(): void;
  /** Something was written down that plans hang on. */
  heard(events: readonly LogbookEvent[]): void;
  /** A probe of an aircraft, or of the base ("base"), said something. */
  read(aircraft: string): void;
  /** Why there is trouble, in sentences. */
  troubles(): readonly string[];
  /** Waits for what is under way, and keeps the estimates. */
  close(): Promise<void>;
}

export interface PilotOptions {
  readonly store: Pick<Store, "readings" | "rollUp" | "saveState" | "loadState">;
  readonly book: Book;
  readonly planner: Planner;
  /** [ms] since 1970 UTC. */
  readonly clock: () => number;
  readonly onChange: (change: { readonly what: "plan" | "now"; readonly aircraft: string }) => void;
  readonly log: (level: "info" | "warn" | "error", text: string, more?: object) => void;
}

/** [ms] between estimates of an aircraft whose probes speak, and between plans when nothing asks for a new one. */
const ESTIMATE_EVERY = 60_000;
const PLAN_EVERY = 10 * 60_000;
/** [ms] between keeping an estimate for the next start. */
const SAVE_EVERY = 10 * 60_000;
/** Aircraft under way at once: one is worked out while the readings of the next are fetched. */
const AT_ONCE = 2;

/** Events after which an aircraft is planned anew. */
const CHANGING: ReadonlySet<LogbookEvent["kind"]> = new Set([
  ...([
    "plugged-in",
    "unplugged",
    "cover-on",
    "cover-off",
    "moved",
    "shut-down",
    "started",
    "reading",
  ] as const),
  ...(["departure-wanted", "departure-dropped", "switch-confirmed", "correction"] as const),
]);
const FOR_ALL: ReadonlySet<LogbookEvent["kind"]> = new Set(["set-up", "forecast"]);

interface Flight {
  saved?: SavedEstimate;
  loaded: boolean;
  busy: boolean;
  /** Something was read since the last estimate. */
  read: boolean;
  planOwed: boolean;
  estimated: number;
  planned: number;
  kept: number;
  trouble?: string;
  /** The standing plan as it was last seen, to say that it no longer holds. */
  standing?: EventOf<"plan-issued">;
}

export function createPilot({ store, book, planner, clock, onChange, log }: PilotOptions): Pilot {
  const flights = new Map<string, Flight>();
  const plans = new Map<string, StandingPlan>();
  const estimates = new Map<string, NowDocument>();
  const findings = createFindingFaults();
  const underWay = new Set<Promise<void>>();
  let busy = 0;
  let closed = false;

  function flightOf(id: string): Flight {
    const known = flights.get(id);
    if (known !== undefined) return known;
    const never = Number.NEGATIVE_INFINITY;
    const flight: Flight = {
      ...{ loaded: false, busy: false, read: false, planOwed: true },
      ...{ estimated: never, planned: never, kept: never },
    };
    flights.set(id, flight);
    return flight;
  }

  function tick(): void {
    const state = book.state();
    if (closed || state === undefined) return;
    for (const id of flights.keys()) if (!state.aircraft.has(id)) forget(id);
    const now = clock();
    const due: [string, Flight][] = [];
    for (const aircraft of state.aircraft.values()) {
      const flight = flightOf(aircraft.setUp.id);
      noteWithdrawn(aircraft, flight);
      const isDue =
        flight.planOwed ||
        now - flight.planned >= PLAN_EVERY ||
        (flight.read && now - flight.estimated >= ESTIMATE_EVERY);
      if (isDue && !flight.busy) due.push([aircraft.setUp.id, flight]);
    }
    // Whoever was promised a plan first, then whoever has waited longest.
    due.sort(([, a], [, b]) => Number(b.planOwed) - Number(a.planOwed) || a.estimated - b.estimated);
    for (const [id, flight] of due.slice(0, Math.max(0, AT_ONCE - busy))) begin(id, flight);
  }

  function begin(id: string, flight: Flight): void {
    flight.busy = true;
    busy++;
    const work = update(id, flight)
      .catch((error: unknown) => {
        flight.trouble = `${id} could not be worked out: ${error instanceof Error ? error.message : error}`;
        log("error", flight.trouble, { error: error instanceof Error ? error.stack : String(error) });
        // Not at once again: what failed for a reason fails again.
        flight.estimated = flight.planned = clock();
        flight.planOwed = false;
      })
      .finally(() => {
        flight.busy = false;
        busy--;
        underWay.delete(work);
        // In a turn of its own: what came in meanwhile goes first.
        if (!closed) setImmediate(tick);
      });
    underWay.add(work);
  }

  async function update(id: string, flight: Flight): Promise<void> {
    if (!flight.loaded) {
      flight.loaded = true;
      const saved = await store.loadState(stateKey(id));
      if (isSaved(saved)) flight.saved = saved;
    }
    const state = book.state();
    const aircraft = state?.aircraft.get(id);
    if (state === undefined || aircraft === undefined) return;
    const now = clock();
    const withPlan = flight.planOwed || now - flight.planned >= PLAN_EVERY;
    flight.planOwed = false;
    flight.read = false;
    const from = flight.saved?.through ?? Math.max(aircraft.anchor.at, now - LONGEST_PAST);
    // Without weather there is no estimate, whatever the probes say.
    const readings =
      state.forecasts.length === 0
        ? []
        : await readingsSince(store, aircraft, Math.min(from, now) - 60_000, now);
    const result = await planner.update({
      ...{
        aircraft: id,
        state: slim(state, id, now),
        now,
        readings,
        withPlan: withPlan && isWanted(aircraft, now),
      },
      ...(flight.saved === undefined ? {} : { saved: flight.saved }),
    });
    if (result === "superseded") {
      flight.planOwed ||= withPlan;
      return;
    }
    const { estimate } = result;
    if (flight.saved !== undefined && estimate.status === "completed" && !estimate.result.resumed) {
      // What was saved no longer holds, and readings were fetched from where it got to only: once more from the anchor.
      delete flight.saved;
      flight.planOwed = true;
      return;
    }
    flight.estimated = now;
    if (withPlan) flight.planned = now;
    delete flight.trouble;
    await takeEstimate(id, flight, estimate, now);
    if (result.plan !== undefined) await takePlan(id, flight, result.plan, now);
  }

  async function takeEstimate(
    id: string,
    flight: Flight,
    outcome: UpdateResult["estimate"],
    now: number,
  ): Promise<void> {
    if (outcome.status !== "completed") {
      flight.trouble = `no estimate of ${id}: ${reasonOf(outcome)}`;
      estimates.delete(id);
      onChange({ what: "now", aircraft: id });
      return;
    }
    const { now: document, saved } = outcome.result;
    flight.saved = saved;
    estimates.set(id, document);
    onChange({ what: "now", aircraft: id });
    if (now - flight.kept >= SAVE_EVERY) {
      flight.kept = now;
      await store.saveState(stateKey(id), saved);
    }
    const aircraft = book.state()?.aircraft.get(id);
    if (aircraft === undefined) return;
    const faults = findings.newFaults(aircraft, document, isoOf(now));
    if (faults.length > 0) await book.record(faults);
    const plan = plans.get(id);
    if (plan !== undefined && strays(document, plan.document, now)) flight.planOwed = true;
  }

  async function takePlan(
    id: string,
    flight: Flight,
    outcome: NonNullable<UpdateResult["plan"]>,
    now: number,
  ): Promise<void> {
    const aircraft = book.state()?.aircraft.get(id);
    if (aircraft === undefined || outcome.status === "cancelled") return;
    const open = aircraft.faults.filter(
      ({ fault, switch: id }) => fault === "plan-failed" && id === undefined,
    );
    const at = isoOf(now);
    if (outcome.status !== "completed") {
      flight.trouble = `no plan for ${id}: ${reasonOf(outcome)}`;
      if (open.length > 0) return;
      const text = flight.trouble.slice(0, 2000);
      await book.record([
        { kind: "fault", id: randomUUID(), at, by: "keeper", aircraft: id, fault: "plan-failed", text },
      ]);
      return;
    }
    const { plan: document, departure } = outcome.result;
    const still = aircraft.departures.find((one) => one.id === departure.id);
    // What was wanted has changed meanwhile: its own plan is on its way.
    if (still?.departure !== departure.departure) return;
    plans.set(id, { departure: departure.id, document });
    onChange({ what: "plan", aircraft: id });
    const event = {
      ...planIssued(aircraft, document, { now, id: randomUUID(), of: departure.id }),
      by: "keeper",
    };
    await book.record([
      ...open.map(
        ({ id: of }): LogbookEvent => ({ kind: "fault-cleared", id: randomUUID(), at, by: "keeper", of }),
      ),
      ...(isNews(aircraft.plan, event) ? [event] : []),
    ]);
  }

  /** Says of a plan that no longer stands why. */
  function noteWithdrawn(aircraft: AircraftState, flight: Flight): void {
    const before = flight.standing;
    const { plan, departures, running } = aircraft;
    if (plan === undefined) delete flight.standing;
    else flight.standing = plan;
    if (before === undefined || plan?.of === before.of || departures.some(({ id }) => id === before.of))
      return;
    plans.delete(aircraft.setUp.id);
    onChange({ what: "plan", aircraft: aircraft.setUp.id });
    const reason = running ? "the aircraft was started" : "the departure is no longer wanted";
    const event: LogbookEvent = {
      ...{ kind: "plan-withdrawn", id: randomUUID(), at: isoOf(clock()), by: "keeper" },
      ...{ aircraft: aircraft.setUp.id, of: before.id, reason },
    };
    const work = book.record([event]).then(
      () => undefined,
      (error: unknown) =>
        log("error", "a withdrawn plan could not be written down", { error: String(error) }),
    );
    underWay.add(work);
    void work.finally(() => underWay.delete(work));
  }

  function forget(id: string): void {
    flights.delete(id);
    plans.delete(id);
    estimates.delete(id);
  }

  return {
    plans,
    now: estimates,
    tick,
    heard(events) {
      for (const event of events) {
        if (FOR_ALL.has(event.kind)) for (const flight of flights.values()) flight.planOwed = true;
        else if (CHANGING.has(event.kind) && "aircraft" in event && event.aircraft !== undefined) {
          flightOf(event.aircraft).planOwed = true;
        } else if (event.kind === "correction") for (const flight of flights.values()) flight.planOwed = true;
      }
      tick();
    },
    read(aircraft) {
      if (aircraft === "base") for (const flight of flights.values()) flight.read = true;
      else flightOf(aircraft).read = true;
    },
    troubles: () => [...flights.values()].flatMap(({ trouble }) => trouble ?? []),
    async close() {
      closed = true;
      await Promise.allSettled(underWay);
      for (const [id, { saved }] of flights)
        if (saved !== undefined) await store.saveState(stateKey(id), saved);
    },
  };
}

function stateKey(id: string): string {
  return `estimate:${id}`;
}

function isSaved(value: unknown): value is SavedEstimate {
  return (
    typeof value === "object" && value !== null && "version" in value && value.version === 1 && "key" in value
  );
}

function reasonOf(outcome: Exclude<Outcome<unknown>, { status: "completed" }>): string {
  return outcome.status === "refused" ? outcome.issues.map(issueText).join("; ") : outcome.message;
}
