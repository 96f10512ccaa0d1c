import { runValidation } from "./case.js";
import { NIST_HIGHER_VALIDATION } from "./nist-higher.cases.js";

runValidation(NIST_HIGHER_VALIDATION);
