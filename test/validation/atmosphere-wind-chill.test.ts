import { ATMOSPHERE_WIND_CHILL_VALIDATION } from "./atmosphere-wind-chill.cases.js";
import { runValidation } from "./case.js";

runValidation(ATMOSPHERE_WIND_CHILL_VALIDATION);
