import type {
  AwayDocument,
  BaseDocument,
  BasePlanDocument,
  DocumentIssue,
  ExplanationDocument,
  KitComparisonDocument,
  LearningDocument,
  NowDocument,
  PlanDocument,
  ScenarioDocument,
  SimulationDocument,
  ThawOutlookDocument,
  ToldDocument,
  WinterStudyDocument,
} from "../../documents/index.js";
import type { LogOptions, LogReading, TemperatureLog } from "../../learning/index.js";
import type { BaseSetUp, LogbookEvent } from "../../logbook/index.js";
import type { Basis } from "../../planning/index.js";
import type { Explanation, WhyTopic } from "../../starting/index.js";
import type { SwitchCaution } from "../../switching/cautions.js";
import type { FirstPlan } from "./first-plan.js";

// What page and planning worker say to each other. All values are plain data; times are [ms] since 1970 UTC.

/** A question and its answer, by name. A new kind of work is a line here and a function in tasks.ts. */
export interface Work {
  /** Engines and kit to choose from. */
  readonly catalogue: { readonly ask: Record<never, never>; readonly answer: Catalogue };
  /** The demo base as events, beginning at `now`. */
  readonly demo: { readonly ask: { readonly now: number }; readonly answer: readonly LogbookEvent[] };
  /** Takes the logbook in; everything asked later is about it. */
  readonly open: {
    readonly ask: { readonly events: readonly LogbookEvent[]; readonly now: number };
    readonly answer: BaseView;
  };
  /** Events of a file that somebody brings, and what is wrong with the others. */
  readonly read: {
    readonly ask: { readonly text: string };
    readonly answer: { readonly events: readonly LogbookEvent[]; readonly issues: readonly string[] };
  };
  readonly export: {
    readonly ask: { readonly events: readonly LogbookEvent[]; readonly form: "csv" | "json" };
    readonly answer: string;
  };
  readonly plan: { readonly ask: PlanAsk; readonly answer: PlanDocument };
  /** Plans while departures, covers or the wind are moved: parts come as they are known, the answer says that all came. */
  readonly replan: { readonly ask: ReplanAsk; readonly answer: null; readonly part: ReplanPart };
  /** Documents of their own, as the command line takes them; the answers are its `--json`. */
  readonly simulate: { readonly ask: OfDocument; readonly answer: SimulationDocument };
  readonly explain: { readonly ask: OfDocument; readonly answer: ExplanationDocument };
  readonly thaw: { readonly ask: OfDocument; readonly answer: ThawOutlookDocument };
  /** The scenario of an aircraft as the logbook has it, for documents made of it. */
  readonly scenario: {
    readonly ask: { readonly aircraft: string; readonly now: number };
    readonly answer: ScenarioDocument;
  };
  /** The same for a time that is over, with what the logbook says was done in it: for what was logged then. */
  readonly history: { readonly ask: HistoryAsk; readonly answer: HistoryView };
  /** The plan of a document, for what a change of it would do. */
  readonly planOf: { readonly ask: OfDocument; readonly answer: PlanDocument };
  readonly kit: { readonly ask: OfDocument; readonly answer: KitComparisonDocument };
  /** Invented places whose winters can be made. */
  readonly places: { readonly ask: Record<never, never>; readonly answer: readonly Named[] };
  readonly winter: { readonly ask: WinterAsk; readonly answer: WinterStudyDocument };
  /** What is wrong with a set-up, before it is kept; empty when nothing is. */
  readonly readSetUp: { readonly ask: { readonly base: unknown }; readonly answer: readonly DocumentIssue[] };
  /** A temperature log of a file, or the questions that it leaves open. */
  readonly log: { readonly ask: LogAsk; readonly answer: LogReading };
  readonly learn: { readonly ask: LearnAsk; readonly answer: LearningDocument };
  /** Questions that can be answered of an engine, and one answer. */
  readonly topics: { readonly ask: { readonly engine: string }; readonly answer: readonly WhyTopic[] };
  readonly why: { readonly ask: WhyAsk; readonly answer: Explanation };
  readonly now: {
    readonly ask: { readonly aircraft: string; readonly now: number };
    readonly answer: NowDocument;
  };
  readonly away: { readonly ask: AwayAsk; readonly answer: AwayDocument };
  /** Frost on an aluminium wing outside, through the time the forecast reaches. */
  readonly frost: { readonly ask: { readonly now: number }; readonly answer: FrostView };
  /** What a pasted METAR or TAF says, before it is kept. */
  readonly forecast: { readonly ask: ForecastAsk; readonly answer: ForecastView };
  /** All aircraft and what they share as one question, and its plan. */
  readonly wholeBase: { readonly ask: WholeBaseAsk; readonly answer: WholeBaseQuestion };
  readonly basePlan: { readonly ask: OfDocument; readonly answer: BasePlanDocument };
}

