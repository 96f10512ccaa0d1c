import type { WeatherFindings } from "../../findings/index.js";
import type { Phrases, Say } from "../phrases.js";

const QUANTITY = {
  tempAir: "air temperature",
  windSpeed: "wind",
  tempDewPoint: "dew point",
  cloudCover: "cloud",
} as const;

function ahead(quantity: "windSpeed" | "cloudCover", mps: number, say: Say): string {
  if (quantity === "cloudCover") return "sky taken as clear";
  return `wind taken as the larger of the last known and ${say.wind(mps)}`;
}

const WHEN = {
  "no-forecast": "no forecast",
  "after-taf": "after the TAF ends",
  "until-named": "until the TAF names a value",
} as const;

export const weather: Phrases<WeatherFindings> = {
  "weather-assumed": ({ finding, from, to }, say) =>
    `Weather${from === undefined ? "" : ` ${from} to ${to}`}: ${say.finding(finding)}.`,
  "weather-file-assumed": ({ path, finding }, say) => `Weather ${path}: ${say.finding(finding)}.`,
  "weather-file-gaps": ({ path, gaps }) => `Weather ${path}: ${gaps} gaps in all.`,
  "wind-assumed": ({ wind_mps }, say) => `wind taken as ${say.wind(wind_mps)}: source gives none`,
  "sky-assumed-clear": () => "sky taken as clear: source gives no cloud",
  "dew-point-assumed": ({ below_k, by }, say) =>
    `dew point taken ${say.difference(below_k, 0)} below the air: ${by === "file" ? "source gives no humidity" : "reports give none"}`,
  "rows-missing": ({ quantity, rows, isHeld }) =>
    `${QUANTITY[quantity]} missing in rows (${rows}): ${isHeld ? "nearest value held" : "bridged by a straight line"}`,
  "no-reading-for": ({ hours }, say) =>
    `no reading for ${say.number(hours, 1)} h: all values bridged by a straight line`,
  "reports-missing": ({ quantity, reports, instead, wind_mps }, say) =>
    `${QUANTITY[quantity]} missing in reports (${reports}): ${
      {
        bridged: "bridged from the neighbouring reports",
        taf: "as ahead: taken from the TAF",
        assumed: `as ahead: ${ahead(quantity, wind_mps, say)}`,
      }[instead]
    }`,
  "dew-points-bridged": () =>
    "dew point missing in some reports: depression bridged from the neighbouring reports",
  "dew-point-kept": ({ below_k }, say) =>
    `dew point kept ${say.difference(below_k)} below the air, as in the last report: sources give none ahead`,
  "change-taken-throughout": ({ group }) =>
    `${group}: taken to last throughout where it brings more wind or less cloud, since that cools more`,
  "ahead-assumed": ({ quantity, when, wind_mps }, say) => `${WHEN[when]}: ${ahead(quantity, wind_mps, say)}`,
  "before-taf": () => "before the TAF begins: the cooler of the last reading and its beginning",
  "air-held-at-low": () =>
    "air held at the first low from the beginning: no reading is given, and the low is the cold side",
  "taken-as-one-place": ({ readings, forecast }) =>
    `readings of ${readings} and forecast of ${forecast} taken as one place`,
  "air-held-at-reading": ({ colder_k, low_at }, say) =>
    `air held at the last reading: it is already ${say.difference(colder_k)} colder than the low forecast for ${low_at}`,
  "low-assumed": ({ fall_k, from, at }, say) =>
    `low of the night taken ${say.difference(fall_k)} below ${from}, at ${at}: only the high that follows is forecast`,
  "air-taken-to-cool": ({ fall_k, hours }, say) =>
    `no temperature forecast: air taken to cool with the square root of time by ${say.difference(fall_k)} in ${hours} h and to stay there, without the warming of the day`,
  "low-held": () =>
    "no temperature forecast after the last low: the low is held, without the warming of the day",
  "air-by-cosines": () =>
    "air between the reading and the lows and highs follows half cosines: sources give only the points",
  "value-held": ({ end }) =>
    `held: the time lies ${end === "first" ? "before the first" : "after the last"} value of the source`,
  "years-moved": ({ from, to }) =>
    `rows of ${from} placed in ${to}: the file is made of months of different years, or another year was asked for`,
};
