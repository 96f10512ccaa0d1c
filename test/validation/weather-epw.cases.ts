import { celsiusFromKelvin } from "../../src/units/index.js";
import { readEpw, type WeatherSeries } from "../../src/weather/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const SOURCE = "IWEC weather file NLD_Amsterdam, first row, as kept in the tests of pvlib";

/** The published figures of that row in their columns; columns this project does not read are filled with missing codes. */
const TEXT = [
  "LOCATION,AMSTERDAM,-,NLD,IWEC Data,062400,52.30,4.77,1.0,-2.0",
  "DESIGN CONDITIONS,0",
  "TYPICAL/EXTREME PERIODS,0",
  "GROUND TEMPERATURES,0",
  "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
  "COMMENTS 1,",
  "COMMENTS 2,",
  "DATA PERIODS,1,1,Data,Sunday,1/1,12/31",
  "1995,1,1,1,60,?,5.1,1.8,79,100100,0,1415,288,0,0,0,999999,999999,999999,9999,340,6.7,6,6,20.0,420,9,999999999",
].join("\n");

function first(): { series: WeatherSeries; latitude: number; longitude: number; elevation: number } {
  const reading = readEpw(TEXT);
  if (!reading.ok || reading.location === undefined) throw new Error(JSON.stringify(reading));
  return { series: reading.series, ...reading.location };
}

function row(name: string, unit: string, expected: number, got: () => number): ValidationCase {
  return {
    name,
    source: SOURCE,
    mark: "published",
    unit,
    expected,
    tolerance: 1e-9,
    toleranceReason: "decoding; rounding of the shift to kelvin only",
    got,
  };
}

export const WEATHER_EPW_VALIDATION: ValidationGroup = {
  title: "weather file",
  part: "mathematics",
  cases: [
    row("dry bulb", "°C", 5.1, () => celsiusFromKelvin(first().series.tempAir[0]!)),
    row("dew point", "°C", 1.8, () => celsiusFromKelvin(first().series.tempDewPoint[0]!)),
    row("wind speed", "m/s", 6.7, () => first().series.windSpeed[0]!),
    row("total sky cover, as a fraction", "[1]", 0.6, () => first().series.cloudCover[0]!),
    row("latitude", "deg", 52.3, () => first().latitude),
    row("longitude", "deg", 4.77, () => first().longitude),
    row("elevation", "m", -2, () => first().elevation),
    {
      ...row(
        "time of hour 1, at its end, UTC+1",
        "s",
        Date.UTC(1995, 0, 1) / 1000,
        () => first().series.time[0]!,
      ),
      source:
        "EnergyPlus, Auxiliary Programs, EPW data dictionary: hour 1 is 00:01 to 01:00, local standard time",
    },
    {
      ...row("dew point from the row's own humidity of 79 %", "°C", 1.8, () => {
        const reading = readEpw(TEXT.replace(",1.8,79,", ",99.9,79,"));
        return reading.ok ? celsiusFromKelvin(reading.series.tempDewPoint[0]!) : Number.NaN;
      }),
      tolerance: 0.15,
      toleranceReason: "humidity is given to a whole percent (0.09 K) and the dew point to a tenth (0.05 K)",
    },
  ],
};
