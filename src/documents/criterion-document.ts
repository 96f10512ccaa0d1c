import { type CriterionVerdict, SHOWN, type Verdict } from "../readiness/index.js";
import { rounded } from "./result-header.js";
import type { CriterionDocument } from "./result-schema.js";

/** Every criterion of a verdict in the user's units. */
export function criteriaDocument(verdict: Verdict): CriterionDocument[] {
  return verdict.criteria.map(criterionDocument);
}

function criterionDocument({ criterion, value, margin, chance }: CriterionVerdict): CriterionDocument {
  const {
    id,
    title,
    quantity,
    direction,
    judged,
    limit,
    reason,
    source,
    advisory = false,
    aim = "least",
  } = criterion;
  const shown = SHOWN[quantity];
  return {
    ...{ id, title, direction, judged, advisory, aim, chance, reason, source },
    unit: shown.unit,
    limit: rounded(shown.value(limit), 2),
    value: band(value, shown.value),
    margin: band(margin, shown.margin),
  };
}

function band({ low, mid, high }: CriterionVerdict["value"], shown: (si: number) => number) {
  return { p05: rounded(shown(low), 2), p50: rounded(shown(mid), 2), p95: rounded(shown(high), 2) };
}
