import { readHourlyCsv } from "../../weather/index.js";
import { fileText, type WeatherSource, words } from "./source.js";

const shape = { csv_file: words.exactOptional() };

/** An hourly log or forecast in a file. */
export const CSV_FILE: WeatherSource<typeof shape> = {
  name: "csv_file",
  shape,
  named: ["csv_file"],
  isForecast: true,
  path: ["weather", "csv_file"],
  read({ csv_file: name = "" }, { clock, issued, readFile }, notes) {
    const text = fileText(name, this.path, readFile, notes);
    if (text === undefined) return undefined;
    return readHourlyCsv(text, { name, zone: clock.zone, ...(issued === undefined ? {} : { issued }) });
  },
};
