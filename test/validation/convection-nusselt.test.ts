import { runValidation } from "./case.js";
import { CONVECTION_NUSSELT_VALIDATION } from "./convection-nusselt.cases.js";

runValidation(CONVECTION_NUSSELT_VALIDATION);
