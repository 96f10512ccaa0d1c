import type { WinterFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const winter: Phrases<WinterFindings> = {};
