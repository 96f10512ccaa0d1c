import { runValidation } from "./case.js";
import { NIST_LOWER_VALIDATION } from "./nist-lower.cases.js";

runValidation(NIST_LOWER_VALIDATION);
