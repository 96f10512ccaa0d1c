import { finding } from "../findings/index.js";
import { celsiusFromKelvin } from "../units/index.js";
import { ASSUMED_WIND, type WeatherSeries } from "../weather/index.js";
import { kelvinOf } from "./airframe-reading.js";
import { fault, type Notes } from "./reading.js";
import { rounded } from "./result-header.js";

/** [K] the airframe's models are made for. */
const COLDEST = kelvinOf(-60);
const WARMEST = kelvinOf(50);

/**
 * [m/s] at 10 m where no wind is known: an engine loses more heat in the wind assumed for it, but a wing in light wind
 * falls further below the air and frosts sooner. Project judgement.
 */
const LIGHT_WIND = 1;

/**
 * The weather for a wing: wind that no source gives becomes light wind, out loud, and air the models are not made for is
 * refused. Drier air than a dew point of -60 °C counts as that: neither gives frost. What was assumed stands in
 * `notes`, no more in the series.
 */
export function nightWeather(series: WeatherSeries, notes: Notes): WeatherSeries {
  const tempAir = series.tempAir.map((temp) => rounded(temp, 9));
  const beyond = tempAir.find((temp) => !(temp >= COLDEST && temp <= WARMEST));
  if (beyond !== undefined) {
    fault(
      notes,
      ["weather"],
      "air of -60 to 50 °C, which this is made for",
      `${celsiusFromKelvin(beyond).toFixed(1)} °C`,
    );
  }
  return {
    ...series,
    tempAir,
    windSpeed: withLightWind(series, notes),
    tempDewPoint: series.tempDewPoint.map((dewPoint, k) => Math.min(tempAir[k], Math.max(COLDEST, dewPoint))),
    assumptions: [],
  };
}

function withLightWind({ time, windSpeed, assumptions }: WeatherSeries, notes: Notes): Float64Array {
  const { assumptions: said } = notes;
  const assumed = assumptions.filter(({ quantity }) => quantity === "windSpeed");
  const isUnknown = (k: number) =>
    windSpeed[k] === ASSUMED_WIND && assumed.some(({ from, to }) => time[k] >= from && time[k] <= to);
  const taken = windSpeed.map((wind, k) => (isUnknown(k) ? LIGHT_WIND : wind));
  const wrong = said.findIndex(
    (one) =>
      typeof one !== "string" && one.code === "weather-assumed" && one.values.finding.code === "wind-assumed",
  );
  if (wrong >= 0) said.splice(wrong, 1);
  if (taken.some((wind, k) => wind !== windSpeed[k])) {
    said.push(finding("light-wind-taken", { wind_mps: LIGHT_WIND, engine_wind_mps: ASSUMED_WIND }));
  }
  if (assumed.length > (wrong >= 0 ? 1 : 0)) {
    said.push(finding("lull-frosts", {}));
  }
  return taken;
}
