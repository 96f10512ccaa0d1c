export { allCriteria, temperatureCriteria } from "./all-criteria.js";
export {
  type Aim,
  type Criterion,
  type EnsembleState,
  gatingOf,
  isGating,
  isOfLine,
  marginMeasure,
  marginOf,
  SHOWN,
  type StricterLimits,
} from "./criterion.js";
export { type CriterionVerdict, judge, type Verdict } from "./verdict.js";
