export { type AnswerDocument, answerDocument } from "./answer-document.js";
export { awayDocument } from "./away-document.js";
export {
  type BaseDocument,
  type BasePlanDocument,
  type BaseSections,
  basePlanSchema,
  baseSchema,
  type ToldDocument,
} from "./base-plan-schema.js";
export { type Clock, clockOf, epochOfText } from "./clock.js";
export { inFormOfKind } from "./current-form.js";
export { DEMO_SEED, type DemoBase, demoBase, demoPoints } from "./demo-base.js";
export { coverSchema, heaterSchema, installationSchema } from "./description-schema.js";
export { requireIds } from "./events-reading.js";
export { explanationDocument, type HeatFlows } from "./explanation-document.js";
export { frostDocument } from "./frost-document.js";
export { readFrostDocument } from "./frost-reading.js";
export { type FaceDocument, type FrostOutlookDocument, frostOutlookSchema } from "./frost-result-schema.js";
export { type FrostDocument, frostSchema } from "./frost-schema.js";
export { knownTempsOf, PARTS_OF_KEY } from "./initial-reading.js";
export { type DocumentIssue, isRecord, issueAt, issueText, type Path } from "./issue.js";
export { jsonOf } from "./json.js";
export { jsonSchemas } from "./json-schemas.js";
export type { HandHours, KitChoice, Prices, Switching } from "./kit-choice-reading.js";
export { installationOf, kitOf } from "./kit-reading.js";
export { type ReadKitComparison, readKitDocument } from "./kit-reading-cases.js";
export { learnedDocument } from "./learned-document.js";
export { learnedOf } from "./learned-reading.js";
export { type LearnedDocument, learnedSchema } from "./learned-schema.js";
export { learningDocument } from "./learning-document.js";
export { type LearningDocument, learningSchema } from "./learning-schema.js";
export { SCENARIO_VERSION } from "./migrations.js";
export { nowDocument, type ProbeUse } from "./now-document.js";
export { type NowDocument, nowSchema } from "./now-schema.js";
export { type Overrides, overridden, overriddenAirframe } from "./overrides.js";
export { planDocument } from "./plan-document.js";
export { fault, type Notes, newNotes, type Reading, sectionsBy } from "./reading.js";
export { record } from "./record.js";
export { rounded } from "./result-header.js";
export {
  type AwayDocument,
  awaySchema,
  type CourseDocument,
  type CriterionDocument,
  type ExplanationDocument,
  explanationSchema,
  type FlowsDocument,
  type HappeningDocument,
  type PlanDocument,
  planSchema,
  type SimulationDocument,
  type StampDocument,
  type StartDocument,
  simulationSchema,
} from "./result-schema.js";
export { finding as findingSchema } from "./said.js";
export { readScenarioDocument, type ScenarioReading } from "./scenario-reading.js";
export { type ScenarioDocument, scenarioSchema } from "./scenario-schema.js";
export { issuesOfSchema } from "./schema-issues.js";
export { simulationDocument } from "./simulation-document.js";
export { thawDocument } from "./thaw-document.js";
export { readThawDocument } from "./thaw-reading.js";
export { bestRemedies, DRY_SURELY, type ThawRemedy, thawRemedies } from "./thaw-remedies.js";
export { type RollOutDocument, type ThawOutlookDocument, thawOutlookSchema } from "./thaw-result-schema.js";
export { type ThawDocument, thawSchema } from "./thaw-schema.js";
export { reachOfWeather, type ScenarioWeather, weatherOf } from "./weather-reading.js";
export type { ReadFile } from "./weather-sources/index.js";
export { type Habit, type ReadWinter, readWinterDocument } from "./winter-reading.js";
export {
  type KitCaseDocument,
  type KitComparisonDocument,
  type KitRuleDocument,
  kitComparisonSchema,
  type WinterRowDocument,
  type WinterStudyDocument,
  winterStudySchema,
} from "./winter-result-schema.js";
export { type KitDocument, kitSchema, type WinterDocument, winterSchema } from "./winter-schema.js";
export { limitsOf } from "./wish-reading.js";
