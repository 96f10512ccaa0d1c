export { allCriteria } from "./all-criteria.js";
export { type StricterLimits, temperatureCriteria } from "./criteria.js";
export {
  type Aim,
  type Criterion,
  type EnsembleState,
  gatingOf,
  isGating,
  isOfLine,
  marginOf,
  marginText,
  type Quantity,
} from "./criterion.js";
export { type StartOptions, startCriteria } from "./start-criteria.js";
export { type CriterionVerdict, judge, type Verdict } from "./verdict.js";
