import type { LearningFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const learning: Phrases<LearningFindings> = {
  "learned-from": ({ readings, origins, isReset }) =>
    `Tallene for dette flyet er lært av ${readings} avlesninger (${origins.join(", ")})${isReset ? "; det som ble lært med andre trekk eller varmere, eller et annet sted, regnes som ukjent" : ""}.`,
  "air-as-measured": ({ probes }, say) =>
    `Luften rundt flyet er slik ${say.list(probes)} målte den, ikke slik været har den.`,
};
