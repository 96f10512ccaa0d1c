import { runValidation } from "./case.js";
import { CONVECTION_VALIDATION } from "./convection.cases.js";

runValidation(CONVECTION_VALIDATION);
