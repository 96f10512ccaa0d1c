import { randomUUID } from "node:crypto";
import { isoOf } from "../base/index.js";
import { errorText } from "../devices/index.js";
import { type Finding, finding } from "../findings/index.js";
import type { NowDocument } from "../index.js";
import type { AircraftState, LogbookEvent } from "../logbook/index.js";
import type { StandingPlan } from "../server/index.js";
import {
  type AircraftJob,
  type JobContext,
  newJob,
  PLAN_EVERY,
  stateKey,
  updateAircraft,
} from "./aircraft-job.js";
import { createEstimateFaults } from "./estimate-faults.js";
import type { KeeperLog } from "./log.js";

/** Keeps estimates and plans of all aircraft fresh, and writes down what changes. */
export interface PlanScheduler {
  readonly plans: ReadonlyMap<string, StandingPlan>;
  readonly now: ReadonlyMap<string, NowDocument>;
  /** Every second, and whenever something was asked for. */
  tick(): void;
  /** Something was written down that plans hang on. */
  heard(events: readonly LogbookEvent[]): void;
  /** A probe of an aircraft, or of the base ("base"), said something. */
  read(aircraft: string): void;
  troubles(): readonly Finding[];
  /** Waits for what is under way, and stores the estimates. */
  close(): Promise<void>;
}

export interface PlanSchedulerOptions
  extends Pick<JobContext, "store" | "book" | "planner" | "clock" | "onChange"> {
  readonly log: KeeperLog["write"];
}

/** [ms] between estimates of an aircraft whose probes speak. */
const ESTIMATE_EVERY = 60_000;
/** Aircraft under way at once: one is worked out while the readings of the next are fetched. */
const AT_ONCE = 2;

/** Events after which an aircraft is planned anew, and after which all are. */
const CHANGING: ReadonlySet<LogbookEvent["kind"]> = new Set<LogbookEvent["kind"]>([
  "plugged-in",
  "unplugged",
  "cover-on",
  "cover-off",
  "moved",
  "shut-down",
  "started",
  "reading",
  "departure-wanted",
  "departure-dropped",
  "switch-confirmed",
]);
const FOR_ALL: ReadonlySet<LogbookEvent["kind"]> = new Set<LogbookEvent["kind"]>([
  "set-up",
  "forecast",
  "correction",
]);

export function createPlanScheduler(options: PlanSchedulerOptions): PlanScheduler {
  return new Scheduler(options);
}

class Scheduler implements PlanScheduler {
  readonly plans = new Map<string, StandingPlan>();
  readonly now = new Map<string, NowDocument>();
  private readonly jobs = new Map<string, AircraftJob>();
  private readonly underWay = new Set<Promise<void>>();
  private readonly context: JobContext;
  private busy = 0;
  private closed = false;

  constructor(private readonly options: PlanSchedulerOptions) {
    this.context = {
      ...options,
      plans: this.plans,
      estimates: this.now,
      faults: createEstimateFaults(),
    };
  }

  tick(): void {
    const state = this.options.book.state();
    if (this.closed || state === undefined) return;
    for (const id of this.jobs.keys()) if (!state.aircraft.has(id)) this.forget(id);
    const now = this.options.clock();
    const due: AircraftJob[] = [];
    for (const aircraft of state.aircraft.values()) {
      const job = this.jobOf(aircraft.setUp.id);
      this.noteWithdrawn(aircraft, job);
      if (!job.busy && isDue(job, now)) due.push(job);
    }
    // Whoever was promised a plan first, then whoever has waited longest.
    due.sort((a, b) => Number(b.planOwed) - Number(a.planOwed) || a.estimated - b.estimated);
    for (const job of due.slice(0, Math.max(0, AT_ONCE - this.busy))) this.begin(job);
  }

  heard(events: readonly LogbookEvent[]): void {
    for (const event of events) {
      const of = "aircraft" in event ? event.aircraft : undefined;
      if (FOR_ALL.has(event.kind)) for (const job of this.jobs.values()) job.planOwed = true;
      else if (CHANGING.has(event.kind) && of !== undefined) this.jobOf(of).planOwed = true;
    }
    this.tick();
  }

  read(aircraft: string): void {
    if (aircraft === "base") for (const job of this.jobs.values()) job.read = true;
    else this.jobOf(aircraft).read = true;
  }

  troubles(): readonly Finding[] {
    return [...this.jobs.values()].flatMap(({ trouble }) => trouble ?? []);
  }

  async close(): Promise<void> {
    this.closed = true;
    await Promise.allSettled(this.underWay);
    for (const { id, saved } of this.jobs.values())
      if (saved !== undefined) await this.options.store.saveState(stateKey(id), saved);
  }

  private jobOf(id: string): AircraftJob {
    const known = this.jobs.get(id);
    if (known !== undefined) return known;
    const job = newJob(id);
    this.jobs.set(id, job);
    return job;
  }

  private begin(job: AircraftJob): void {
    job.busy = true;
    this.busy++;
    this.track(
      updateAircraft(job, this.context)
        .catch((error: unknown) => {
          job.trouble = finding("aircraft-not-worked-out", { aircraft: job.id, error: errorText(error) });
          const stack = error instanceof Error ? error.stack : String(error);
          this.options.log("error", `${job.id} could not be worked out`, { error: stack });
          // Not at once again: what failed for a reason fails again.
          job.estimated = job.planned = this.options.clock();
          job.planOwed = false;
        })
        .finally(() => {
          job.busy = false;
          this.busy--;
          // In a turn of its own: what came in meanwhile goes first.
          if (!this.closed) setImmediate(() => this.tick());
        }),
    );
  }

  private track(work: Promise<void>): void {
    this.underWay.add(work);
    void work.finally(() => this.underWay.delete(work));
  }

  /** Says of a plan that no longer stands why. */
  private noteWithdrawn({ setUp, plan, departures, running }: AircraftState, job: AircraftJob): void {
    const before = job.standing;
    if (plan === undefined) delete job.standing;
    else job.standing = plan;
    if (before === undefined || plan?.of === before.of || departures.some(({ id }) => id === before.of))
      return;
    const { book, clock, onChange, log } = this.options;
    this.plans.delete(setUp.id);
    onChange({ what: "plan", aircraft: setUp.id });
    const reason = finding(running ? "aircraft-was-started" : "departure-no-longer-wanted", {});
    const event: LogbookEvent = {
      kind: "plan-withdrawn",
      id: randomUUID(),
      at: isoOf(clock()),
      by: "keeper",
      aircraft: setUp.id,
      of: before.id,
      reason,
    };
    this.track(
      book.record([event]).then(
        () => undefined,
        (error: unknown) =>
          log("error", "a withdrawn plan could not be written down", { error: String(error) }),
      ),
    );
  }

  private forget(id: string): void {
    this.jobs.delete(id);
    this.plans.delete(id);
    this.now.delete(id);
  }
}

function isDue(job: AircraftJob, now: number): boolean {
  if (job.planOwed || now - job.planned >= PLAN_EVERY) return true;
  return job.read && now - job.estimated >= ESTIMATE_EVERY;
}
