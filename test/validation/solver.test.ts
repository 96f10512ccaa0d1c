import { runValidation } from "./case.js";
import { HEAT_NETWORKS, STIFF_PROBLEMS } from "./solver.cases.js";

runValidation(STIFF_PROBLEMS);
runValidation(HEAT_NETWORKS);
