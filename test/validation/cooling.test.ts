import { runValidation } from "./case.js";
import { COOLING } from "./cooling.cases.js";

runValidation(COOLING);
