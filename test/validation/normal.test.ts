import { runValidation } from "./case.js";
import { NORMAL } from "./normal.cases.js";

runValidation(NORMAL);
