import { runValidation } from "./case.js";
import { PSYCHROMETRICS_VALIDATION } from "./psychrometrics.cases.js";

runValidation(PSYCHROMETRICS_VALIDATION);
