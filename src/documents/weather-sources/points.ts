import { z } from "zod";
import { kelvinFromCelsius } from "../../units/index.js";
import { readRows } from "../../weather/index.js";
import { epochOfMoment } from "../clock.js";
import { fault } from "../reading.js";
import { record } from "../record.js";
import { airCelsius, moment, type WeatherSource } from "./source.js";

const point = record({
  at_h: z.number().exactOptional(),
  time: moment.exactOptional(),
  air_c: airCelsius,
  wind_mps: z.number().min(0).max(75).exactOptional(),
  dew_point_c: z.number().min(-110).max(45).exactOptional(),
  cloud_fraction: z.number().min(0).max(1).exactOptional(),
});
const shape = { points: z.array(point).min(1).exactOptional() };

/** [K] by which a dew point may stand above the air when both are rounded to whole degrees; it then counts as saturation. */
const ROUNDING = 0.5;

/** Weather written down by hand, taken as the rows of a file are, so that holes are treated alike. */
export const POINTS: WeatherSource<typeof shape> = {
  name: "points",
  shape,
  named: ["points"],
  isForecast: true,
  path: ["weather", "points"],
  read({ points = [] }, { clock, issued }, notes) {
    const epochs = points.map((one, i) => epochOfMoment(one, ["weather", "points", i], clock, notes));
    points.forEach(({ air_c, dew_point_c }, i) => {
      if (dew_point_c === undefined || dew_point_c <= air_c + ROUNDING) return;
      const expected = `${air_c} or less: a dew point is never above the air`;
      fault(notes, ["weather", "points", i, "dew_point_c"], expected, dew_point_c);
    });
    if (epochs.includes(undefined)) return undefined;
    const rows = points.map(({ air_c, wind_mps, dew_point_c, cloud_fraction }, i) => ({
      time: epochs[i] ?? 0,
      tempAir: kelvinFromCelsius(air_c),
      windSpeed: wind_mps ?? Number.NaN,
      tempDewPoint: dew_point_c === undefined ? Number.NaN : kelvinFromCelsius(dew_point_c),
      cloudCover: cloud_fraction ?? Number.NaN,
      place: `point ${i}`,
    }));
    return readRows(rows, { origin: "the points of the document", issued });
  },
};
