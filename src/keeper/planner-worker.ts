import { setPriority } from "node:os";
import { parentPort, workerData } from "node:worker_threads";
import { estimateNow, planOf } from "../index.js";
import type { PlannerAnswer, PlannerData, PlannerWork, UpdateJob, UpdateResult } from "./planner.js";

const { giveUp } = workerData as PlannerData;
const GIVES_WAY = 10;
const flag = new Int32Array(giveUp);

// Listening and switching come first: on Linux a thread has a priority of its own.
if (process.platform === "linux") setPriority(GIVES_WAY);

parentPort?.on("message", ({ id, job }: PlannerWork) => {
  const send = (answer: PlannerAnswer) => parentPort?.postMessage(answer);
  try {
    send({ id, result: updated(job, () => Atomics.load(flag, 0) !== id) });
  } catch (error) {
    send({ id, error: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});

function updated(
  { aircraft, state, now, readings, saved, withPlan }: UpdateJob,
  goOn: () => boolean,
): UpdateResult {
  const estimate = estimateNow(state, aircraft, {
    ...{ now, readings, onProgress: goOn },
    ...(saved === undefined ? {} : { saved }),
  });
  if (!withPlan) return { estimate };
  const plan = planOf(state, aircraft, {
    ...{ now, onProgress: goOn },
    ...(estimate.status === "completed" ? { estimate: estimate.result } : {}),
  });
  return { estimate, plan };
}
