import { runValidation } from "./case.js";
import { OIL_VISCOSITY_INDEX_VALIDATION } from "./oil-viscosity-index.cases.js";

runValidation(OIL_VISCOSITY_INDEX_VALIDATION);
