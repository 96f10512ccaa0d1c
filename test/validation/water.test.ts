import { runValidation } from "./case.js";
import { WATER_VALIDATION } from "./water.cases.js";

runValidation(WATER_VALIDATION);
