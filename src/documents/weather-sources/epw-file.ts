import { SECONDS_OF_HOUR } from "../../units/index.js";
import { localText, readEpw } from "../../weather/index.js";
import { fileText, type WeatherSource, words } from "./source.js";

const shape = { epw_file: words.exactOptional() };

/** The days of the scenario, and one on either side, out of a file for a typical or a real year. */
export const EPW_FILE: WeatherSource<typeof shape> = {
  name: "epw_file",
  shape,
  named: ["epw_file"],
  isForecast: false,
  path: ["weather", "epw_file"],
  read({ epw_file: name = "" }, { clock, readFile }, notes) {
    const text = fileText(name, this.path, readFile, notes);
    if (text === undefined) return undefined;
    const day = 24 * SECONDS_OF_HOUR;
    const from = localText(clock.start - day, clock.zone);
    const to = localText(clock.end + day, clock.zone);
    const span = { from: from.slice(5, 10), to: to.slice(5, 10), year: Number(from.slice(0, 4)) };
    return readEpw(text, { name, ...span });
  },
};
