import { runValidation } from "./case.js";
import { NIST_AVERAGE_VALIDATION } from "./nist-average.cases.js";

runValidation(NIST_AVERAGE_VALIDATION);
