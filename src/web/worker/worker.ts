import { Jobs, type Pieces } from "./jobs.js";
import { type FromWorker, QUICK_WORK, type ToWorker } from "./protocol.js";
import { Refused } from "./refused.js";
import { TASKS } from "./tasks.js";

// Entry of the planning workers. A turn of the event loop between two pieces of work lets cancellations and more urgent
// questions in.

const jobs = new Jobs((go) => {
  const turn = new MessageChannel();
  turn.port1.onmessage = () => {
    turn.port1.close();
    go();
  };
  turn.port2.postMessage(0);
});

addEventListener("message", ({ data }: MessageEvent<ToWorker>) => {
  const { id } = data;
  if (data.kind === "cancel") {
    jobs.cancel(id);
    return;
  }
  jobs.add({
    id,
    pieces: pieces(data),
    isQuick: QUICK_WORK.has(data.kind),
    done: (answer) => {
      Promise.resolve(answer).then(
        (value) => say({ id, is: "done", answer: value }),
        (error) => sayWhy(id, error),
      );
    },
    failed: (error) => sayWhy(id, error),
  });
});

type Question = Exclude<ToWorker, { readonly kind: "cancel" }>;
type Task = (ask: unknown, onProgress: (done?: number) => boolean, tell: (part: unknown) => void) => unknown;

function* pieces({ id, kind, ask }: Question): Pieces<unknown> {
  let told = 0;
  const onProgress = (done = 0) => {
    if (done - told > 0.04) {
      told = done;
      say({ id, is: "progress", done });
    }
    return true;
  };
  const result = (TASKS[kind] as Task)(ask, onProgress, (part) => say({ id, is: "part", part }));
  return isPieces(result) ? yield* result : result;
}

function isPieces(value: unknown): value is Pieces<unknown> {
  return typeof value === "object" && value !== null && "next" in value && "return" in value;
}

function sayWhy(id: number, error: unknown): void {
  if (error instanceof Refused) say({ id, is: "refused", reasons: error.reasons });
  else say({ id, is: "failed", message: error instanceof Error ? error.message : String(error) });
}

function say(message: FromWorker): void {
  postMessage(message);
}
