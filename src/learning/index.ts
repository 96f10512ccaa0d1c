export type { LogFinding, ProbePlace, ProbeSeries, TemperatureLog } from "./log.js";
