import { runValidation } from "./case.js";
import { OIL_VALIDATION } from "./oil.cases.js";

runValidation(OIL_VALIDATION);
