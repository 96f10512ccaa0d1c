import { runValidation } from "./case.js";
import { CRANKING_VALIDATION } from "./starting.cases.js";

runValidation(CRANKING_VALIDATION);
