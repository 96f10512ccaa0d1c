import { nightFrost, thawAndDry, WING_COVERS } from "./airframe/index.js";
import {
  type FrostOutlookDocument,
  frostDocument,
  overriddenAirframe,
  readFrostDocument,
  readThawDocument,
  type ThawOutlookDocument,
  thawDocument,
} from "./documents/index.js";
import type { Outcome, PipelineOptions } from "./pipeline.js";
import { leavingReport } from "./thaw-leaving.js";
import { thawTrials } from "./thaw-trials.js";

// The airframe's flow: document -> request -> report -> document.

/** Id of the cover that is tried where the document has none. */
const TRIED_COVER = "coated";

/** Frost and dew on a wing through the night that a document describes, and the same with or without a cover. */
export function frostFromDocument(
  source: unknown,
  options: PipelineOptions = {},
): Outcome<FrostOutlookDocument> {
  const { overrides = {}, readFile, onProgress } = options;
  const read = readFrostDocument(
    overriddenAirframe(source, overrides),
    readFile === undefined ? {} : { readFile },
  );
  if (!read.ok) return { status: "refused", issues: read.issues };
  const { cover, ...bare } = read.request;
  const tried = cover === undefined ? TRIED_COVER : undefined;
  if (onProgress?.(0) === false) return STOPPED;
  const night = nightFrost(read.request);
  if (night.result === undefined) return { status: "failed", message: night.remedy };
  if (onProgress?.(0.5) === false) return STOPPED;
  const other = nightFrost(tried === undefined ? bare : { ...bare, cover: WING_COVERS[tried] });
  if (other.result === undefined) return { status: "failed", message: other.remedy };
  return {
    status: "completed",
    result: frostDocument(night.result, { cover: tried, result: other.result }, read),
  };
}

/** When an aircraft in a hangar is dry, what would help, and whether it freezes again after its roll-out. */
export function thawFromDocument(
  source: unknown,
  options: PipelineOptions = {},
): Outcome<ThawOutlookDocument> {
  const { overrides = {}, readFile, onProgress } = options;
  const read = readThawDocument(
    overriddenAirframe(source, overrides),
    readFile === undefined ? {} : { readFile },
  );
  if (!read.ok) return { status: "refused", issues: read.issues };
  if (onProgress?.(0) === false) return STOPPED;
  const stay = thawAndDry(read.request);
  if (stay.result === undefined) return { status: "failed", message: stay.remedy };
  let stopped = false;
  const trials = thawTrials(read, (done) => {
    stopped = onProgress?.(STAY_SHARE + TRIALS_SHARE * done) === false;
    return !stopped;
  });
  if (stopped) return STOPPED;
  if (trials === undefined) return { status: "failed", message: TRIAL_FAILED };
  if (onProgress?.(STAY_SHARE + TRIALS_SHARE) === false) return STOPPED;
  const leaving = read.rollOut && leavingReport(read, read.rollOut, stay.result);
  if (leaving !== undefined && "remedy" in leaving) return { status: "failed", message: leaving.remedy };
  return { status: "completed", result: thawDocument(stay.result, trials, leaving, read) };
}

/** [-] of the whole time that the stay, and the trials after it, take. */
const STAY_SHARE = 0.1;
const TRIALS_SHARE = 0.8;
const STOPPED = { status: "cancelled", message: "the calculation was stopped" } as const;
const TRIAL_FAILED = "a trial of what would help could not be calculated";
