export { createLeadCases, type LeadCases, type LeadCasesRequest, type SteadyCase } from "./lead-cases.js";
export { type LeadFound, leastLeads } from "./lead-search.js";
export { createLeadTable, type LeadTable, triedLeads } from "./lead-table.js";
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
export { SeasonFailure, WINTER_TOLERANCE } from "./tolerance.js";
