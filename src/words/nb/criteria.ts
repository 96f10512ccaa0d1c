import type { CriteriaFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const criteria: Phrases<CriteriaFindings> = {};
