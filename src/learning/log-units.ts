import { celsiusFromFahrenheit, kelvinFromCelsius } from "../units/index.js";
import type { TemperatureUnit } from "./log-options.js";

/** Degree signs as files have them, with the replacement character of a lost one. */
const DEGREE = "(?:°|º|˚|\\ufffd|deg(?:rees)?\\.?)";
const LETTER = "(c|f|celsius|fahrenheit)";

const IN_NAME = [
  new RegExp(`[([{]\\s*[^a-z0-9]{0,2}${DEGREE}?\\s*${LETTER}\\s*[)\\]}]`, "i"),
  new RegExp(`${DEGREE}\\s*${LETTER}(?![a-z])`, "i"),
  // A letter after a space alone may be a probe's: "probe C".
  new RegExp(`(?:[_.,:;/-]\\s*|temp(?:erature)?\\.?\\s*)${LETTER}\\s*$`, "i"),
  /(?:^|[^a-z])(celsius|fahrenheit)(?:$|[^a-z])/i,
  /[a-z](C|F)$/,
];
const ALONE = new RegExp(`^\\s*[([{]?\\s*[^a-z0-9]{0,2}${DEGREE}?\\s*${LETTER}\\s*[)\\]}]?\\s*$`, "i");
const SIGNS: Readonly<Record<string, string>> = { "℃": "°C", "℉": "°F" };

/** Unit that a column's name ends with or has in brackets: "oil_c", "Oil (°F)", "TempC". */
export function unitOfName(name: string): TemperatureUnit | undefined {
  const text = name.replace(/[℃℉]/g, (sign) => SIGNS[sign]);
  for (const pattern of IN_NAME) {
    const letter = pattern.exec(text)?.[1];
    if (letter !== undefined) return letter[0].toLowerCase() as TemperatureUnit;
  }
  return undefined;
}

/** Unit in a cell that holds nothing else, as in a row of units. */
export function unitOfCell(cell: string): TemperatureUnit | undefined {
  const letter = ALONE.exec(cell.replace(/[℃℉]/g, (sign) => SIGNS[sign]))?.[1];
  return letter === undefined ? undefined : (letter[0].toLowerCase() as TemperatureUnit);
}

export function celsiusOf(value: number, unit: TemperatureUnit): number {
  return unit === "c" ? value : celsiusFromFahrenheit(value);
}

/** [K] */
export function kelvinOf(value: number, unit: TemperatureUnit): number {
  return kelvinFromCelsius(celsiusOf(value, unit));
}
