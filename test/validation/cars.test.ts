import { CARS } from "./cars.cases.js";
import { runValidation } from "./case.js";

runValidation(CARS);
