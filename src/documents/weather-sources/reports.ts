import { z } from "zod";
import { kelvinFromCelsius } from "../../units/index.js";
import { reachOfForecastText, readForecastText } from "../../weather/index.js";
import { type Clock, epochOfMoment } from "../clock.js";
import type { Notes } from "../reading.js";
import { record } from "../record.js";
import { airCelsius, moment, type WeatherSource, words } from "./source.js";

const extreme = record({
  at_h: z.number().exactOptional(),
  time: moment.exactOptional(),
  air_c: airCelsius,
});
const shape = {
  metar: words.exactOptional(),
  taf: words.exactOptional(),
  lows: z.array(extreme).exactOptional(),
  highs: z.array(extreme).exactOptional(),
};

/** METARs, a TAF or both, with the user's own forecast lows and highs. */
export const REPORTS: WeatherSource<typeof shape> = {
  name: "metar and taf",
  shape,
  named: ["metar", "taf"],
  isForecast: false,
  path: ["weather"],
  read(section, { clock }, notes) {
    const { text, ...extremes } = textOf(section, clock, notes);
    return readForecastText(text, { reference: clock.start, until: clock.end, ...extremes });
  },
  reach(section, clock, notes) {
    const { text, ...extremes } = textOf(section, clock, notes);
    return reachOfForecastText(text, { reference: clock.start, ...extremes });
  },
};

function textOf(section: z.infer<z.ZodObject<typeof shape>>, clock: Clock, notes: Notes) {
  const extremes = (key: "lows" | "highs") =>
    (section[key] ?? []).flatMap(({ air_c, ...at }, i) => {
      const time = epochOfMoment(at, ["weather", key, i], clock, notes);
      return time === undefined ? [] : [{ time, tempAir: kelvinFromCelsius(air_c) }];
    });
  const text = [section.metar, section.taf].filter((t) => t !== undefined).join("=\n");
  return { text, lows: extremes("lows"), highs: extremes("highs") };
}
