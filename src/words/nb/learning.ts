import type { LearningFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const learning: Phrases<LearningFindings> = {};
