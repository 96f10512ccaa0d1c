import type { FromWorker, ToWorker } from "./protocol.js";
import { Refused } from "./refused.js";
import { TASKS } from "./tasks.js";

// Entry of the planning worker. Questions are answered one after the other; one that was cancelled before its turn is
// skipped. A turn of the event loop between two questions lets cancellations and more urgent questions in.

interface Waiting {
  readonly id: number;
  readonly kind: keyof typeof TASKS;
  readonly ask: unknown;
}

const waiting: Waiting[] = [];
let isRunning = false;

addEventListener("message", ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === "cancel") {
    const at = waiting.findIndex(({ id }) => id === data.id);
    if (at >= 0) waiting.splice(at, 1);
    return;
  }
  waiting.push(data);
  if (!isRunning) next();
});

function next(): void {
  isRunning = waiting.length > 0;
  if (!isRunning) return;
  const turn = new MessageChannel();
  turn.port1.onmessage = () => {
    turn.port1.close();
    const question = waiting.shift();
    if (question !== undefined) answer(question);
    next();
  };
  turn.port2.postMessage(0);
}

function answer({ id, kind, ask }: Waiting): void {
  let told = 0;
  const onProgress = (done = 0) => {
    if (done - told > 0.04) {
      told = done;
      say({ id, is: "progress", done });
    }
    return true;
  };
  try {
    const task = TASKS[kind] as (ask: unknown, onProgress: (done?: number) => boolean) => unknown;
    say({ id, is: "done", answer: task(ask, onProgress) });
  } catch (error) {
    if (error instanceof Refused) say({ id, is: "refused", reasons: error.reasons });
    else say({ id, is: "failed", message: error instanceof Error ? error.message : String(error) });
  }
}

function say(message: FromWorker): void {
  postMessage(message);
}
