import { runValidation } from "./case.js";
import { FUEL_VALIDATION } from "./fuel.cases.js";

runValidation(FUEL_VALIDATION);
