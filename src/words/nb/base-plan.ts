import type { BasePlanFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const basePlan: Phrases<BasePlanFindings> = {};
