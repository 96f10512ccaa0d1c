export { coverSchema, heaterSchema, installationSchema } from "./description-schema.js";
export { type DocumentIssue, issueText } from "./issue.js";
export {
  type Migration,
  type MigrationFailure,
  type MigrationResult,
  migrated,
  SCENARIO_MIGRATIONS,
  SCENARIO_VERSION,
} from "./migrations.js";
export { type ReadScenario, readScenarioDocument, type ScenarioReading } from "./scenario-reading.js";
export { type ScenarioDocument, scenarioSchema } from "./scenario-schema.js";
export type { ReadFile } from "./weather-sources.js";
export type { WishWithHeaters } from "./wish-reading.js";
