import { randomUUID } from "node:crypto";
import { isNews, isoOf, planIssued } from "../base/index.js";
import { type Finding, finding } from "../findings/index.js";
import { issueText, type NowDocument, type Outcome, type SavedEstimate } from "../index.js";
import type { AircraftState, EventOf, LogbookEvent } from "../logbook/index.js";
import type { StandingPlan } from "../server/index.js";
import type { Store } from "../store/index.js";
import { isWanted, LONGEST_PAST, slim, strays } from "./aircraft-news.js";
import type { Book } from "./book.js";
import type { EstimateFaults } from "./estimate-faults.js";
import type { Planner, UpdateResult } from "./planner.js";
import { probesRead } from "./probes-read.js";
import { readingsSince } from "./readings-since.js";

/** How far one aircraft's estimate and plan have come. Times in [ms] since 1970 UTC by the base's clock. */
export interface AircraftJob {
  readonly id: string;
  /** The filter's state to go on from. */
  saved?: SavedEstimate;
  loaded: boolean;
  busy: boolean;
  /** Something was read since the last estimate. */
  read: boolean;
  planOwed: boolean;
  estimated: number;
  planned: number;
  /** When the estimate was stored last. */
  kept: number;
  trouble?: Finding;
  /** The standing plan as it was last seen, to say that it no longer holds. */
  standing?: EventOf<"plan-issued">;
}

export interface JobContext {
  readonly store: Pick<Store, "readings" | "rollUp" | "saveState" | "loadState">;
  readonly book: Book;
  readonly planner: Planner;
  /** [ms] since 1970 UTC. */
  readonly clock: () => number;
  readonly onChange: (change: { readonly what: "plan" | "now"; readonly aircraft: string }) => void;
  readonly plans: Map<string, StandingPlan>;
  readonly estimates: Map<string, NowDocument>;
  readonly faults: EstimateFaults;
}

/** [ms] between plans when nothing asks for a new one, and between storing an estimate for the next start. */
export const PLAN_EVERY = 10 * 60_000;
const SAVE_EVERY = 10 * 60_000;

export function newJob(id: string): AircraftJob {
  const never = Number.NEGATIVE_INFINITY;
  return {
    id,
    loaded: false,
    busy: false,
    read: false,
    planOwed: true,
    estimated: never,
    planned: never,
    kept: never,
  };
}

/** Works out one aircraft anew and takes what comes of it. */
export async function updateAircraft(job: AircraftJob, context: JobContext): Promise<void> {
  const { store, book, planner, clock } = context;
  if (!job.loaded) {
    job.loaded = true;
    const saved = await store.loadState(stateKey(job.id));
    if (isSaved(saved)) job.saved = saved;
  }
  const state = book.state();
  const aircraft = state?.aircraft.get(job.id);
  if (state === undefined || aircraft === undefined) return;
  const now = clock();
  const withPlan = job.planOwed || now - job.planned >= PLAN_EVERY;
  job.planOwed = false;
  job.read = false;
  // Without weather there is no estimate, whatever the probes say.
  const readings = state.forecasts.length === 0 ? [] : await readingsFor(job, aircraft, context, now);
  const result = await planner.update({
    aircraft: job.id,
    state: slim(state, job.id, now),
    now,
    readings,
    withPlan: withPlan && isWanted(aircraft, now),
    ...(job.saved === undefined ? {} : { saved: job.saved }),
  });
  if (result === "superseded") {
    job.planOwed ||= withPlan;
    return;
  }
  const { estimate } = result;
  if (job.saved !== undefined && estimate.status === "completed" && !estimate.result.resumed) {
    // What was saved no longer holds, and readings were fetched from where it got to only: once more from the anchor.
    delete job.saved;
    job.planOwed = true;
    return;
  }
  job.estimated = now;
  if (withPlan) job.planned = now;
  delete job.trouble;
  await takeEstimate(job, estimate, context, now);
  if (result.plan !== undefined) await takePlan(job, result.plan, context, now);
}

