import type { SwitchingFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const switching: Phrases<SwitchingFindings> = {};
