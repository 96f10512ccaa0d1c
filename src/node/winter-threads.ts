import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { failed, type Outcome, type Piece, type PieceResult, pieceKey, type ReadWinter } from "../index.js";
import type { ThreadMessage } from "./winter-thread.js";

export interface ThreadsRequest {
  /** The study; threads get a copy, so that none has to read documents. */
  readonly read: ReadWinter;
  readonly pieces: readonly Piece[];
  /** As many as the machine has cores unless given. */
  readonly threads?: number | undefined;
  /** Called with each finished piece as soon as it is there. */
  readonly onPiece: (result: PieceResult) => void;
  /** Called with the share done [0..1] of all pieces. */
  readonly onProgress?: (done: number) => void;
}

/** Works pieces out on threads; the first that fails stops all. Pieces come in any order, each once. */
export async function piecesOnThreads(request: ThreadsRequest): Promise<Outcome<undefined>> {
  const { read, pieces, onPiece, onProgress } = request;
  const threads = Math.max(1, Math.min(request.threads ?? availableParallelism(), pieces.length));
  const waiting = [...pieces];
  const partly = new Map<string, number>();
  let finished = 0;
  const told = () =>
    onProgress?.((finished + [...partly.values()].reduce((sum, done) => sum + done, 0)) / pieces.length);
  const workers = Array.from(
    { length: threads },
    () => new Worker(new URL("./winter-thread.js", import.meta.url), { workerData: read }),
  );
  try {
    const ends = await Promise.all(workers.map((worker) => inTurn(worker)));
    return ends.find((end) => end.status !== "completed") ?? { status: "completed", result: undefined };
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }

  /** One thread takes piece after piece until there are none. */
  async function inTurn(worker: Worker): Promise<Outcome<undefined>> {
    for (let piece = waiting.shift(); piece !== undefined; piece = waiting.shift()) {
      const outcome = await worked(worker, piece);
      partly.delete(pieceKey(piece));
      if (outcome.status !== "completed") {
        waiting.length = 0;
        return outcome;
      }
      finished++;
      onPiece(outcome.result);
      told();
    }
    return { status: "completed", result: undefined };
  }

  function worked(worker: Worker, piece: Piece): Promise<Outcome<PieceResult>> {
    return new Promise((resolve, reject) => {
      const end = (code: number) => reject(new Error(`a thread ended without a result (exit code ${code})`));
      const hear = (message: ThreadMessage) => {
        if ("done" in message) {
          partly.set(pieceKey(piece), message.done);
          told();
          return;
        }
        worker.off("message", hear).off("error", reject).off("exit", end);
        resolve(
          "result" in message ? { status: "completed", result: message.result } : failed(message.failure),
        );
      };
      worker.on("message", hear).on("error", reject).on("exit", end);
      worker.postMessage(piece);
    });
  }
}
