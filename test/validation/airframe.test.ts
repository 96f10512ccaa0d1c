import { AIRFRAME_VALIDATION } from "./airframe.cases.js";
import { runValidation } from "./case.js";

runValidation(AIRFRAME_VALIDATION);
