import { runValidation } from "./case.js";
import { WEATHER_FORECAST_ERROR_VALIDATION } from "./weather-forecast-error.cases.js";

runValidation(WEATHER_FORECAST_ERROR_VALIDATION);
