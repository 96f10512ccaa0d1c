import type { PlanningFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const planning: Phrases<PlanningFindings> = {};
