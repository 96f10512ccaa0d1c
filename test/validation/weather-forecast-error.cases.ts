import { errorSd, FORECAST_ERROR } from "../../src/weather/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const BOPTEST = "BOPTEST, IBPSA Project 1, forecast/forecast_uncertainty_params.json, temperature, high";
const ANNEX3 = "ICAO Annex 3, Attachment B (an edition in force before 2010)";

/** K0, F and K of the published file: e(0) ~ N(0, K0), e(h + 1) ~ N(F e(h), K), hourly. */
const PUBLISHED = { K0: 1.5, F: 0.95, K: 0.7 };

/** sd after whole hours of the published recursion, run as it stands. */
function publishedSd(hours: number): number {
  let variance = PUBLISHED.K0 ** 2;
  for (let h = 0; h < hours; h++) variance = PUBLISHED.F ** 2 * variance + PUBLISHED.K ** 2;
  return Math.sqrt(variance);
}

const AIR = FORECAST_ERROR.tempAir;

function airCase(hours: number): ValidationCase {
  return {
    name: `sd of the air temperature error after ${hours} h`,
    source: BOPTEST,
    mark: "computed from the published formula",
    unit: "K",
    expected: publishedSd(hours),
    tolerance: 1e-9,
    toleranceReason: "the same process in continuous time, so equal at whole hours",
    got: () => errorSd(AIR, hours * 3600),
  };
}

/** A deviation that a normal error of sd 1 stays within in the given share of cases (normal tables). */
const WITHIN_70_PERCENT = 1.0364;
const WITHIN_80_PERCENT = 1.2816;

export const WEATHER_FORECAST_ERROR_VALIDATION: ValidationGroup = {
  title: "forecast error",
  part: "physics",
  cases: [
    ...[3, 12, 48].map(airCase),
    {
      name: "wind error at 5 m/s that 80 % of cases stay within, long lead",
      source: ANNEX3,
      mark: "published",
      unit: "m/s",
      expected: 5 * 0.514444,
      tolerance: 0.25,
      toleranceReason: "a wish for all winds, carried over to one wind speed; log-sd rounded to 0.4",
      isCalibration: true,
      got: () => 5 * FORECAST_ERROR.windSpeed.sdLong * WITHIN_80_PERCENT,
    },
    {
      name: "cloud cover error that 70 % of cases stay within, long lead",
      source: ANNEX3,
      mark: "published",
      unit: "[1]",
      expected: 2 / 8,
      tolerance: 0.005,
      toleranceReason: "sd rounded to two figures",
      isCalibration: true,
      got: () => FORECAST_ERROR.cloudCover.sdLong * WITHIN_70_PERCENT,
    },
  ],
};
