import { nightFrost, WING_COVERS } from "../airframe/index.js";
import {
  type FrostOutlookDocument,
  frostDocument,
  overriddenAirframe,
  readFrostDocument,
} from "../documents/index.js";
import { completed, failed, filesOf, type Outcome, type QuestionOptions, STOPPED } from "./question.js";

/** Id of the cover that is tried where the document has none. */
const TRIED_COVER = "coated";

/** Frost and dew on a wing through the night that a document describes, and the same with or without a cover. */
export function frostFromDocument(
  source: unknown,
  options: QuestionOptions = {},
): Outcome<FrostOutlookDocument> {
  const { overrides = {}, onProgress } = options;
  const read = readFrostDocument(overriddenAirframe(source, overrides), filesOf(options));
  if (!read.ok) return { status: "refused", issues: read.issues };
  const { cover, ...bare } = read.request;
  const tried = cover === undefined ? TRIED_COVER : undefined;
  if (onProgress?.(0) === false) return STOPPED;
  const night = nightFrost(read.request);
  if (night.result === undefined) return failed(night.remedy);
  if (onProgress?.(0.5) === false) return STOPPED;
  const other = nightFrost(tried === undefined ? bare : { ...bare, cover: WING_COVERS[tried] });
  if (other.result === undefined) return failed(other.remedy);
  return completed(frostDocument(night.result, { cover: tried, result: other.result }, read));
}