export type WorkKind = keyof Work;
export type Ask<K extends WorkKind> = Work[K]["ask"];
export type Answer<K extends WorkKind> = Work[K]["answer"];
/** What comes before the answer; never, for most kinds. */
export type Part<K extends WorkKind> = Work[K] extends { readonly part: infer P } ? P : never;

/** Kinds that ask nothing of the logbook and take milliseconds: no form waits for plans because of them. */
export const QUICK_WORK: ReadonlySet<WorkKind> = new Set<WorkKind>([
  "catalogue",
  "topics",
  "why",
  "forecast",
]);

/** Kinds that calculate in one piece for longer than a second; they run in a worker of their own, which is ended to stop them. */
export const LONG_WORK: ReadonlySet<WorkKind> = new Set<WorkKind>([
  "simulate",
  "explain",
  "thaw",
  "learn",
  "kit",
  "planOf",
  "winter",
  "basePlan",
]);

export interface PlanAsk {
  readonly aircraft: string;
  readonly now: number;
  /** Tried instead of the one that was asked for; nothing is kept. */
  readonly departure?: number;
  readonly chance?: number;
  /** Drawn cases: few answer fast, many answer finely. */
  readonly members: number;
}

export interface ReplanAsk {
  readonly now: number;
  /** Drawn cases of decisions and whole plans. The same in all questions, so that what was played serves again. */
  readonly members: number;
  /** In the order they are to be answered. */
  readonly aircraft: readonly ReplanAsked[];
  /** Every wind of the forecast times this. */
  readonly windFactor?: number;
  /** The last grade wanted; the whole plan when left out. */
  readonly until?: "first" | "decided";
}

export interface ReplanAsked {
  readonly id: string;
  /** Tried instead of what the logbook has; nothing is kept. */
  readonly departure?: number;
  readonly chance?: number;
  /** Covers on from now, of the aircraft's kit. */
  readonly covers?: readonly string[];
}

/**
 * What is known of one aircraft's plan. "first": at once, read or carried over from what was played before; "decided": the
 * plug-in as the whole plan will have it; "whole": all of it.
 */
export type ReplanPart = { readonly aircraft: string } & (
  | { readonly grade: "first"; readonly basis: Basis; readonly plan: FirstPlan }
  | { readonly grade: "decided"; readonly plan: FirstPlan }
  | { readonly grade: "whole"; readonly plan: PlanDocument }
  | { readonly grade: "refused"; readonly reasons: readonly string[] }
);

export interface OfDocument {
  readonly document: unknown;
}

export interface LogAsk {
  readonly text: string;
  readonly options?: LogOptions;
}

export interface LearnAsk extends OfDocument {
  readonly log: TemperatureLog;
}

export interface HistoryAsk {
  readonly aircraft: string;
  /** First and last moment that is asked for. */
  readonly from: number;
  readonly to: number;
}

export interface HistoryView {
  readonly document: ScenarioDocument;
  /** When the document begins: later than asked for where the logbook knows nothing of before. */
  readonly begins: number;
  readonly assumptions: readonly string[];
}

export interface WinterAsk extends OfDocument {
  /** Texts of the files that the document names. */
  readonly files: Readonly<Record<string, string>>;
}

export interface WhyAsk {
  readonly engine: string;
  readonly topic: WhyTopic;
  readonly tempC: number;
}

export interface AwayAsk {
  readonly aircraft: string;
  readonly now: number;
  readonly members: number;
  /** [h] since it was shut down from cruise, or as the logbook has it; "unknown": nobody said, the cold side is taken. */
  readonly engine: number | "logged" | "unknown";
  /** Whether covers are on now, and were since the shut-down; as the logbook has it, or else none, where left out. */
  readonly isCovered?: boolean;
  /** [ms] when it is to be started again. */
  readonly back: number;
  /** Weather as somebody standing there sees it, instead of the forecast. */
  readonly here?: { readonly tempC: number; readonly windMps: number; readonly cloud: number };
  readonly chance?: number;
}

export interface WholeBaseAsk {
  readonly now: number;
  readonly members: number;
  /** What the plan before said, which is changed for good reason only. */
  readonly told: readonly ToldDocument[];
}

