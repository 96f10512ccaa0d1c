import { runValidation } from "./case.js";
import { FIN_STACK_VALIDATION } from "./fin-stack.cases.js";

runValidation(FIN_STACK_VALIDATION);
