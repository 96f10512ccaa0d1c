import type { CriterionVerdict, Verdict } from "../readiness/index.js";
import { celsiusFromKelvin } from "../units/index.js";
import { rounded } from "./result-header.js";
import type { CriterionDocument } from "./result-schema.js";

/** Every criterion of a verdict in the user's units. */
export function criteriaDocument(verdict: Verdict): CriterionDocument[] {
  return verdict.criteria.map(criterionDocument);
}

function criterionDocument({ criterion, value, margin, chance }: CriterionVerdict): CriterionDocument {
  const { id, title, quantity, direction, judged, limit, reason, source } = criterion;
  const shown = quantity === "temperature" ? celsiusFromKelvin : (kelvins: number) => kelvins;
  return {
    ...{ id, title, direction, judged, chance, reason, source },
    unit: quantity === "temperature" ? "c" : "k",
    limit: rounded(shown(limit), 2),
    value: band(value, shown),
    margin: band(margin, (kelvins) => kelvins),
  };
}

function band({ low, mid, high }: CriterionVerdict["value"], shown: (kelvins: number) => number) {
  return { p05: rounded(shown(low), 2), p50: rounded(shown(mid), 2), p95: rounded(shown(high), 2) };
}
