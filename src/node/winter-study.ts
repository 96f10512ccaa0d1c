import {
  type Outcome,
  type PieceResult,
  pieceKey,
  piecesOf,
  type WinterStudyDocument,
  winterStudy,
} from "../index.js";
import { type BundleReading, studyId, type WinterBundle } from "./winter-bundle.js";
import { openCheckpoint } from "./winter-checkpoint.js";
import { piecesOnThreads } from "./winter-threads.js";

export interface StudyRequest {
  readonly bundle: WinterBundle;
  readonly read: BundleReading & { readonly ok: true };
  readonly threads?: number | undefined;
  /** File of finished pieces, to go on from. */
  readonly keep?: string | undefined;
  readonly onProgress?: (done: number) => void;
}

/** A whole study on this machine's threads. Throws CheckpointTrouble for a file that is not this study's. */
export async function studyOnThreads(request: StudyRequest): Promise<Outcome<WinterStudyDocument>> {
  const { bundle, read, keep, onProgress } = request;
  const checkpoint = keep === undefined ? undefined : openCheckpoint(keep, studyId(bundle));
  const results: PieceResult[] = [...(checkpoint?.finished ?? [])];
  const known = new Set(results.map(pieceKey));
  const all = piecesOf(read);
  const pieces = all.filter((piece) => !known.has(pieceKey(piece)));
  const before = all.length - pieces.length;
  try {
    const outcome = await piecesOnThreads({
      ...{ read, pieces, threads: request.threads },
      onPiece(result) {
        checkpoint?.add(result);
        results.push(result);
      },
      onProgress: (done) => onProgress?.((before + done * pieces.length) / all.length),
    });
    return outcome.status === "completed"
      ? { status: "completed", result: winterStudy(read, results) }
      : outcome;
  } finally {
    checkpoint?.close();
  }
}
