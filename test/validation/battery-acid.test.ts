import { ACID_VALIDATION } from "./battery-acid.cases.js";
import { runValidation } from "./case.js";

runValidation(ACID_VALIDATION);
