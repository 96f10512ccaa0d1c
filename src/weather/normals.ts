import { kelvinFromCelsius } from "../units/index.js";

/** What the weather of one month is like, taken over many years. */
export interface MonthNormals {
  /** [K] mean air temperature */
  readonly tempAir: number;
  /** [K] mean of the days' warmest less coldest hour */
  readonly dailyRange: number;
  /** [K] standard deviation of the days' means around the month's */
  readonly daySd: number;
  /** [1] correlation of one day's mean with the next one's */
  readonly persistence: number;
  /** [m/s] mean at 10 m */
  readonly windSpeed: number;
  /** [0..1] mean */
  readonly cloudCover: number;
  /** [K] mean of air less dew point */
  readonly depression: number;
}

/** A place as its twelve months, January first. */
export interface PlaceNormals {
  readonly id: string;
  readonly name: string;
  /** [deg] east positive: sets the sun's time of day. */
  readonly longitude: number;
  readonly months: readonly MonthNormals[];
  readonly origin: string;
}

const INVENTED =
  "invented place, no station: numbers of the kind such a climate has, written from memory; put your own station's normals in their place";

/**
 * Invented northern places. Columns of a month: air °C, daily range K, sd of daily means K, persistence, wind m/s,
 * cloud, dew-point depression K. No published normals are given out as such here: none was at hand to copy.
 */
export const PLACES: readonly PlaceNormals[] = [
  place("ravnholt", "Ravnholt Strip, inland lake at 66.6° N", 20, [
    [-13, 7.5, 8, 0.75, 2.4, 0.65, 2.6],
    [-12, 8.5, 7.8, 0.75, 2.4, 0.6, 2.8],
    [-7, 9.5, 6, 0.7, 2.7, 0.58, 3.6],
    [-1, 9, 4.2, 0.68, 2.9, 0.6, 4.8],
    [6, 9.5, 4, 0.68, 3, 0.6, 6.5],
    [12, 10, 3.6, 0.66, 2.9, 0.6, 7],
    [15, 9.8, 3.2, 0.66, 2.7, 0.62, 6.2],
    [12, 9, 3, 0.66, 2.5, 0.65, 4.6],
    [7, 7.5, 3.4, 0.68, 2.6, 0.68, 3.2],
    [0, 5.5, 4.4, 0.7, 2.6, 0.74, 2.4],
    [-7, 5.5, 6.2, 0.72, 2.4, 0.76, 2.2],
    [-11, 6.5, 7.6, 0.74, 2.4, 0.7, 2.4],
  ]),
  place("skarvodden", "Skarvodden, open northern coast", 18, [
    [-3, 4.5, 3.8, 0.66, 7.2, 0.72, 4.2],
    [-3, 4.6, 3.7, 0.66, 6.9, 0.7, 4.2],
    [-2, 4.8, 3.3, 0.65, 6.6, 0.68, 4.2],
    [1.5, 4.8, 2.7, 0.63, 5.8, 0.68, 4.2],
    [5.5, 4.8, 2.6, 0.62, 5.2, 0.7, 4],
    [9, 4.8, 2.5, 0.6, 4.9, 0.7, 3.6],
    [12, 5, 2.5, 0.6, 4.6, 0.72, 3.2],
    [11.5, 4.8, 2.2, 0.6, 4.8, 0.72, 3.4],
    [8, 4.4, 2.5, 0.62, 5.6, 0.74, 3.8],
    [4, 4, 2.9, 0.63, 6.4, 0.74, 4],
    [0.5, 4, 3.3, 0.64, 6.8, 0.74, 4.2],
    [-2, 4.3, 3.7, 0.65, 7.1, 0.73, 4.2],
  ]),
  place("kvitrimvatn", "Kvitrimvatn, edge of the great forests at 61° N", 12, [
    [-7, 6.5, 5.8, 0.73, 2, 0.66, 2.2],
    [-6, 8.2, 5.5, 0.72, 2.1, 0.62, 2.8],
    [-1.5, 9.5, 4.2, 0.68, 2.5, 0.58, 4],
    [4, 10.5, 3.3, 0.65, 2.9, 0.56, 6],
    [10.5, 11.5, 3.5, 0.66, 2.9, 0.54, 8],
    [14.8, 11.2, 3.2, 0.65, 2.8, 0.56, 8],
    [16.8, 11, 3, 0.65, 2.6, 0.56, 7.5],
    [15, 10.2, 2.8, 0.64, 2.4, 0.58, 6],
    [10, 8.8, 3.1, 0.66, 2.4, 0.62, 4],
    [4.2, 6.5, 3.8, 0.68, 2.4, 0.68, 2.8],
    [-1.5, 5.4, 4.8, 0.71, 2.2, 0.74, 2],
    [-5.8, 6, 5.6, 0.73, 2, 0.7, 2],
  ]),
  place("tverrmoen", "Tverrmoen, high continental basin", 110, [
    [-29, 8, 7.2, 0.8, 1.4, 0.45, 3.4],
    [-25, 10.5, 7, 0.78, 1.6, 0.42, 3.6],
    [-14, 13, 6.2, 0.74, 2.2, 0.42, 4.8],
    [-2, 12.5, 4.8, 0.7, 2.8, 0.48, 7],
    [7, 12.5, 4.4, 0.68, 3, 0.52, 9],
    [14.5, 12.5, 3.8, 0.66, 2.6, 0.52, 8.5],
    [17.5, 12, 3.3, 0.66, 2.3, 0.52, 7],
    [14, 11.8, 3.4, 0.66, 2.2, 0.52, 6],
    [6, 11.5, 3.9, 0.68, 2.3, 0.54, 5],
    [-4, 9.5, 5.2, 0.71, 2.2, 0.58, 4],
    [-18, 8.5, 7, 0.76, 1.7, 0.54, 3.2],
    [-27, 7.5, 7.4, 0.79, 1.4, 0.5, 3.2],
  ]),
];

type Columns = readonly [number, number, number, number, number, number, number];

function place(id: string, name: string, longitude: number, rows: readonly Columns[]): PlaceNormals {
  const months = rows.map(([air, dailyRange, daySd, persistence, windSpeed, cloudCover, depression]) => ({
    tempAir: kelvinFromCelsius(air),
    ...{ dailyRange, daySd, persistence, windSpeed, cloudCover, depression },
  }));
  return { id, name, longitude, months, origin: INVENTED };
}
