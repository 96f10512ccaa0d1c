import { readBaseDocument } from "../../src/base-documents/index.js";
import {
  type DocumentIssue,
  type ReadFile,
  readFrostDocument,
  readKitDocument,
  readScenarioDocument,
  readThawDocument,
  readWinterDocument,
} from "../../src/documents/index.js";

/** The faults of a document of any kind, as the command for its kind finds them; none when it is good. */
export function issuesOfAny(
  source: string,
  options: { readonly readFile?: ReadFile },
): readonly DocumentIssue[] {
  const reading = readerFor(source)(source, options);
  return reading.ok ? [] : reading.issues;
}

function readerFor(source: string) {
  const kind = /^ {2}"kind": "(\w+)"/m.exec(source)?.[1];
  if (kind === undefined) return readScenarioDocument;
  if (kind === "winter") return readWinterDocument;
  if (kind === "kit") return readKitDocument;
  if (kind === "base") return readBaseDocument;
  return kind === "thaw" ? readThawDocument : readFrostDocument;
}
