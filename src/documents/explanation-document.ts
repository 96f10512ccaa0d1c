import type { Plan } from "../planning/index.js";
import type { DrawnScenario } from "../scenario/index.js";
import { criteriaDocument } from "./criterion-document.js";
import { headerOf, rounded, stampOf } from "./result-header.js";
import type { ExplanationDocument, FlowsDocument } from "./result-schema.js";

/** Where heat flows at a moment of a course [W], as means over the cases. */
export interface HeatFlows {
  /** [s] since scenario start */
  readonly at: number;
  /** Drawn by all heaters. */
  readonly heaters: number;
  readonly flows: readonly { readonly from: string; readonly to: string; readonly watts: number }[];
  /** What each part takes up. */
  readonly stored: ReadonlyMap<string, number>;
}

/** Why a plan is what it is: every criterion, and where the heat goes just before unplugging and at the start. */
export function explanationDocument(
  plan: Plan,
  heaters: readonly string[],
  flows: { readonly heating: HeatFlows | undefined; readonly atDeparture: HeatFlows },
  drawn: DrawnScenario,
): ExplanationDocument {
  const { read } = drawn;
  const flowsDocument = ({ at, heaters: watts, flows: all, stored }: HeatFlows): FlowsDocument => ({
    at: stampOf(read, at),
    heaters_w: rounded(watts, 2),
    flows: all
      .map((flow) => ({ from: flow.from, to: flow.to, heat_w: rounded(flow.watts, 2) }))
      .filter(({ heat_w }) => heat_w !== 0),
    stored: [...stored].map(([part, heat]) => ({ part, heat_w: rounded(heat, 2) })),
  });
  return {
    ...headerOf(drawn, heaters),
    kind: "explanation",
    departure: stampOf(read, plan.departure),
    chance: plan.chance,
    weakest: plan.weakest.criterion.id,
    criteria: criteriaDocument(plan.verdict),
    heating: flows.heating === undefined ? null : flowsDocument(flows.heating),
    at_departure: flowsDocument(flows.atDeparture),
  };
}
