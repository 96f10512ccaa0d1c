import { runValidation } from "./case.js";
import { RADIATION_SKY_VALIDATION } from "./radiation-sky.cases.js";

runValidation(RADIATION_SKY_VALIDATION);
