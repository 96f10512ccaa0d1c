export { type FileText, readerBeside, readTextFile, writeTextFile } from "./files.js";
