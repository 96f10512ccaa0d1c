import type { StartingFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const starting: Phrases<StartingFindings> = {};
