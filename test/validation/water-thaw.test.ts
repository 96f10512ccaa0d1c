import { runValidation } from "./case.js";
import { THAW_VALIDATION } from "./water-thaw.cases.js";

runValidation(THAW_VALIDATION);
