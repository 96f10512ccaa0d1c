import { runValidation } from "./case.js";
import { MOIST_AIR_VALIDATION } from "./psychrometrics-moist-air.cases.js";

runValidation(MOIST_AIR_VALIDATION);
