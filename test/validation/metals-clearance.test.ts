import { runValidation } from "./case.js";
import { CLEARANCE_VALIDATION } from "./metals-clearance.cases.js";

runValidation(CLEARANCE_VALIDATION);
