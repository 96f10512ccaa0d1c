import { runValidation } from "./case.js";
import { FUEL_VAPOUR_VALIDATION } from "./fuel-vapour.cases.js";

runValidation(FUEL_VAPOUR_VALIDATION);
