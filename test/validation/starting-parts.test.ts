import { runValidation } from "./case.js";
import { STARTING_PARTS_VALIDATION } from "./starting-parts.cases.js";

runValidation(STARTING_PARTS_VALIDATION);
