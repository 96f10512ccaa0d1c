import { parentPort, workerData } from "node:worker_threads";
import type { ReadWinter } from "../documents/index.js";
// Not the whole package: a thread begins twice as soon without what reads documents.
import { type Piece, type PieceResult, runPiece, SeasonFailure } from "../winter/index.js";

/** What a thread says: how far it is with its piece, what the piece came to, or why it could not be worked out. */
export type ThreadMessage =
  | { readonly done: number }
  | { readonly result: PieceResult }
  | { readonly failure: string };

/** Share of a piece after which progress is told again. */
const TOLD_STEP = 0.05;

const read = workerData as ReadWinter;
const say = (message: ThreadMessage) => parentPort?.postMessage(message);

parentPort?.on("message", (piece: Piece) => {
  let told = 0;
  const onProgress = (done: number) => {
    if (done < told + TOLD_STEP) return true;
    told = done;
    say({ done });
    return true;
  };
  try {
    say({ result: runPiece(read, piece, { onProgress })! });
  } catch (error) {
    if (!(error instanceof SeasonFailure)) throw error;
    say({ failure: error.message });
  }
});
