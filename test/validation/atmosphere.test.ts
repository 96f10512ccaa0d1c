import { ATMOSPHERE_VALIDATION } from "./atmosphere.cases.js";
import { runValidation } from "./case.js";

runValidation(ATMOSPHERE_VALIDATION);
