export { type FileText, readerBeside, readTextFile, writeTextFile } from "./files.js";
export { solveMilp } from "./highs.js";
