export { type FileText, readerBeside, readTextFile, writeTextFile } from "./files.js";
export { solveMilp } from "./highs.js";
export { bundled, readBundle, studyId, type WinterBundle } from "./winter-bundle.js";
export { type Checkpoint, CheckpointTrouble, openCheckpoint } from "./winter-checkpoint.js";
export { awaitStudy, finishedPieces, submitStudy, type WorkRequest, workWinters } from "./winter-queue.js";
export { type StudyRequest, studyOnThreads } from "./winter-study.js";
export { piecesOnThreads, type ThreadsRequest } from "./winter-threads.js";
