import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { open, rename, rm } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { StoreFailure } from "./failure.js";

export const BACKUP_VERSION = 2;

export interface BackupHeader {
  readonly soakline_backup: number;
  readonly base: string;
  /** ISO 8601, UTC. */
  readonly made: string;
}

/** [characters] gathered before they go to the file. */
const GATHERED = 1 << 16;

/**
 * Writes a backup whole or not at all: beside its place, synced to disk, closed with the number of lines and their
 * checksum, and only then put in its place. Only its owner may read it.
 */
export async function writeBackup(
  path: string,
  header: BackupHeader,
  content: AsyncIterable<object>,
): Promise<void> {
  const draft = `${path}.${process.pid}.part`;
  const file = await open(draft, "w", 0o600);
  try {
    const hash = createHash("sha256");
    let lines = 0;
    let gathered = "";
    const put = async (entry: object, counts = true) => {
      const line = `${JSON.stringify(entry)}\n`;
      if (counts) {
        hash.update(line);
        lines++;
      }
      gathered += line;
      if (gathered.length < GATHERED) return;
      await file.appendFile(gathered);
      gathered = "";
    };
    await put(header);
    for await (const entry of content) await put(entry);
    await put({ lines, sha256: hash.digest("hex") }, false);
    await file.appendFile(gathered);
    await file.sync();
    await file.close();
    await rename(draft, path);
  } catch (error) {
    await file.close().catch(() => undefined);
    await rm(draft, { force: true });
    throw error;
  }
  await syncFolder(dirname(resolve(path)));
}

/** Without it a power cut could take back the renaming. */
async function syncFolder(path: string): Promise<void> {
  const folder = await open(path, "r");
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

/** The header of a backup that is whole and as it was written; throws a StoreFailure otherwise. */
export async function verifyBackup(path: string): Promise<BackupHeader> {
  const hash = createHash("sha256");
  let header: BackupHeader | undefined;
  let last: Buffer | undefined;
  let lines = 0;
  for await (const line of linesOf(path)) {
    if (last !== undefined) {
      hash.update(last).update("\n");
      lines++;
    }
    header ??= headerIn(path, line);
    last = line;
  }
  const end = last === undefined ? undefined : jsonIn(last);
  if (header === undefined || !isEnd(end)) throw damaged(path, "its end is missing");
  if (end.lines !== lines) throw damaged(path, `it has ${lines} lines, ${end.lines} were written`);
  if (end.sha256 !== hash.digest("hex")) throw damaged(path, "it is not what was written");
  return header;
}

/** What stands between header and end. */
export async function* contentOf(path: string): AsyncGenerator<Readonly<Record<string, unknown>>> {
  let ahead: Buffer | undefined;
  let first = true;
  for await (const line of linesOf(path)) {
    if (ahead !== undefined) yield jsonIn(ahead) as Readonly<Record<string, unknown>>;
    if (!first) ahead = line;
    first = false;
  }
}

/** Splits at line feeds alone: text in a line may hold any other separator. A last line without one was cut off. */
async function* linesOf(path: string): AsyncGenerator<Buffer> {
  let rest: Buffer[] = [];
  for await (const chunk of createReadStream(path) as AsyncIterable<Buffer>) {
    let from = 0;
    for (let end = chunk.indexOf(LINE_FEED); end !== -1; end = chunk.indexOf(LINE_FEED, from)) {
      yield Buffer.concat([...rest, chunk.subarray(from, end)]);
      rest = [];
      from = end + 1;
    }
    if (from < chunk.length) rest.push(chunk.subarray(from));
  }
  if (rest.length > 0) throw damaged(path, "its end is missing");
}

const LINE_FEED = 0x0a;

function headerIn(path: string, line: Buffer): BackupHeader {
  const header = jsonIn(line) as Partial<BackupHeader> | undefined;
  const version = header?.soakline_backup;
  if (header === undefined || typeof version !== "number")
    throw damaged(path, "it does not begin like a backup");
  if (version > BACKUP_VERSION) {
    throw new StoreFailure(
      "backup-of-newer-version",
      `${path} is a backup of version ${version}, this program reads version ${BACKUP_VERSION}: use a newer program`,
    );
  }
  return header as BackupHeader;
}

function isEnd(value: unknown): value is { readonly lines: number; readonly sha256: string } {
  return typeof value === "object" && value !== null && "lines" in value && "sha256" in value;
}

function jsonIn(line: Buffer): unknown {
  try {
    return JSON.parse(line.toString("utf8"));
  } catch {
    return undefined;
  }
}

function damaged(path: string, reason: string): StoreFailure {
  return new StoreFailure("backup-damaged", `${path} cannot be used as a backup: ${reason}`);
}
