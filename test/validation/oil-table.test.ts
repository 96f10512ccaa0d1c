import { runValidation } from "./case.js";
import { OIL_TABLE_VALIDATION } from "./oil-table.cases.js";

runValidation(OIL_TABLE_VALIDATION);
