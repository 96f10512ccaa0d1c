import { createHash } from "node:crypto";
import { type Overrides, type ReadFile, winterFrom } from "../index.js";

/** A winter document with the text of every file it names: all that a process elsewhere needs to work a piece out. */
export interface WinterBundle {
  readonly document: unknown;
  readonly overrides: Pick<Overrides, "members" | "seed">;
  readonly files: Readonly<Record<string, string>>;
}

export type BundleReading = ReturnType<typeof winterFrom>;

/** Raised whenever the same document would come to other numbers, so that results of two kinds never meet in one study. */
const REVISION = 3;

/** Reads a document and keeps what it read. */
export function bundled(
  document: unknown,
  overrides: Overrides,
  readFile: ReadFile,
): { readonly bundle: WinterBundle; readonly reading: BundleReading } {
  const files: Record<string, string> = {};
  const keeping: ReadFile = (name) => {
    const file = readFile(name);
    if (file.ok) files[name] = file.text;
    return file;
  };
  const { members, seed } = overrides;
  const asked = {
    ...(members === undefined ? {} : { members }),
    ...(seed === undefined ? {} : { seed }),
  };
  const reading = winterFrom(document, { overrides: asked, readFile: keeping });
  return { bundle: { document, overrides: asked, files }, reading };
}

export function readBundle({ document, overrides, files }: WinterBundle): BundleReading {
  return winterFrom(document, {
    overrides,
    readFile: (name) => {
      const text = files[name];
      return text === undefined ? { ok: false, reason: "it did not come along" } : { ok: true, text };
    },
  });
}

/** Name of a study: the same for the same document, files and program. */
export function studyId(bundle: WinterBundle): string {
  const text = JSON.stringify([
    REVISION,
    bundle.document,
    bundle.overrides,
    Object.entries(bundle.files).sort(),
  ]);
  return createHash("sha256").update(text).digest("hex").slice(0, 32);
}
