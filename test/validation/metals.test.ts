import { runValidation } from "./case.js";
import { METALS_VALIDATION } from "./metals.cases.js";

runValidation(METALS_VALIDATION);
