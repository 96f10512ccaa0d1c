import { runValidation } from "./case.js";
import { RADIATION_VALIDATION } from "./radiation.cases.js";

runValidation(RADIATION_VALIDATION);
