import { Worker } from "node:worker_threads";
import {
  type AwayDocument,
  awayFromDocument,
  type BasePlanDocument,
  basePlanFromDocument,
  type ExplanationDocument,
  explainFromDocument,
  type FrostOutlookDocument,
  frostFromDocument,
  type KitComparisonDocument,
  kitFromDocument,
  type LearningDocument,
  learnFromDocument,
  type NowDocument,
  nowFromDocument,
  type Outcome,
  type Overrides,
  type PlanDocument,
  planFromDocument,
  type SimulationDocument,
  simulateFromDocument,
  type TemperatureLog,
  type ThawOutlookDocument,
  thawFromDocument,
} from "../index.js";
import { readerBeside, solveMilp } from "../node/index.js";

/** What is answered to a job of each kind. */
export interface Results {
  readonly plan: PlanDocument;
  readonly simulate: SimulationDocument;
  readonly explain: ExplanationDocument;
  readonly away: AwayDocument;
  readonly frost: FrostOutlookDocument;
  readonly thaw: ThawOutlookDocument;
  readonly learn: LearningDocument;
  readonly now: NowDocument;
  readonly kit: KitComparisonDocument;
  readonly base: BasePlanDocument;
}

export type JobKind = keyof Results;

/** One run of the pipeline, as it is sent to a worker. */
export interface Job<K extends JobKind = JobKind> {
  readonly kind: K;
  readonly source: unknown;
  /** The document's own file, beside which it names others. */
  readonly file: string;
  readonly overrides: Overrides;
  /** What "learn" and "now" work on. */
  readonly log?: TemperatureLog;
}

export type JobMessage =
  | { readonly done: number | undefined }
  | { readonly outcome: Outcome<Results[JobKind]> };

/** Runs a job in a worker, so that this thread stays free to hear an interruption. */
export function runJob<K extends JobKind>(
  job: Job<K>,
  onProgress: (done: number | undefined) => void,
): Promise<Outcome<Results[K]>> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./worker.js", import.meta.url), { workerData: job });
    worker.on("message", (message: JobMessage) => {
      if ("outcome" in message) resolve(message.outcome as Outcome<Results[K]>);
      else onProgress(message.done);
    });
    worker.on("error", reject);
    worker.on("exit", (code) => reject(new Error(`the worker ended without a result (exit code ${code})`)));
  });
}

/** The same in this thread. */
export function perform(
  { kind, source, file, overrides, log = NO_LOG }: Job,
  onProgress: (done?: number) => boolean,
) {
  const options = { overrides, readFile: readerBeside(file), onProgress };
  switch (kind) {
    case "plan":
      return planFromDocument(source, options);
    case "simulate":
      return simulateFromDocument(source, options);
    case "explain":
      return explainFromDocument(source, options);
    case "away":
      return awayFromDocument(source, options);
    case "frost":
      return frostFromDocument(source, options);
    case "thaw":
      return thawFromDocument(source, options);
    case "learn":
      return learnFromDocument(source, log, options);
    case "now":
      return nowFromDocument(source, log, options);
    case "kit":
      return kitFromDocument(source, options);
    case "base":
      return basePlanFromDocument(source, { ...options, solveMilp });
  }
}

const NO_LOG: TemperatureLog = { time: new Float64Array(), probes: [], findings: [], origin: "no log" };
