import type { AirframeFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const airframe: Phrases<AirframeFindings> = {};
