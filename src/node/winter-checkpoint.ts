import {
  closeSync,
  existsSync,
  fsyncSync,
  ftruncateSync,
  mkdirSync,
  openSync,
  readFileSync,
  writeSync,
} from "node:fs";
import { dirname } from "node:path";
import { type PieceResult, pieceKey } from "../index.js";

/** Finished pieces of a study in a file, a line each: a study that was stopped, or lost its power, goes on from there. */
export interface Checkpoint {
  /** What was there when it was opened. */
  readonly finished: readonly PieceResult[];
  /** Adds a piece and waits until it is on the disk. */
  add(result: PieceResult): void;
  close(): void;
}

/** A file that is of another study, or no such file at all. */
export class CheckpointTrouble extends Error {
  override readonly name = "CheckpointTrouble";
}

/**
 * Opens or begins a checkpoint. A last line that a power cut tore is cut off; anything else that does not belong is refused, so
 * that results of two studies never mix.
 * @param study name of the study, see studyId
 */
export function openCheckpoint(path: string, study: string): Checkpoint {
  mkdirSync(dirname(path), { recursive: true });
  const isNew = !existsSync(path);
  const text = isNew ? "" : readFileSync(path, "utf8");
  const whole = text.slice(0, text.lastIndexOf("\n") + 1);
  const lines = whole.split("\n").slice(0, -1);
  const file = openSync(path, isNew ? "w+" : "r+");
  try {
    if (lines.length === 0) {
      if (text.trim() !== "" && !text.startsWith('{"soakline_winter":'))
        throw new CheckpointTrouble(`${path} is not a file of finished winter pieces`);
      ftruncateSync(file, 0);
      write(`${JSON.stringify({ soakline_winter: study })}\n`, 0);
      return begun([], Buffer.byteLength(`${JSON.stringify({ soakline_winter: study })}\n`));
    }
    if (parsed(lines[0]!, 1).soakline_winter !== study) {
      throw new CheckpointTrouble(`${path} belongs to another study: its document, files or program differ`);
    }
    const end = Buffer.byteLength(whole);
    ftruncateSync(file, end);
    const finished = lines.slice(1).map((line, i) => parsed(line, i + 2) as unknown as PieceResult);
    const keys = new Set(finished.map(pieceKey));
    if (keys.size !== finished.length) throw new CheckpointTrouble(`${path} has a piece twice`);
    return begun(finished, end);
  } catch (error) {
    closeSync(file);
    throw error;
  }

  function begun(finished: readonly PieceResult[], end: number): Checkpoint {
    let at = end;
    return {
      finished,
      add(result) {
        at += write(`${JSON.stringify(result)}\n`, at);
      },
      close: () => closeSync(file),
    };
  }

  function write(line: string, at: number): number {
    const bytes = Buffer.from(line);
    for (let done = 0; done < bytes.length; )
      done += writeSync(file, bytes, done, bytes.length - done, at + done);
    fsyncSync(file);
    return bytes.length;
  }

  function parsed(line: string, number: number): Record<string, unknown> {
    try {
      const value: unknown = JSON.parse(line);
      if (typeof value === "object" && value !== null) return value as Record<string, unknown>;
    } catch {
      // Said below.
    }
    throw new CheckpointTrouble(`${path}, line ${number}, is not a finished winter piece`);
  }
}
