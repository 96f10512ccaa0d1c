import { runValidation } from "./case.js";
import { WEATHER_REPORTS_VALIDATION } from "./weather-reports.cases.js";

runValidation(WEATHER_REPORTS_VALIDATION);
