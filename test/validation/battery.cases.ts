import {
  BATTERIES,
  type BatteryKindId,
  capacityFraction,
  chargeRateLimit,
  crankingPowerFraction,
  requiredCrankingPowerRatio,
} from "../../src/properties/index.js";
import { celsiusFromFahrenheit, kelvinFromCelsius } from "../../src/units/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const TM_4210 = "US Army TM 5-4210-230-14&P-1 Table 3";
const TM_1185 = "US Army TM 5-1185 p. 98";
const CHART = "workshop chart of battery and engine power";
const TM_10_6140 = "US Army TM 10-6140-200-14 para 1-9, 6 h rate";
const ARTICLES = "battery makers' articles";
const TABLE = "table value";
const BETWEEN = "published for a temperature 2 °F beside the node used";
const COLDER_KEPT = "two sources differ at -20 °F, 20 and 25 %: the lower is kept";

export const BATTERY_VALIDATION: ValidationGroup = {
  title: "battery in the cold",
  cases: [
    cranking(TM_4210, 80, 100, 0.1, TABLE),
    cranking(TM_4210, 32, 65, 0.1, TABLE),
    cranking(TM_4210, 0, 40, 0.1, TABLE),
    cranking(TM_4210, -20, 20, 0.1, TABLE),
    cranking(TM_1185, 30, 65, 2, BETWEEN),
    cranking(TM_1185, 0, 40, 0.1, TABLE),
    cranking(CHART, 80, 100, 0.1, TABLE),
    cranking(CHART, 32, 65, 0.1, TABLE),
    cranking(CHART, 0, 40, 0.1, TABLE),
    cranking(CHART, -20, 25, 5, COLDER_KEPT),
    cranking("US Army winterization class: near zero", -40, 0, 5, "near zero"),
    ...(
      [
        [80, 100],
        [32, 155],
        [0, 210],
        [-20, 350],
      ] as const
    ).map(([f, expected]) => ({
      ...percent(`power needed to crank at ${f} °F`, CHART, expected, 0.1, TABLE, () =>
        requiredCrankingPowerRatio(fahrenheit(f)),
      ),
    })),
    capacity("lead-acid-flooded", TM_10_6140, fahrenheit(32), "32 °F", 75),
    capacity("lead-acid-flooded", TM_10_6140, fahrenheit(0), "0 °F", 40),
    capacity("lead-acid-sealed", ARTICLES, fahrenheit(0), "0 °F", 45),
    capacity("lithium-iron-phosphate", ARTICLES, kelvinFromCelsius(0), "0 °C", 80),
    capacity("lithium-iron-phosphate", ARTICLES, kelvinFromCelsius(-20), "-20 °C", 70),
    capacity("lithium-iron-phosphate", `${ARTICLES}: 70 % at 0 °F`, fahrenheit(0), "0 °F", 70, 1.5),
    lowest("lead-acid-flooded", "SAE 430132 (1943): 40 °F", 4.4),
    lowest("lithium-iron-phosphate", `${ARTICLES}: 0 °C`, 0),
  ],
};

function cranking(
  source: string,
  f: number,
  expected: number,
  tolerance: number,
  reason: string,
): ValidationCase {
  return percent(`cranking power at ${f} °F`, source, expected, tolerance, reason, () =>
    crankingPowerFraction(BATTERIES["lead-acid-flooded"], fahrenheit(f)),
  );
}

function capacity(
  id: BatteryKindId,
  source: string,
  temp: number,
  place: string,
  expected: number,
  tolerance = 0.1,
): ValidationCase {
  return percent(`capacity of ${BATTERIES[id].name} at ${place}`, source, expected, tolerance, TABLE, () =>
    capacityFraction(BATTERIES[id], temp),
  );
}

function percent(
  name: string,
  source: string,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  return {
    name,
    source,
    mark: "published",
    unit: "%",
    expected,
    tolerance,
    toleranceReason,
    got: () => 100 * got(),
  };
}

/** The coldest temperature, to 0.1 K, at which charging is allowed at all. */
function lowest(id: BatteryKindId, source: string, expected: number): ValidationCase {
  return {
    name: `coldest charge of ${BATTERIES[id].name}`,
    source,
    mark: "published",
    unit: "°C",
    expected,
    tolerance: 0.1,
    toleranceReason: "searched in steps of 0.1 K",
    got: () => {
      let tenths = -600;
      while (!(chargeRateLimit(BATTERIES[id], kelvinFromCelsius(tenths / 10)) > 0)) tenths++;
      return tenths / 10;
    },
  };
}

function fahrenheit(value: number): number {
  return kelvinFromCelsius(celsiusFromFahrenheit(value));
}
