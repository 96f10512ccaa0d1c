import { parentPort, workerData } from "node:worker_threads";
import { type Job, type JobMessage, perform } from "./job.js";

const job = workerData as Job;
const send = (message: JobMessage) => parentPort?.postMessage(message);

const outcome = await perform(job, (done) => {
  send({ done });
  return true;
});
send({ outcome });
