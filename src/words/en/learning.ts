import type { LearningFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const learning: Phrases<LearningFindings> = {
  "learned-from": ({ readings, origins, isReset }) =>
    `This aircraft's numbers are as learned from ${readings} readings (${origins.join(", ")})${isReset ? "; what was learned under other covers, heaters or at another place counts as unknown" : ""}.`,
  "air-as-measured": ({ probes }, say) =>
    `The air around the aircraft is as ${say.list(probes)} measured it, not as the weather has it.`,
};
