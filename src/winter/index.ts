export { barsOf } from "./heater-limits.js";
export { kitComparison, kitInTheCold } from "./kit-comparison.js";
export { type Piece, type PieceResult, pieceKey, piecesOf, runPiece } from "./piece.js";

export { winterStudy } from "./study.js";

export { SeasonFailure } from "./tolerance.js";
