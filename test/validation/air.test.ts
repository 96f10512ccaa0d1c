import { AIR_VALIDATION } from "./air.cases.js";
import { runValidation } from "./case.js";

runValidation(AIR_VALIDATION);
