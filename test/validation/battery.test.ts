import { BATTERY_VALIDATION } from "./battery.cases.js";
import { runValidation } from "./case.js";

runValidation(BATTERY_VALIDATION);