function readingsFor(job: AircraftJob, aircraft: AircraftState, { store }: JobContext, now: number) {
  const from = job.saved?.through ?? Math.max(aircraft.anchor.at, now - LONGEST_PAST);
  return readingsSince(store, aircraft, Math.min(from, now) - 60_000, now);
}

async function takeEstimate(
  job: AircraftJob,
  outcome: UpdateResult["estimate"],
  { store, book, plans, estimates, faults, onChange }: JobContext,
  now: number,
): Promise<void> {
  const { id } = job;
  if (outcome.status !== "completed") {
    job.trouble = finding("no-estimate", { aircraft: id, reason: reasonOf(outcome) });
    estimates.delete(id);
    onChange({ what: "now", aircraft: id });
    return;
  }
  const { now: document, saved } = outcome.result;
  job.saved = saved;
  estimates.set(id, document);
  onChange({ what: "now", aircraft: id });
  if (now - job.kept >= SAVE_EVERY) {
    job.kept = now;
    await store.saveState(stateKey(id), saved);
  }
  const aircraft = book.state()?.aircraft.get(id);
  if (aircraft === undefined) return;
  const events = faults.newFaults(aircraft, document, isoOf(now));
  const read = await probesRead(aircraft, saved, store, now);
  const news = read === undefined ? events : [...events, read];
  if (news.length > 0) await book.record(news);
  const plan = plans.get(id);
  if (plan !== undefined && strays(document, plan.document, now)) job.planOwed = true;
}

async function takePlan(
  job: AircraftJob,
  outcome: NonNullable<UpdateResult["plan"]>,
  { book, plans, onChange }: JobContext,
  now: number,
): Promise<void> {
  const { id } = job;
  const aircraft = book.state()?.aircraft.get(id);
  if (aircraft === undefined || outcome.status === "cancelled") return;
  const common = { at: isoOf(now), by: "keeper" };
  // Those with a switch are of the switches: see refusals.ts.
  const open = aircraft.faults.filter((one) => one.fault === "plan-failed" && one.switch === undefined);
  if (outcome.status !== "completed") {
    job.trouble = finding("no-plan", { aircraft: id, reason: reasonOf(outcome) });
    if (open.length > 0) return;
    const fault = { kind: "fault", fault: "plan-failed", aircraft: id, text: job.trouble } as const;
    await book.record([{ ...common, ...fault, id: randomUUID() }]);
    return;
  }
  const { plan: document, departure } = outcome.result;
  const still = aircraft.departures.find((one) => one.id === departure.id);
  // What was wanted has changed meanwhile: its own plan is on its way.
  if (still?.departure !== departure.departure) return;
  plans.set(id, { departure: departure.id, document });
  onChange({ what: "plan", aircraft: id });
  const issued = planIssued(aircraft, document, {
    now,
    id: randomUUID(),
    of: departure.id,
    correction: book.state()?.record.correction,
  });
  const event = { ...issued, by: "keeper" };
  const cleared = open.map(
    ({ id: of }): LogbookEvent => ({ ...common, kind: "fault-cleared", id: randomUUID(), of }),
  );
  await book.record([...cleared, ...(isNews(aircraft.plan, event) ? [event] : [])]);
}

export function stateKey(id: string): string {
  return `estimate:${id}`;
}

function isSaved(value: unknown): value is SavedEstimate {
  return (
    typeof value === "object" && value !== null && "version" in value && value.version === 1 && "key" in value
  );
}

function reasonOf(outcome: Exclude<Outcome<unknown>, { status: "completed" }>): Finding {
  if (outcome.status !== "refused") return outcome.message;
  const [first] = outcome.issues;
  const text = outcome.issues.map(issueText).join("; ").slice(0, 2000);
  return first?.reason ?? finding("own-words", { text });
}
