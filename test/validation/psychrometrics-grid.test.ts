import { runValidation } from "./case.js";
import { SATURATION_GRID_VALIDATION } from "./psychrometrics-grid.cases.js";

runValidation(SATURATION_GRID_VALIDATION);
