export { readerBeside, readTextFile, writeTextFile } from "./files.js";
export { solveMilp } from "./highs.js";
export { bundled } from "./winter-bundle.js";
export { CheckpointTrouble } from "./winter-checkpoint.js";
export { awaitStudy, submitStudy, workWinters } from "./winter-queue.js";
export { studyOnThreads } from "./winter-study.js";
