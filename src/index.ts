export {
  type Caution,
  COVERS,
  type Cover,
  coverById,
  HEATERS,
  type Heater,
  heaterById,
  INSTALLATIONS,
  type Installation,
  installationById,
  type Kit,
  PART_LABELS,
  PART_NAMES,
  type PartName,
} from "./aircraft/index.js";
export { PANELS, WING_COVERS } from "./airframe/index.js";
export { frostFromDocument, thawFromDocument } from "./airframe-pipeline.js";
export { awayFromDocument } from "./away-pipeline.js";
export {
  type BaseScenario,
  type DemoOpening,
  demoOpening,
  demoSetUp,
  isNews,
  type KnownReading,
  nextDeparture,
  OF_BASE,
  planIssued,
  type ScenarioOptions,
  scenarioOf,
} from "./base/index.js";
export {
  type EstimateRequest,
  estimateNow,
  type LiveEstimate,
  type PlanOptions,
  planOf,
  plansFor,
  type SavedEstimate,
} from "./base-pipeline.js";
export {
  type AircraftNow,
  type BinaryProgram,
  baseDocumentOf,
  type MilpAnswer,
  type ProgramRow,
  type SolveMilp,
} from "./base-plan/index.js";
export { type BasePipelineOptions, basePlanFromDocument } from "./base-plan-pipeline.js";
export {
  type AwayDocument,
  awaySchema,
  type BaseDocument,
  type BasePlanDocument,
  basePlanSchema,
  baseSchema,
  type CourseDocument,
  type CriterionDocument,
  coverSchema,
  type DemoBase,
  type DocumentIssue,
  demoBase,
  type ExplanationDocument,
  explanationSchema,
  type FaceDocument,
  type FlowsDocument,
  type FrostDocument,
  type FrostOutlookDocument,
  frostOutlookSchema,
  frostSchema,
  type HappeningDocument,
  heaterSchema,
  installationSchema,
  issueText,
  jsonSchemas,
  type KitComparisonDocument,
  kitComparisonSchema,
  kitSchema,
  type LearnedDocument,
  type LearningDocument,
  learnedSchema,
  learningSchema,
  type NowDocument,
  nowSchema,
  type Overrides,
  type PlanDocument,
  planSchema,
  type ReadFile,
  type ReadScenario,
  type ReadWinter,
  type RollOutDocument,
  readScenarioDocument,
  SCENARIO_VERSION,
  type ScenarioDocument,
  type ScenarioReading,
  type SimulationDocument,
  type StampDocument,
  type StartDocument,
  scenarioSchema,
  simulationSchema,
  type ThawDocument,
  type ThawOutlookDocument,
  thawOutlookSchema,
  thawSchema,
  type WinterDocument,
  type WinterRowDocument,
  type WinterStudyDocument,
  winterSchema,
  winterStudySchema,
} from "./documents/index.js";
export { highsSolver } from "./highs-solver.js";
export {
  type LogOptions,
  type LogQuestion,
  type ProbePlace,
  readTemperatureLog,
  type TemperatureLog,
} from "./learning/index.js";
export { nowFromDocument } from "./live-pipeline.js";
export {
  explainFromDocument,
  learnFromDocument,
  type Outcome,
  type PipelineOptions,
  planFromDocument,
  simulateFromDocument,
} from "./pipeline.js";
export { type Plan, type PlanRequest, planPreheat, type Wish } from "./planning/index.js";
export { type Criterion, judge, temperatureCriteria, type Verdict } from "./readiness/index.js";
export { type Draws, drawEnsemble, type Scenario, simulate, type Trajectory } from "./simulation/index.js";
export { type Explanation, explainWhy, type WhyTopic, whyTopics } from "./starting/index.js";
export { celsiusFromKelvin, fahrenheitFromCelsius, kelvinFromCelsius } from "./units/index.js";
export {
  epochFromLocal,
  isTimeZone,
  localText,
  PLACES as MADE_PLACES,
  readEpw,
  readForecastText,
  readHourlyCsv,
  type WeatherReading,
  type WeatherSeries,
} from "./weather/index.js";
export { type Piece, type PieceResult, pieceKey, piecesOf, winterStudy } from "./winter/index.js";
export { kitFromDocument, winterFrom, winterFromDocument, winterPiece } from "./winter-pipeline.js";
