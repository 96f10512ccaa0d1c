import { runValidation } from "./case.js";
import { CARS } from "./cars.cases.js";

runValidation(CARS);
