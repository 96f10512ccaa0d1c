export { basePlanDocument } from "./base-plan-document.js";
export { type ReadBase, type ReadBaseAircraft, readBaseDocument } from "./base-reading.js";
export { type AircraftNow, baseDocumentOf } from "./from-set-up.js";
