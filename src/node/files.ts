import { mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import type { ReadFile } from "../index.js";

export type FileText = ReturnType<ReadFile>;

/** [B] a year of hourly weather in the widest format takes about 2 MB. */
const LARGEST = 50e6;

/** The text of a file, "-" for standard input; the reason in plain words when it cannot be had. */
export function readTextFile(path: string): FileText {
  try {
    if (path !== "-" && statSync(path).size > LARGEST)
      return { ok: false, reason: `larger than ${LARGEST / 1e6} MB` };
    const bytes = readFileSync(path === "-" ? 0 : path);
    return { ok: true, text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch (error) {
    return { ok: false, reason: reasonOf(error) };
  }
}

/** Reads files named in a document, relative to the folder the document is in. */
export function readerBeside(document: string): ReadFile {
  const folder = document === "-" ? "." : dirname(document);
  return (name) => readTextFile(resolve(folder, name));
}

/** Writes a file whole or not at all: a power cut leaves the old one or the new one. */
export function writeTextFile(path: string, text: string): void {
  mkdirSync(dirname(path), { recursive: true });
  const draft = `${path}.${process.pid}.tmp`;
  writeFileSync(draft, text, { flush: true });
  renameSync(draft, path);
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "it is a folder",
  ENOTDIR: "part of its path is no folder",
  EACCES: "reading it is not allowed",
  EPERM: "reading it is not allowed",
  ERR_ENCODING_INVALID_ENCODED_DATA: "it is not text in UTF-8",
};

function reasonOf(error: unknown): string {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}
