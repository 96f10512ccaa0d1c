export { ASSUMED_CLOUD, ASSUMED_DEPRESSION, ASSUMED_WIND, GAP_LIMIT } from "./cautious.js";
export { readHourlyCsv } from "./csv.js";
export { numberOfCell } from "./csv-columns.js";
export { type CsvRow, readCsvTable } from "./csv-table.js";
export { readEpw } from "./epw.js";
export {
  errorSd,
  FORECAST_ERROR,
  type ForecastErrorPaths,
  forecastErrorDimensions,
  sampleForecastErrors,
} from "./forecast-error.js";
export { reachOfForecastText, readForecastText } from "./forecast-text.js";
export { createLocalClock } from "./local-clock.js";
export { madeYear } from "./made-year.js";
export { PLACES, type PlaceNormals } from "./normals.js";
export { perturbedSeries, WIND_OF_CALM } from "./perturb.js";
export { cutSeries, HOLD_HOURS, type WeatherMoment, weatherAt } from "./resample.js";
export { readRows } from "./row-order.js";
export type { WeatherIssue, WeatherReading, WeatherSeries } from "./series.js";
export {
  epochFromLocal,
  isTimeZone,
  type LocalTimeReading,
  localText,
  monthsLater,
  utcText,
} from "./time.js";
