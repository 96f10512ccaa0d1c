import { type IMetar, parseMetar, RemarkType } from "metar-taf-parser";
import { kelvinFromCelsius } from "../units/index.js";
import { cloudOfGroups, isBelievableAir, temperatureOfGroups, windOfGroups } from "./groups.js";
import { type RawReport, reportText } from "./reports.js";
import type { WeatherIssue } from "./series.js";
import { epochNear, requireEpoch } from "./time.js";

/** One METAR or SPECI. A value the report does not give is undefined. */
export interface MetarReport {
  readonly station: string;
  /** [s] since epoch. */
  readonly time: number;
  readonly corrected: boolean;
  readonly automatic: boolean;
  /** [K] to a tenth where the remarks give it, else to a whole degree Celsius. */
  readonly tempAir: number | undefined;
  /** [K] over liquid water at all temperatures (FMH-1 1995, 10.5.1). */
  readonly tempDewPoint: number | undefined;
  /** [m/s] ten-minute mean. */
  readonly windSpeed: number | undefined;
  /** [0..1] */
  readonly cloudCover: number | undefined;
  /** [K] highest and lowest of the past 6 h and 24 h where the remarks give them (FMH-1 1995, 12.7.2 e-g). */
  readonly tempMax6h: number | undefined;
  readonly tempMin6h: number | undefined;
  readonly tempMax24h: number | undefined;
  readonly tempMin24h: number | undefined;
  readonly text: string;
}

/** Groups from which the present weather ends and a trend or remarks begin. */
const BODY_END = new Set(["RMK", "NOSIG", "BECMG", "TEMPO", "INTER"]);

/**
 * The METARs and SPECIs among raw reports, oldest first; faults go to `issues`. `reference` [s since epoch] lies near the
 * reports and settles month and year. Of two of one station and time the correction, or else the later, stands.
 */
export function metarsOf(
  reports: readonly RawReport[],
  reference: number,
  issues: WeatherIssue[],
): MetarReport[] {
  requireEpoch("reference", reference);
  const byStationAndTime = new Map<string, MetarReport>();
  for (const report of reports) {
    const decoded = report.kind === "TAF" ? undefined : decode(report, reference, issues);
    if (decoded === undefined) continue;
    const key = `${decoded.station} ${decoded.time}`;
    if (byStationAndTime.get(key)?.corrected && !decoded.corrected) continue;
    byStationAndTime.set(key, decoded);
  }
  return [...byStationAndTime.values()].sort((a, b) => a.time - b.time);
}

function decode(raw: RawReport, reference: number, issues: WeatherIssue[]): MetarReport | undefined {
  const text = reportText(raw);
  const name = `${raw.kind} ${raw.station} ${raw.timeGroup}`;
  const [day, hour, minute] = [0, 2, 4].map((at) => Number(raw.timeGroup.slice(at, at + 2)));
  const time = hour! < 24 ? epochNear(day!, hour!, minute!, reference) : undefined;
  if (time === undefined) {
    issues.push({ place: name, expected: "day, hour and minute such as 092350Z", received: raw.timeGroup });
    return undefined;
  }
  if (raw.groups.includes("NIL")) {
    issues.push({ place: name, expected: "a report", received: "NIL" });
    return undefined;
  }
  const end = raw.groups.findIndex((group) => BODY_END.has(group));
  const body = end < 0 ? raw.groups : raw.groups.slice(0, end);
  const temperature = temperatureOfGroups(body);
  if ("place" in temperature) {
    issues.push({ ...temperature, place: `${name}, ${temperature.place}` });
    return undefined;
  }
  const remarks = remarksOf(text, reference);
  const tenths = preferredTenths(temperature, remarks, name, issues);
  const tempAir = kelvin(tenths.celsius);
  if (tempAir !== undefined && !isBelievableAir(tempAir)) {
    issues.push({ place: name, expected: "air from -75 to 60 °C", received: `${tenths.celsius} °C` });
    return undefined;
  }
  return {
    station: raw.station,
    time,
    corrected: raw.corrected,
    automatic: body.includes("AUTO"),
    tempAir,
    tempDewPoint: believableDewPoint(tenths, name, issues),
    windSpeed: windOfGroups(body),
    cloudCover: cloudOfGroups(body),
    tempMax6h: kelvin(remarks.max6h),
    tempMin6h: kelvin(remarks.min6h),
    tempMax24h: kelvin(remarks.max24h),
    tempMin24h: kelvin(remarks.min24h),
    text,
  };
}

interface TemperatureRemarks {
  celsius?: number;
  dewPointCelsius?: number;
  max6h?: number;
  min6h?: number;
  max24h?: number;
  min24h?: number;
}

function remarksOf(text: string, reference: number): TemperatureRemarks {
  const found: TemperatureRemarks = {};
  for (const remark of parsed(text, reference)?.remarks ?? []) {
    if (remark.type === RemarkType.HourlyTemperatureDewPoint) {
      found.celsius = remark.temperature;
      if (remark.dewPoint !== undefined) found.dewPointCelsius = remark.dewPoint;
    } else if (remark.type === RemarkType.HourlyMaximumTemperature) found.max6h = remark.max;
    else if (remark.type === RemarkType.HourlyMinimumTemperature) found.min6h = remark.min;
    else if (remark.type === RemarkType.HourlyMaximumMinimumTemperature) {
      found.max24h = remark.max;
      found.min24h = remark.min;
    }
  }
  return found;
}

function parsed(text: string, reference: number): IMetar | undefined {
  try {
    return parseMetar(text, { issued: new Date(reference * 1000) });
  } catch {
    // The groups read here are already checked; a remark the library cannot take costs only the tenths.
    return undefined;
  }
}

/** The tenths of the remarks, unless they do not round to the whole degrees of the body: then one of the two is garbled. */
function preferredTenths(
  body: { celsius: number | undefined; dewPointCelsius: number | undefined },
  remarks: TemperatureRemarks,
  name: string,
  issues: WeatherIssue[],
): { celsius: number | undefined; dewPointCelsius: number | undefined } {
  const agree = (whole: number | undefined, tenths: number | undefined) =>
    whole === undefined || tenths === undefined || Math.abs(whole - tenths) <= 0.5 + 1e-9;
  if (!agree(body.celsius, remarks.celsius) || !agree(body.dewPointCelsius, remarks.dewPointCelsius)) {
    issues.push({
      place: `${name}, remark T`,
      expected: `tenths that round to ${body.celsius ?? "//"}/${body.dewPointCelsius ?? "//"} °C (whole degrees used)`,
      received: `${remarks.celsius}/${remarks.dewPointCelsius ?? "//"} °C`,
    });
    return body;
  }
  return {
    celsius: remarks.celsius ?? body.celsius,
    dewPointCelsius: remarks.dewPointCelsius ?? body.dewPointCelsius,
  };
}

function believableDewPoint(
  { celsius, dewPointCelsius }: { celsius: number | undefined; dewPointCelsius: number | undefined },
  name: string,
  issues: WeatherIssue[],
): number | undefined {
  // Half a degree above the air can come of rounding the two apart.
  if (celsius === undefined || dewPointCelsius === undefined || dewPointCelsius <= celsius + 0.5) {
    return kelvin(dewPointCelsius);
  }
  issues.push({
    place: `${name}, dew point`,
    expected: `at most the air temperature, ${celsius} °C`,
    received: `${dewPointCelsius} °C, not used`,
  });
  return undefined;
}

function kelvin(celsius: number | undefined): number | undefined {
  return celsius === undefined ? undefined : kelvinFromCelsius(celsius);
}
