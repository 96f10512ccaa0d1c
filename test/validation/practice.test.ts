import { runValidation } from "./case.js";
import { PRACTICE } from "./practice.cases.js";

runValidation(PRACTICE);
