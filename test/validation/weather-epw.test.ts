import { runValidation } from "./case.js";
import { WEATHER_EPW_VALIDATION } from "./weather-epw.cases.js";

runValidation(WEATHER_EPW_VALIDATION);
