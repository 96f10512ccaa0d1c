import { Worker } from "node:worker_threads";
import type { KnownReading, LiveEstimate, Outcome, PlanDocument, SavedEstimate } from "../index.js";
import type { BaseState, WantedDeparture } from "../logbook/index.js";

/** One aircraft's estimate, and its plan where one is wanted. */
export interface UpdateJob {
  readonly aircraft: string;
  /** What of the base the aircraft's numbers hang on. */
  readonly state: BaseState;
  /** [ms] since 1970 UTC. */
  readonly now: number;
  readonly readings: readonly KnownReading[];
  readonly saved?: SavedEstimate;
  /** Whether the soonest departure is to be planned for. */
  readonly withPlan: boolean;
}

export interface UpdateResult {
  readonly estimate: Outcome<LiveEstimate>;
  readonly plan?: Outcome<{ readonly plan: PlanDocument; readonly departure: WantedDeparture }>;
}

/** Works out estimates and plans beside the thread that listens and switches. */
export interface Planner {
  /** A newer job for the same aircraft takes the place of an older one, which then ends as "superseded". */
  update(job: UpdateJob): Promise<UpdateResult | "superseded">;
  readonly waiting: number;
  close(): Promise<void>;
}

export interface PlannerWork {
  readonly id: number;
  readonly job: UpdateJob;
}
export type PlannerAnswer =
  | { readonly id: number; readonly result: UpdateResult }
  | { readonly id: number; readonly error: string };
export interface PlannerData {
  /** One Int32: the id of the work that is to be given up. */
  readonly giveUp: SharedArrayBuffer;
}

interface Entry extends PlannerWork {
  readonly resolve: (result: UpdateResult | "superseded") => void;
  readonly reject: (error: Error) => void;
}

/** One worker; aircraft wait in the order in which they were first asked for. */
export function createPlanner(): Planner {
  const giveUp = new SharedArrayBuffer(4);
  const flag = new Int32Array(giveUp);
  const queue: Entry[] = [];
  let running: Entry | undefined;
  let ids = 0;
  let closed = false;
  let worker: Worker | undefined;

  function started(): Worker {
    const data: PlannerData = { giveUp };
    const one = new Worker(new URL("./planner-worker.js", import.meta.url), { workerData: data });
    one.on("message", (answer: PlannerAnswer) => {
      const entry = running;
      if (entry === undefined || entry.id !== answer.id) return;
      running = undefined;
      if ("error" in answer) entry.reject(new Error(answer.error));
      else if (Atomics.load(flag, 0) === entry.id) entry.resolve("superseded");
      else entry.resolve(answer.result);
      next();
    });
    one.on("error", (error) => lost(one, error));
    one.on("exit", (code) => lost(one, new Error(`the planning thread ended (exit code ${code})`)));
    return one;
  }

  function lost(one: Worker, error: Error): void {
    if (closed || one !== worker) return;
    worker = undefined;
    const entry = running;
    running = undefined;
    entry?.reject(error);
    next();
  }

  function next(): void {
    if (running !== undefined || closed) return;
    running = queue.shift();
    if (running === undefined) return;
    worker ??= started();
    worker.postMessage({ id: running.id, job: running.job } satisfies PlannerWork);
  }

  return {
    update(job) {
      if (closed) return Promise.resolve("superseded");
      return new Promise((resolve, reject) => {
        const entry: Entry = { id: ++ids, job, resolve, reject };
        const at = queue.findIndex((other) => other.job.aircraft === job.aircraft);
        if (at >= 0) {
          const [older] = queue.splice(at, 1, entry);
          older.resolve("superseded");
        } else queue.push(entry);
        if (running?.job.aircraft === job.aircraft) Atomics.store(flag, 0, running.id);
        next();
      });
    },
    get waiting() {
      return queue.length + (running === undefined ? 0 : 1);
    },
    async close() {
      closed = true;
      if (running !== undefined) Atomics.store(flag, 0, running.id);
      for (const { resolve } of [...queue.splice(0), ...(running === undefined ? [] : [running])])
        resolve("superseded");
      running = undefined;
      await worker?.terminate();
    },
  };
}
