import { celsiusFromKelvin } from "../../src/units/index.js";
import { localText, type WeatherSeries } from "../../src/weather/index.js";

/** A series as a log in the columns that hourly CSV is read from. */
export function weatherCsv({ time, tempAir, tempDewPoint, windSpeed, cloudCover }: WeatherSeries): string {
  const rows = Array.from(time, (t, i) =>
    [
      localText(t, "CET"),
      celsiusFromKelvin(tempAir[i]!).toFixed(3),
      celsiusFromKelvin(tempDewPoint[i]!).toFixed(3),
      windSpeed[i]!.toFixed(3),
      (8 * cloudCover[i]!).toFixed(3),
    ].join(","),
  );
  return ["time,air_c,dew_point_c,wind_mps,cloud_oktas", ...rows].join("\n");
}
