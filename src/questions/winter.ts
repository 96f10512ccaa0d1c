import {
  type KitComparisonDocument,
  overridden,
  type PlanDocument,
  type ReadKitComparison,
  type ReadWinter,
  readKitDocument,
  readWinterDocument,
  type WinterStudyDocument,
} from "../documents/index.js";
import {
  barsOf,
  kitComparison,
  kitInTheCold,
  type Piece,
  type PieceResult,
  piecesOf,
  runPiece,
  SeasonFailure,
  winterStudy,
} from "../winter/index.js";
import { planFromDocument } from "./plan.js";
import { failed, type Outcome, type QuestionOptions, STOPPED } from "./question.js";

// Whole winters: document -> pieces -> study; and kits side by side. A study's pieces are independent of each other, so that
// threads, processes and machines can share them; what one piece comes to is the same wherever it is worked out.

/** What is asked of a winter document, read. */
export function winterFrom(source: unknown, { overrides = {}, readFile }: QuestionOptions) {
  const { members, seed } = overrides;
  return readWinterDocument(
    overridden(source, { members, seed }),
    readFile === undefined ? {} : { readFile },
  );
}

/** One piece of a study. */
export function winterPiece(
  read: ReadWinter,
  piece: Piece,
  onProgress?: (done: number) => boolean,
): Outcome<PieceResult> {
  try {
    const result = runPiece(read, piece, { onProgress });
    return result === undefined ? STOPPED : { status: "completed", result };
  } catch (error) {
    if (error instanceof SeasonFailure) return failed(error.message);
    throw error;
  }
}

/** A whole study in this thread: what a browser's worker does for one aircraft. */
export function winterFromDocument(
  source: unknown,
  options: QuestionOptions = {},
): Outcome<WinterStudyDocument> {
  const read = winterFrom(source, options);
  if (!read.ok) return { status: "refused", issues: read.issues };
  const pieces = piecesOf(read);
  const results: PieceResult[] = [];
  for (const piece of pieces) {
    const outcome = winterPiece(read, piece, (done) => {
      return options.onProgress?.((results.length + done) / pieces.length) ?? true;
    });
    if (outcome.status !== "completed") return outcome;
    results.push(outcome.result);
  }
  return { status: "completed", result: winterStudy(read, results) };
}

/** Kits side by side on the document's night and in cold cases. */
export function kitFromDocument(
  source: unknown,
  options: QuestionOptions = {},
): Outcome<KitComparisonDocument> {
  const { overrides = {}, readFile, onProgress } = options;
  const { members, seed } = overrides;
  const read = readKitDocument(
    overridden(source, { members, seed }),
    readFile === undefined ? {} : { readFile },
  );
  if (!read.ok) return { status: "refused", issues: read.issues };
  const results: { cases: ReturnType<typeof kitInTheCold>; tonight: PlanDocument | null }[] = [];
  for (const [k, choice] of read.kits.entries()) {
    const at = (done: number) => onProgress?.((k + done) / read.kits.length) ?? true;
    if (!at(0)) return STOPPED;
    const tonight = tonightWith(read, k, options, (done = 0) => at(0.6 * done));
    if (tonight !== null && tonight.status !== "completed") return tonight;
    if (!at(0.6)) return STOPPED;
    try {
      results.push({ cases: kitInTheCold(read, choice), tonight: tonight?.result ?? null });
    } catch (error) {
      if (error instanceof SeasonFailure) return failed(error.message);
      throw error;
    }
  }
  return { status: "completed", result: kitComparison(read, results) };
}

function tonightWith(
  read: ReadKitComparison,
  k: number,
  { readFile }: QuestionOptions,
  onProgress: (done?: number) => boolean,
): Outcome<PlanDocument> | null {
  const night = read.nights[k];
  if (night === undefined || barsOf(read.kits[k]!.kit, read).length > 0) return null;
  return planFromDocument(night, { onProgress, ...(readFile === undefined ? {} : { readFile }) });
}
