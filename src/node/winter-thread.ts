import { parentPort, workerData } from "node:worker_threads";
import { type Outcome, type Piece, type PieceResult, winterPiece } from "../index.js";
import { readBundle, type WinterBundle } from "./winter-bundle.js";

/** What a thread says: how far it is with its piece, or what the piece came to. */
export type ThreadMessage = { readonly done: number } | { readonly outcome: Outcome<PieceResult> };

const read = readBundle(workerData as WinterBundle);

parentPort?.on("message", (piece: Piece) => {
  const say = (message: ThreadMessage) => parentPort?.postMessage(message);
  if (!read.ok) {
    say({ outcome: { status: "refused", issues: read.issues } });
    return;
  }
  const outcome = winterPiece(read, piece, (done) => {
    say({ done });
    return true;
  });
  say({ outcome });
});
