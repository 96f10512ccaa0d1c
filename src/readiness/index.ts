export { type StricterLimits, temperatureCriteria } from "./criteria.js";
export { type Criterion, type EnsembleState, marginOf, type Quantity, rowOf } from "./criterion.js";
export { type CriterionVerdict, judge, type Verdict } from "./verdict.js";
