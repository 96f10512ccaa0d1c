export {
  ASSUMED_CLOUD,
  ASSUMED_DEPRESSION,
  ASSUMED_WIND,
  CARRY_LIMIT,
  GAP_LIMIT,
  NIGHT_COOLING,
  nightCooling,
} from "./cautious.js";
export { combineForecast, type ForecastInput } from "./combine.js";
export { type CsvOptions, readHourlyCsv } from "./csv.js";
export { CSV_COLUMNS, type CsvColumn, type CsvQuantity, numberOfCell } from "./csv-columns.js";
export { type CsvFault, type CsvRow, type CsvTable, readCsvTable } from "./csv-table.js";
export { type EpwOptions, type EpwReading, readEpw } from "./epw.js";
export type { EpwLocation } from "./epw-header.js";
export {
  type ErrorGrowth,
  errorModelOf,
  errorSd,
  FORECAST_ERROR,
  type ForecastErrorPaths,
  forecastErrorDimensions,
  OBSERVATION_ERROR,
  PERSISTENCE_ERROR,
  sampleForecastErrors,
  type WeatherErrorModel,
} from "./forecast-error.js";
export { type ForecastTextOptions, reachOfForecastText, readForecastText } from "./forecast-text.js";
export { createLocalClock } from "./local-clock.js";
export { type MadeYearRequest, madeYear } from "./made-year.js";
export { type MetarReport, readMetar } from "./metar.js";
export { type MonthNormals, PLACES, type PlaceNormals } from "./normals.js";
export { normalsOf } from "./normals-of.js";
export { perturbedSeries, WIND_OF_CALM } from "./perturb.js";
export type { ReportReading } from "./reports.js";
export { cutSeries, HOLD_HOURS, type WeatherMoment, weatherAt } from "./resample.js";
export { readRows } from "./row-order.js";
export type { WeatherAssumption, WeatherIssue, WeatherReading, WeatherSeries } from "./series.js";
export {
  createTemplateSource,
  type WeatherRequest,
  type WeatherSource,
  type WeatherTextReading,
  type WeatherTransport,
} from "./source.js";
export { readTaf } from "./taf.js";
export type { TafChange, TafConditions, TafReport, TempPoint } from "./taf-report.js";
export {
  epochFromLocal,
  isTimeZone,
  type LocalTimeReading,
  localText,
  monthsLater,
  utcText,
} from "./time.js";
