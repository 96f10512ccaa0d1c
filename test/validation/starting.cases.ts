import { type Battery, installationById } from "../../src/aircraft/index.js";
import { COLD_CRANKING_TEST, dynamicViscosityOil } from "../../src/properties/index.js";
import { batterySource, crankingCharge } from "../../src/starting/battery-source.js";
import { TEMP_REMOVE_BATTERY } from "../../src/starting/battery-state.js";
import { TRY_DURATION } from "../../src/starting/cranking.js";
import {
  CRANKING_REFERENCE_OIL,
  CRANKING_REFERENCE_SPEED,
  compressionPressure,
  crankingDrag,
  crankingTorque,
  FILM_EXPONENT,
} from "../../src/starting/cranking-drag.js";
import { tempBatteryLeast, tempChargeLeast } from "../../src/starting/index.js";
import { celsiusFromFahrenheit, celsiusFromKelvin, kelvinFromCelsius } from "../../src/units/index.js";
import type { Mark, ValidationCase, ValidationGroup } from "./case.js";

const CHART = "workshop chart of power needed by the engine";
const TM_4210 = "US Army TM 5-4210-230-14&P-1 Table 3";
const BCI = "BCI definition of cold cranking amperes";
const HALF_CHARGED = "workshop chart of half-charged batteries";
const FREEZING = "US Army TM 5-4210-230-14&P-1 Table 2";
const WARMEST_KEPT =
  "the curve keeps the warmest of several published tables, up to 4 °F warmer than this one";
const BY_DEFINITION = "by definition of the battery's resistance";

const flooded = installationById("four-carburettor-160").battery;
const lithium = installationById("liquid-light-100").battery;
const drag = crankingDrag({ displacement_l: 5.5, compression_ratio: 8.5 });

export const CRANKING_VALIDATION: ValidationGroup = {
  title: "cranking and its battery",
  cases: [
    ...(
      [
        [32, 155],
        [0, 210],
        [-20, 350],
      ] as const
    ).map(([f, expected]) =>
      percent(
        `drag at ${f} °F over that at 80 °F, SAE 10W-30`,
        CHART,
        "published",
        expected,
        0.1 * expected,
        "the chart names neither engine nor oil",
        () => torqueAt(f) / torqueAt(80),
      ),
    ),
    ...(
      [
        [32, 65],
        [0, 40],
        [-20, 20],
      ] as const
    ).map(([f, expected]) =>
      percent(
        `greatest power V^2/4R of the battery model at ${f} °F over that at 80 °F`,
        TM_4210,
        "published",
        expected,
        0.1,
        BY_DEFINITION,
        () => greatestPower(f, 1) / greatestPower(80, 1),
      ),
    ),
    ...([12, 24] as const).map((volts) =>
      plain(
        `voltage of a full ${volts} V battery of 300 A CCA at 300 A and 0 °F`,
        BCI,
        "published",
        "V",
        0.6 * volts,
        1e-9,
        BY_DEFINITION,
        () => {
          const { openVoltage, resistance } = batterySource(
            flooded,
            { system_v: volts },
            COLD_CRANKING_TEST.temp,
            1,
          );
          return openVoltage - flooded.cold_cranking_a * resistance;
        },
      ),
    ),
    plain(
      "charge of that test in a full battery at 0 °F, in seconds of its rated current",
      BCI,
      "published",
      "s",
      30,
      1e-9,
      "by definition",
      () => crankingCharge(flooded, COLD_CRANKING_TEST.temp, 1) / flooded.cold_cranking_a,
    ),
    ...(
      [
        [80, 46],
        [32, 32],
        [0, 21],
      ] as const
    ).map(([f, expected]) =>
      percent(
        `power of a half-charged battery at ${f} °F over that of a full one at 80 °F`,
        HALF_CHARGED,
        "from memory",
        expected,
        3,
        "resistance is taken to go as 1/charge, whatever the temperature",
        () => greatestPower(f, 0.5) / greatestPower(80, 1),
      ),
    ),
    ...(
      [
        [1, -75],
        [0.75, -35],
        [0.5, -15],
        [0.25, 5],
        [0, 15],
      ] as const
    ).map(([charge, f]) =>
      plain(
        `freezing point of a lead-acid battery ${100 * charge} % charged`,
        FREEZING,
        "published",
        "°C",
        Number(celsiusFromFahrenheit(f).toFixed(1)),
        2.3,
        WARMEST_KEPT,
        () => celsiusFromKelvin(tempBatteryLeast(flooded, charge)),
      ),
    ),
    celsius("coldest lead-acid charge", "SAE 430132 (1943): 40 °F", 4.4, () => tempChargeLeast(flooded)),
    celsius("coldest charge of a lithium pack", "battery makers' articles", 0, () =>
      tempChargeLeast(lithium),
    ),
    celsius("cut-off of a lithium pack", "battery makers' articles", -20, () =>
      tempBatteryLeast(lithium, 0.5),
    ),
    celsius(
      "batteries are taken out below",
      "Cessna 172S NAV III POH Supplement 8",
      -34,
      () => TEMP_REMOVE_BATTERY,
    ),
    plain(
      "length of a try",
      "Lycoming Service Instruction 1505",
      "published",
      "s",
      5,
      0,
      "a limit",
      () => TRY_DURATION,
    ),
    plain(
      "least cranking speed: geometric middle of 30 to 120 rpm",
      "SAE J2438, second-hand",
      "published",
      "rpm",
      60,
      1,
      "the standard tests over the span; the middle is project judgement",
      () => installationById("four-carburettor-160").cranking.speed_min_rpm,
    ),
    plain(
      "exponent of viscosity in friction: 44 % less friction for 67 % less viscosity, ln 0.56/ln 0.33",
      "Burke et al., IMechE review, hot engine 50 to 80 °C",
      "published",
      "1",
      0.52,
      0.05,
      "another engine and a running one",
      () => FILM_EXPONENT.usual,
    ),
    plain(
      "work of a polytropic compression 8.5:1 over the swept volume, integrated in 10 000 steps",
      "p V^1.3 constant from 100 kPa",
      "computed from the published formula",
      "kPa",
      340.12,
      0.01,
      "printed digits",
      () => compressionPressure(8.5) / 1000,
    ),
  ],
};

/** [N m] at 100 rpm with the reference oil. */
function torqueAt(f: number): number {
  return crankingTorque(
    drag,
    dynamicViscosityOil(CRANKING_REFERENCE_OIL, fahrenheit(f)),
    CRANKING_REFERENCE_SPEED,
  );
}

function greatestPower(f: number, charge: number, battery: Battery = flooded): number {
  const { openVoltage, resistance } = batterySource(battery, { system_v: 12 }, fahrenheit(f), charge);
  return openVoltage ** 2 / (4 * resistance);
}

function percent(
  name: string,
  source: string,
  mark: Mark,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  return plain(name, source, mark, "%", expected, tolerance, toleranceReason, () => 100 * got());
}

function celsius(name: string, source: string, expected: number, got: () => number): ValidationCase {
  return plain(name, source, "published", "°C", expected, 0.1, "a limit, rounded", () =>
    celsiusFromKelvin(got()),
  );
}

function plain(
  name: string,
  source: string,
  mark: Mark,
  unit: string,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  return { name, source, mark, unit, expected, tolerance, toleranceReason, got };
}

function fahrenheit(value: number): number {
  return kelvinFromCelsius(celsiusFromFahrenheit(value));
}
