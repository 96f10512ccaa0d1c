export { BEFORE } from "./before.js";
export { calibrate } from "./calibrate.js";
export { crossValidated } from "./cross-validation.js";
export { type MeasuredReading, type MeasuredRun, readMeasuredRun } from "./measured-run.js";
export type { Equipment } from "./play.js";
export type { Before, Population } from "./population.js";
export { priorsFile } from "./priors-file.js";
export { reportPage } from "./report.js";
export { type ReadingScore, type Summary, scored, summaryOf } from "./score.js";
