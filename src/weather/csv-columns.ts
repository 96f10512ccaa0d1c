import {
  celsiusFromFahrenheit,
  kelvinFromCelsius,
  METRES_PER_SECOND_OF_KNOT,
  SECONDS_OF_HOUR,
} from "../units/index.js";

export type CsvQuantity = "tempAir" | "windSpeed" | "tempDewPoint" | "relativeHumidity" | "cloudCover";

/** A column an hourly CSV may have: the unit is in its name. */
export interface CsvColumn {
  readonly quantity: CsvQuantity;
  /** From the unit of the column to SI (humidity to a fraction). */
  readonly toSi: (value: number) => number;
  /** Smallest and largest believable value in the unit of the column. */
  readonly range: readonly [number, number];
}

const kelvinFromFahrenheit = (fahrenheit: number) => kelvinFromCelsius(celsiusFromFahrenheit(fahrenheit));

/** [s] since epoch as local or UTC text. */
export const TIME_COLUMN = "time";

/** Ranges hold every value on record in the cold with room to spare (project judgement): beyond them the file is wrong. */
export const CSV_COLUMNS: Readonly<Record<string, CsvColumn>> = {
  air_c: { quantity: "tempAir", toSi: kelvinFromCelsius, range: [-75, 60] },
  air_f: { quantity: "tempAir", toSi: kelvinFromFahrenheit, range: [-103, 140] },
  wind_mps: { quantity: "windSpeed", toSi: (value) => value, range: [0, 60] },
  wind_kt: { quantity: "windSpeed", toSi: (value) => value * METRES_PER_SECOND_OF_KNOT, range: [0, 116] },
  wind_kmh: { quantity: "windSpeed", toSi: (value) => (value * 1000) / SECONDS_OF_HOUR, range: [0, 216] },
  dew_point_c: { quantity: "tempDewPoint", toSi: kelvinFromCelsius, range: [-80, 45] },
  dew_point_f: { quantity: "tempDewPoint", toSi: kelvinFromFahrenheit, range: [-112, 113] },
  relative_humidity_percent: {
    quantity: "relativeHumidity",
    toSi: (value) => Math.min(value, 100) / 100,
    range: [1, 110],
  },
  cloud_fraction: { quantity: "cloudCover", toSi: (value) => value, range: [0, 1] },
  cloud_tenths: { quantity: "cloudCover", toSi: (value) => value / 10, range: [0, 10] },
  cloud_oktas: { quantity: "cloudCover", toSi: (value) => value / 8, range: [0, 8] },
};

/** Number of a cell with a point or a comma as its decimal sign, ASCII or typographic minus; undefined if it is none. */
export function numberOfCell(cell: string): number | undefined {
  const text = cell.trim();
  if (!NUMBER.test(text)) return undefined;
  const plain = text.includes(",") ? text.replace(",", ".") : text;
  return Number(plain.startsWith("\u2212") ? `-${plain.slice(1)}` : plain);
}

const NUMBER = /^[+\-\u2212]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