export interface WholeBaseQuestion {
  readonly document: BaseDocument;
  /** Names of aircraft whose next departure is too far ahead for it. */
  readonly later: readonly string[];
}

export interface ForecastAsk {
  readonly now: number;
  readonly zone: string;
  readonly metar?: string;
  readonly taf?: string;
}

/** One message to the worker. */
export type ToWorker =
  | { readonly id: number; readonly kind: WorkKind; readonly ask: unknown }
  /** Work not yet begun is dropped, and what goes in pieces is stopped after the piece. */
  | { readonly id: number; readonly kind: "cancel" };

/** One message from the worker. Exactly one but "progress" and "part" ends a question. */
export type FromWorker = { readonly id: number } & (
  | { readonly is: "progress"; readonly done: number }
  | { readonly is: "part"; readonly part: unknown }
  | { readonly is: "done"; readonly answer: unknown }
  | { readonly is: "refused"; readonly reasons: readonly string[] }
  | { readonly is: "failed"; readonly message: string }
);

export interface Named {
  readonly id: string;
  readonly name: string;
}

export interface HeaterView extends Named {
  readonly powerW: number;
  /** Draws on the base's circuit. */
  readonly electric: boolean;
  readonly attended: boolean;
  readonly longestOnH: number;
  readonly cylinders?: number;
  readonly cautions: readonly CautionView[];
}

export interface CoverView extends Named {
  readonly cautions: readonly CautionView[];
}

export interface CautionView {
  readonly text: string;
  readonly source: string;
}

export interface SwitchView extends Named {
  /** Ids of the heaters it feeds. */
  readonly heaters: readonly string[];
  readonly cautions: readonly SwitchCaution[];
  /** Why it never puts a heater on. */
  readonly unsafe?: string;
}

export interface Catalogue {
  readonly engines: readonly (Named & { readonly cylinders: number })[];
  readonly heaters: readonly HeaterView[];
  readonly covers: readonly CoverView[];
}

/** What stands at the base, as the screens need it. */
export interface BaseView {
  /** As it is set up, whole, for those who change it. */
  readonly setUp: BaseSetUp;
  readonly name: string;
  readonly notice?: string;
  readonly zone: string;
  readonly hasHangar: boolean;
  readonly circuits: readonly CircuitView[];
  readonly aircraft: readonly AircraftView[];
  readonly weather?: WeatherView;
  /** Why there is no weather, or what is wrong with it. */
  readonly weatherTrouble?: string;
  readonly withoutEffect: readonly { readonly id: string; readonly reason: string }[];
}

export interface CircuitView extends Named {
  /** [A] that a continuous load may draw on its breaker. */
  readonly continuousA: number;
  readonly voltageV: number;
  readonly outlets: number;
}

export interface AircraftView extends Named {
  readonly engine: string;
  readonly cylinders: number;
  readonly hasCoolant: boolean;
  readonly circuit?: string;
  readonly place: "ramp" | "hangar";
  readonly running: boolean;
  readonly heaters: readonly HeaterView[];
  readonly covers: readonly CoverView[];
  readonly switches: readonly SwitchView[];
  readonly heatersOn: readonly string[];
  readonly coversOn: readonly string[];
  /** Since when the heaters now on have been on. */
  readonly heatingSince?: number;
  readonly chance: number;
  readonly departures: readonly {
    readonly id: string;
    readonly departure: number;
    readonly chance?: number;
    readonly pulledOut: boolean;
    readonly heaters?: readonly string[];
  }[];
  readonly readings: readonly { readonly at: number; readonly part: string; readonly tempC: number }[];
  readonly lastStart?: { readonly at: number; readonly how: "easy" | "hard" | "failed" };
  readonly faults: readonly string[];
}

/** Weather on the hour, from the hour before now as far as it is known. */
export interface WeatherView {
  readonly origin: string;
  /** When the newest forecast was taken in. */
  readonly received: number;
  readonly time: readonly number[];
  readonly airC: readonly number[];
  readonly windMps: readonly number[];
  readonly dewPointC: readonly number[];
  readonly cloud: readonly number[];
  readonly assumptions: readonly string[];
}

export interface FrostView {
  readonly time: readonly number[];
  /** [kg/m²] on the upper side of a wing, middle and 95 % of the cases. */
  readonly middle: readonly number[];
  readonly most: readonly number[];
  readonly chance: number;
}

export interface ForecastView {
  readonly origin: string;
  readonly time: readonly number[];
  readonly airC: readonly number[];
  readonly windMps: readonly number[];
  readonly cloud: readonly number[];
  readonly assumptions: readonly string[];
  readonly warnings: readonly string[];
}
