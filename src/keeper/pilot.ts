import { randomUUID } from "node:crypto";
import { isNews, isoOf, nextDeparture, planIssued } from "../base/index.js";
import {
  issueText,
  type KnownReading,
  type NowDocument,
  type Outcome,
  type PlanDocument,
  type SavedEstimate,
} from "../index.js";
import type { AircraftState, BaseState, EventOf, LogbookEvent } from "../logbook/index.js";
import type { StandingPlan } from "../server/index.js";
import type { Store } from "../store/index.js";
import type { Book } from "./book.js";
import { createFindingFaults } from "./findings.js";
import type { Planner, UpdateResult } from "./planner.js";

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
/** [K] by which a part may leave what its plan foresaw before it is planned anew; project judgement, the size of a probe's error. */
const STRAY = 2;
/** [ms] of readings that are taken as they came, and beyond which their means by the minute are. */
const RAW_SPAN = 30 * 60_000;
const MOST_ROWS = 20_000;
/** Aircraft under way at once: one is worked out while the readings of the next are fetched. */
const AT_ONCE = 2;
/** Parts by which a plan is followed. */
const FOLLOWED = ["oil", "crankcase", "heads_front"] as const;

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
      state.forecasts.length === 0 ? [] : await readingsSince(aircraft, Math.min(from, now) - 60_000, now);
    const result = await planner.update({
      ...{
        aircraft: id,
        state: slim(state, id, now),
        now,
        readings,
        withPlan: withPlan && wanted(aircraft, now),
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

  async function readingsSince({ setUp }: AircraftState, from: number, to: number): Promise<KnownReading[]> {
    const isLong = to - from > RAW_SPAN;
    if (isLong) await store.rollUp(1);
    const probed = setUp.probes.length > 0 ? [setUp.id] : [];
    const rows: KnownReading[] = [];
    for (const aircraft of [...probed, "base"]) {
      let begin = from;
      for (;;) {
        const page = await store.readings({
          ...{ aircraft, from: begin, to, limit: MOST_ROWS },
          resolution: isLong ? "minute" : "raw",
        });
        for (const { probe, time, mean } of page) rows.push({ aircraft, probe, time, tempC: mean });
        const last = page.at(-1);
        if (page.length < MOST_ROWS || last === undefined || last.time <= begin) break;
        // A time may be cut in two by the page: it is read once more, and what was read of it dropped.
        while (rows.at(-1)?.time === last.time) rows.pop();
        begin = last.time;
      }
    }
    return rows;
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

/** [ms] an estimate looks back at most; the base's scenarios begin no earlier. */
const LONGEST_PAST = 100 * 3_600_000;

function wanted(aircraft: AircraftState, now: number): boolean {
  return nextDeparture(aircraft, now) !== undefined && !aircraft.running;
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

/** What one aircraft's numbers hang on, so that not the whole logbook is copied into the planning thread. */
function slim(state: BaseState, id: string, now: number): BaseState {
  const aircraft = state.aircraft.get(id);
  const old = state.forecasts.findIndex(({ at }) => Date.parse(at) < now - LONGEST_PAST);
  return {
    setUp: { ...state.setUp, aircraft: state.setUp.aircraft.filter((one) => one.id === id) },
    aircraft: new Map(aircraft === undefined ? [] : [[id, aircraft]]),
    forecasts: old < 0 ? state.forecasts : state.forecasts.slice(0, old + 1),
    faults: [],
    withoutEffect: [],
  };
}

/** Whether a part has left what its plan foresaw for now. */
function strays({ parts }: NowDocument, { start, course }: PlanDocument, now: number): boolean {
  const hours = (now - Date.parse(start.time)) / 3_600_000;
  const after = course.time_h.findIndex((t) => t >= hours);
  if (after <= 0) return false;
  const share = (hours - course.time_h[after - 1]) / (course.time_h[after] - course.time_h[after - 1]);
  return FOLLOWED.some((part) => {
    const planned = course.parts[part]?.p50_c;
    const seen = parts[part]?.p50_c;
    if (planned === undefined || seen === undefined) return false;
    const foreseen = planned[after - 1] + share * (planned[after] - planned[after - 1]);
    return Math.abs(seen - foreseen) > STRAY;
  });
}
