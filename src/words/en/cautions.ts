import type { CautionsFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const cautions: Phrases<CautionsFindings> = {};
