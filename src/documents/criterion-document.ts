import type { CriterionVerdict, Quantity, Verdict } from "../readiness/index.js";
import { celsiusFromKelvin, RADIANS_PER_SECOND_OF_RPM } from "../units/index.js";
import { rounded } from "./result-header.js";
import type { CriterionDocument } from "./result-schema.js";

/** Every criterion of a verdict in the user's units. */
export function criteriaDocument(verdict: Verdict): CriterionDocument[] {
  return verdict.criteria.map(criterionDocument);
}

interface Shown {
  readonly unit: CriterionDocument["unit"];
  readonly value: (si: number) => number;
  readonly margin: (si: number) => number;
}

const plain = (value: number) => value;
const rpm = (speed: number) => speed / RADIANS_PER_SECOND_OF_RPM;
const percent = (fraction: number) => 100 * fraction;

const SHOWN: Readonly<Record<Quantity, Shown>> = {
  temperature: { unit: "c", value: celsiusFromKelvin, margin: plain },
  "temperature-difference": { unit: "k", value: plain, margin: plain },
  "rotational-speed": { unit: "rpm", value: rpm, margin: rpm },
  fraction: { unit: "percent", value: percent, margin: percent },
  ratio: { unit: "ratio", value: plain, margin: plain },
  index: { unit: "index", value: plain, margin: plain },
  count: { unit: "count", value: plain, margin: plain },
};

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
