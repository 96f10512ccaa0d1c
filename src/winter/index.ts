export { barsOf } from "./heater-limits.js";
export { kitComparison, kitInTheCold } from "./kit-comparison.js";
export type { LeadTable } from "./lead-table.js";
export {
  type HabitResult,
  leadTableOf,
  type Piece,
  type PieceOptions,
  type PieceResult,
  pieceKey,
  piecesOf,
  runPiece,
} from "./piece.js";
export { rankKits, rankRows } from "./ranking.js";
export { winterStudy } from "./study.js";
export { habitLabel } from "./study-header.js";
export { SeasonFailure, WINTER_TOLERANCE } from "./tolerance.js";
