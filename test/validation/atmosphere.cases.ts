import {
  densityAltitude,
  densityStandard,
  geometricFromGeopotential,
  geopotentialFromGeometric,
  pressureAltitude,
  pressureOfSeaLevel,
  pressureStandard,
  temperatureStandard,
} from "../../src/properties/index.js";
import { celsiusFromKelvin, kelvinFromCelsius, METRES_OF_FOOT } from "../../src/units/index.js";
import { relative, type ValidationCase, type ValidationGroup } from "./case.js";

const ICAO =
  "ISO 2533:1975 = ICAO Doc 7488/3, table by geometric height, as in the tests of the ambiance library";
const US_1976 =
  "U.S. Standard Atmosphere 1976, table by geometric height, as in the tests of the fluids library";
const ISO_APART = "ISO 2533:1975, formula evaluated apart";
const DIGITS = "the last digit printed";

/** geometric height [m], temperature [K], pressure [Pa], density [kg/m3] with the tolerances of their printed digits */
const ICAO_ROWS = [
  [-2500, 304.406, 135205, 1.54731],
  [0, 288.15, 101325, 1.225],
  [1000, 281.651, 89876.3, 1.11166],
  [2000, 275.154, 79501.4, 1.00655],
  [11000, 216.774, 22699.9, 0.364801],
] as const;

const US_ROWS = [
  [0, 288.15, 101320, 1.225],
  [2000, 275.15, 79501, 1.0066],
  [4000, 262.17, 61660, 0.81935],
  [6000, 249.19, 47218, 0.66011],
  [8000, 236.22, 35652, 0.52579],
  [10000, 223.25, 26500, 0.41351],
] as const;

/** pressure altitude [ft], temperature [°C], pressure [hPa], density [kg/m3], density ratio [-] */
const PRESSURE_ALTITUDES = [
  [1000, 13.0188, 977.166, 1.18955, 0.97106],
  [2000, 11.0376, 942.129, 1.1549, 0.94277],
  [3000, 9.0564, 908.117, 1.12102, 0.91512],
  [5000, 5.094, 843.073, 1.05555, 0.86167],
  [8000, -0.8496, 752.624, 0.96287, 0.78602],
  [10000, -4.812, 696.817, 0.90464, 0.73848],
  [18000, -20.6616, 505.998, 0.69815, 0.56991],
  [20000, -24.624, 465.633, 0.65269, 0.53281],
] as const;

export const ATMOSPHERE_VALIDATION: ValidationGroup = {
  title: "atmosphere",
  cases: [
    ...ICAO_ROWS.flatMap((row) => geometric(ICAO, row, [0.5e-3, 0.5, 1e-5])),
    ...US_ROWS.flatMap((row) => geometric(US_1976, row, [0.006, 5, 0.6e-4])),
    {
      name: "pressure at 5000 m geometric",
      source: "fluids library, ATMOSPHERE_1976",
      mark: "computed from the published formula",
      unit: "Pa",
      expected: 54048.28614576,
      tolerance: relative(54048.28614576, 1e-6),
      toleranceReason: "gas constant 8314.32/28.9644 against 287.05287",
      got: () => pressureStandard(geopotentialFromGeometric(5000)),
    },
    {
      name: "density at 5000 m geometric",
      source: "fluids library, ATMOSPHERE_1976",
      mark: "computed from the published formula",
      unit: "kg/m3",
      expected: 0.73642842078,
      tolerance: relative(0.73642842078, 1e-6),
      toleranceReason: "gas constant 8314.32/28.9644 against 287.05287",
      got: () => densityStandard(geopotentialFromGeometric(5000)),
    },
    iso("temperature at the top of the troposphere", "K", 216.65, 1e-9, () => temperatureStandard(11000)),
    iso("pressure at the top of the troposphere", "Pa", 22632.0, 0.1, () => pressureStandard(11000)),
    iso("density at the top of the troposphere", "kg/m3", 0.363918, 0.6e-6, () => densityStandard(11000)),
    iso("geometric height of the top of the troposphere", "m", 11019, 0.5, () =>
      geometricFromGeopotential(11000),
    ),
    ...PRESSURE_ALTITUDES.flatMap(([feet, celsius, hectopascal, density, ratio]): ValidationCase[] => {
      const altitude = feet * METRES_OF_FOOT;
      const at = `at pressure altitude ${feet} ft`;
      return [
        iso(`temperature ${at}`, "°C", celsius, 0.6e-4, () =>
          celsiusFromKelvin(temperatureStandard(altitude)),
        ),
        iso(`pressure ${at}`, "hPa", hectopascal, 1e-3, () => pressureStandard(altitude) / 100),
        iso(`density ${at}`, "kg/m3", density, 0.6e-5, () => densityStandard(altitude)),
        iso(`density ratio ${at}`, "-", ratio, 0.6e-5, () => densityStandard(altitude) / densityStandard(0)),
        iso(
          `pressure altitude of ${hectopascal} hPa`,
          "ft",
          feet,
          0.05,
          () => pressureAltitude(100 * hectopascal) / METRES_OF_FOOT,
        ),
      ];
    }),
    iso("freezing level", "K", 273.15, 1e-4, () => temperatureStandard(2307.69)),
    ...(
      [
        [0, -30, -5920],
        [1000, -40, -6124],
        [3000, -20, -684],
        [5000, 20, 6712],
      ] as const
    ).map(([feet, celsius, expected]) =>
      iso(`density altitude at pressure altitude ${feet} ft, ${celsius} °C`, "ft", expected, 0.6, () => {
        const pressure = pressureStandard(feet * METRES_OF_FOOT);
        return densityAltitude(kelvinFromCelsius(celsius), pressure) / METRES_OF_FOOT;
      }),
    ),
    {
      name: "pressure at 105 m, 17.19 °C below sea-level pressure 102484.0 Pa",
      source: "tests of the psychrolib library, GetSeaLevelPressure",
      mark: "published",
      unit: "Pa",
      expected: 101226.5,
      tolerance: 1,
      toleranceReason: "the library rounds g to 9.807 and R to 287.055",
      got: () => pressureOfSeaLevel(102484, 105, kelvinFromCelsius(17.19)),
    },
  ],
};

type Row = readonly [height: number, temp: number, pressure: number, density: number];

function geometric(
  source: string,
  [height, temp, pressure, density]: Row,
  tolerances: readonly [number, number, number],
) {
  const altitude = () => geopotentialFromGeometric(height);
  const common = { source, mark: "published" as const, toleranceReason: DIGITS };
  const cases: ValidationCase[] = [
    {
      ...common,
      name: `temperature at ${height} m`,
      unit: "K",
      expected: temp,
      tolerance: tolerances[0],
      got: () => temperatureStandard(altitude()),
    },
    {
      ...common,
      name: `pressure at ${height} m`,
      unit: "Pa",
      expected: pressure,
      tolerance: tolerances[1],
      got: () => pressureStandard(altitude()),
    },
    {
      ...common,
      name: `density at ${height} m`,
      unit: "kg/m3",
      expected: density,
      tolerance: tolerances[2],
      got: () => densityStandard(altitude()),
    },
  ];
  return cases;
}

function iso(
  name: string,
  unit: string,
  expected: number,
  tolerance: number,
  got: () => number,
): ValidationCase {
  const mark = "computed from the published formula";
  return { name, source: ISO_APART, mark, unit, expected, tolerance, toleranceReason: DIGITS, got };
}
