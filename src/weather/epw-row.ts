import { kelvinFromCelsius, SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import type { WeatherRow } from "./assemble.js";
import type { EpwRow } from "./epw-dates.js";
import { numberOf } from "./epw-header.js";
import { tempDewPointFromRelativeHumidity } from "./humidity.js";
import type { WeatherIssue } from "./series.js";

/** How the clock of a file is to be read. */
export interface EpwClock {
  /** [h] local standard time minus UTC. */
  readonly zoneHours: number;
  readonly rowsPerHour: number;
}

/** One row in SI units; missing codes become NaN, values out of the format's range become issues. */
export function weatherRow(row: EpwRow, year: number, clock: EpwClock, issues: WeatherIssue[]): WeatherRow {
  const value = (column: number, what: string, low: number, high: number, missing: number): number => {
    const cell = row.cells[column - 1]!;
    const number = cell === "" ? missing : numberOf(cell);
    if (number >= low && number <= high) return number;
    if (number === missing) return Number.NaN;
    issues.push({
      place: `${row.place}, column ${column} (${what})`,
      expected: `${low} to ${high}${Number.isNaN(missing) ? "" : `, or ${missing} for missing`}`,
      received: cell || "nothing",
    });
    return Number.NaN;
  };
  const hour = value(4, "hour", 1, 24, Number.NaN);
  const minute = value(5, "minute", 0, 60, Number.NaN);
  const air = value(7, "dry bulb °C", -70, 70, 99.9);
  const dewPoint = value(8, "dew point °C", -80, 70, 99.9);
  const humidity = value(9, "relative humidity %", 0, 110, 999);
  const wind = value(22, "wind speed m/s", 0, 40, 999);
  const sky = value(23, "total sky cover, tenths", 0, 10, 99);
  // With one row an hour the minute column is 0 or 60 by habit of the maker; the hour alone says when.
  const seconds =
    clock.rowsPerHour === 1
      ? hour * SECONDS_OF_HOUR
      : (hour - 1) * SECONDS_OF_HOUR + minute * SECONDS_OF_MINUTE;
  const tempAir = kelvinFromCelsius(air);
  const fromHumidity =
    Number.isNaN(air) || !(humidity > 0)
      ? Number.NaN
      : tempDewPointFromRelativeHumidity(Math.min(humidity, 100) / 100, tempAir);
  return {
    time: Date.UTC(year, row.month - 1, row.day) / 1000 + seconds - clock.zoneHours * SECONDS_OF_HOUR,
    tempAir,
    windSpeed: wind,
    tempDewPoint: Number.isNaN(dewPoint) ? fromHumidity : kelvinFromCelsius(dewPoint),
    cloudCover: sky / 10,
    place: row.place,
  };
}
