import { type Installation, oilById } from "../aircraft/index.js";
import {
  crankingLimitOil,
  crankingPowerFraction,
  dynamicViscosityOil,
  FLAMMABILITY_GASOLINE,
  pumpingLimitOil,
  TEMP_REFERENCE_LENGTH,
  TEMP_TRIPLE_POINT_WATER,
  tempFrostPointFromDewPoint,
} from "../properties/index.js";
import {
  celsiusFromFahrenheit,
  celsiusFromKelvin,
  kelvinFromCelsius,
  RADIANS_PER_SECOND_OF_RPM,
} from "../units/index.js";
import { batteryKind } from "./battery-source.js";
import { tempBatteryLeast } from "./battery-state.js";
import { CLEARANCE_LIMITS, clearanceOf, pistonIndex, TEMP_PISTON_FIRST_MINUTES } from "./clearance.js";
import { crankingModel } from "./cranking.js";
import { CRANKING_REFERENCE_SPEED, crankingDrag, crankingTorque } from "./cranking-drag.js";
import { fuelStart } from "./fuel-start.js";
import { oilPressureDelay } from "./oil-fitness.js";
import { USUAL_CRANKING } from "./spread.js";

interface Topic {
  readonly title: string;
  readonly unit: string;
  readonly equation: string;
  readonly source: string;
  /** The value at a temperature [K], in `unit`; undefined where an engine has no such thing. */
  readonly answer: (installation: Installation) => ((temp: number) => number) | undefined;
  readonly sentence: (value: number, tempC: number, installation: Installation) => string;
}

const TEMP_WARM_CHART = kelvinFromCelsius(celsiusFromFahrenheit(80));
const whole = (temp: number) => celsiusFromKelvin(temp).toFixed(0);
/** Two figures, without powers of ten. */
const brief = (value: number) => String(Number(value.toPrecision(2)));
const at = (tempC: number) => `At ${tempC.toFixed(0)} °C`;

export const WHY_TOPICS = {
  "oil-viscosity": {
    title: "How thick is the oil?",
    unit: "Pa s",
    equation: "log10 log10(nu + 0.7) = A - B log10 T (Walther); mu = rho nu",
    source: "ASTM D341-17; limits SAE J300 (pumping 60 Pa s) and the oil's pour point",
    answer: ({ oil }) => {
      const installed = oilById(oil.oil_id);
      return (temp) => dynamicViscosityOil(installed, temp);
    },
    sentence: (value, tempC, { oil }) => {
      const installed = oilById(oil.oil_id);
      const warm = dynamicViscosityOil(installed, TEMP_REFERENCE_LENGTH);
      return (
        `${at(tempC)} ${installed.name} has ${brief(value)} Pa s, ${brief(value / warm)} times as much as at ` +
        `20 °C; it is too stiff to crank below ${whole(crankingLimitOil(installed).temp)} °C and may not reach the pump below ` +
        `${whole(pumpingLimitOil(installed).temp)} °C.`
      );
    },
  },
  "oil-pressure": {
    title: "How long until oil pressure?",
    unit: "s",
    equation: "t = 4 s (mu / 0.11 Pa s)^0.5, a factor of two either way",
    source: "project judgement between a warm day and an SAE abstract: more than 23 s at -20 to -30 °C",
    answer: ({ oil }) => {
      const installed = oilById(oil.oil_id);
      return (temp) => oilPressureDelay(installed, temp).usual;
    },
    sentence: (value, tempC) =>
      `${at(tempC)} the oil takes some ${(value / 2).toFixed(0)} to ${(2 * value).toFixed(0)} s to show pressure, if it flows ` +
      "at all. This is a rough range. Stop the engine when there is no pressure within 10 s; its handbook decides.",
  },
  "cranking-drag": {
    title: "How hard is it to turn?",
    unit: "N m",
    equation: "T = (V / 4 pi)(p_gas + p_dry + p_film (mu omega / mu_0 omega_0)^n), n = 0.5, at 100 rpm",
    source:
      "drag level and n: project judgement, held to the workshop chart 100/155/210/350 % at 80/32/0/-20 °F within 10 % for SAE 10W-30",
    answer: (installation) => {
      const drag = crankingDrag(installation);
      const installed = oilById(installation.oil.oil_id);
      return (temp) => crankingTorque(drag, dynamicViscosityOil(installed, temp), CRANKING_REFERENCE_SPEED);
    },
    sentence: (value, tempC, installation) => {
      const drag = crankingDrag(installation);
      const warm = dynamicViscosityOil(oilById(installation.oil.oil_id), TEMP_WARM_CHART);
      const ratio = value / crankingTorque(drag, warm, CRANKING_REFERENCE_SPEED);
      const most = value > 2 * drag.fixed ? "oil films" : "compression and dry friction";
      return (
        `${at(tempC)} all through, turning it at 100 rpm takes ${value.toFixed(0)} N m, ${(100 * ratio).toFixed(0)} % of what ` +
        `it takes at 27 °C; ${most} are most of it.`
      );
    },
  },
  "cranking-power": {
    title: "What is left of the battery?",
    unit: "%",
    equation: "table of cranking power against temperature, straight between its points",
    source:
      "US Army TM 5-4210-230-14&P-1 Table 3 (100, 65, 40, 20 % at 80, 32, 0, -20 °F); lithium: project judgement",
    answer: ({ battery }) => {
      const kind = batteryKind(battery);
      return (temp) => 100 * crankingPowerFraction(kind, temp);
    },
    sentence: (value, tempC, { battery }) =>
      `${at(tempC)} a full ${batteryKind(battery).name} battery cranks with ${value.toFixed(0)} % of its power at 27 °C, while ` +
      "the engine wants more.",
  },
  "cranking-speed": {
    title: "Does it spin fast enough?",
    unit: "rpm",
    equation: "k_T (V_0 - k_E omega)/(R_battery + R_starter) = T(omega)",
    source:
      "starter line against drag, battery resistance from its cold cranking rating (BCI: 30 s at 0 °F, 7.2 V)",
    answer: (installation) => {
      const model = crankingModel(installation);
      return (temp) => model.speed(temp, temp, temp, temp, USUAL_CRANKING) / RADIANS_PER_SECOND_OF_RPM;
    },
    sentence: (value, tempC, { cranking, battery }) =>
      `${at(tempC)} all through, battery too and ${(100 * battery.assumed_charge).toFixed(0)} % charged, it turns at about ` +
      `${value.toFixed(0)} rpm; ${cranking.speed_min_rpm} rpm is the least to count on.`,
  },
  "battery-freezing": {
    title: "When does the battery freeze?",
    unit: "K",
    equation: "margin = T - T_freeze(specific gravity), gravity from charge",
    source:
      "warmest of the published tables of freezing against specific gravity (US Army TM 5-4210, TM 5-1185 and others); SG against charge: BCI table",
    answer: ({ battery }) => {
      const least = tempBatteryLeast(battery, battery.assumed_charge);
      return (temp) => temp - least;
    },
    sentence: (value, tempC, { battery }) => {
      const least = tempBatteryLeast(battery, battery.assumed_charge);
      const charge = (100 * battery.assumed_charge).toFixed(0);
      if (battery.chemistry === "lithium-iron-phosphate") {
        return `${at(tempC)} the pack is ${Math.abs(value).toFixed(0)} K ${value < 0 ? "below" : "above"} its cut-off of ${whole(least)} °C.`;
      }
      return (
        `${at(tempC)} a battery ${charge} % charged is ${Math.abs(value).toFixed(0)} K ${value < 0 ? "below" : "above"} the ` +
        `freezing point of its acid, ${whole(least)} °C; empty it would freeze at ${whole(tempBatteryLeast(battery, 0))} °C.`
      );
    },
  },
  "fuel-vapour": {
    title: "Does the fuel give a mixture that burns?",
    unit: "vol %",
    equation:
      "x = p_v / p, p_v = exp(A - B/(t + 459.6)) psi, A and B from Reid vapour pressure and distillation slope",
    source: "EPA AP-42 chapter 7.1; lean limit 1.4 vol % (IEC 60079-20-1, NFPA 497)",
    answer:
      ({ fuel }) =>
      (temp) =>
        100 * fuelStart(fuel, temp).vapourFraction,
    sentence: (value, tempC, { fuel }) => {
      const { offeredRatio, tempLeanLimit } = fuelStart(fuel, kelvinFromCelsius(tempC));
      return (
        `${at(tempC)} air over ${fuel.grade} holds at most ${value.toFixed(1)} % of vapour (it burns from ` +
        `${(100 * FLAMMABILITY_GASOLINE.lean).toFixed(1)} %, so not below ${whole(tempLeanLimit)} °C), and ${offeredRatio.toFixed(1)} times as ` +
        "much fuel must be offered as at 15 °C; the handbook says how to prime."
      );
    },
  },
  "bearing-clearance": {
    title: "What is left of the main-bearing clearance?",
    unit: "mm",
    equation: "c = D(1 + alpha_case (T - 20)) - d(1 + alpha_shaft (T - 20))",
    source: `linear expansion of handbook alloys with their cold-range means. ${CLEARANCE_LIMITS}`,
    answer: ({ clearances: { bearing } }) =>
      bearing === undefined ? undefined : (temp) => 1000 * clearanceOf(bearing, temp, temp),
    sentence: (value, tempC, { clearances }) =>
      `${at(tempC)} an aluminium case has closed in on its steel shaft: ${value.toFixed(3)} mm of ` +
      `${clearances.bearing?.clearance_mm.toFixed(3)} mm are left, if the case alone set the bore.`,
  },
  "piston-clearance": {
    title: "What room has the piston in its first minutes?",
    unit: "mm",
    equation: "c = D(1 + alpha_barrel (T - 20)) - d(1 + alpha_piston (100 - 20))",
    source: `linear expansion of handbook alloys; piston at 100 °C in the first minutes: project judgement. ${CLEARANCE_LIMITS}`,
    answer: (installation) => {
      const { piston } = installation.clearances;
      if (pistonIndex(installation, TEMP_REFERENCE_LENGTH) === undefined) return undefined;
      return (temp) => 1000 * clearanceOf(piston, temp, TEMP_PISTON_FIRST_MINUTES);
    },
    sentence: (value, tempC, { clearances: { piston } }) =>
      `With barrels at ${tempC.toFixed(0)} °C and the piston already at 100 °C, ${value.toFixed(3)} mm are left; with barrels at ` +
      `20 °C it would be ${(1000 * clearanceOf(piston, TEMP_REFERENCE_LENGTH, TEMP_PISTON_FIRST_MINUTES)).toFixed(3)} mm.`,
  },
  "frost-point": {
    title: "At what skin temperature does frost begin?",
    unit: "°C",
    equation: "p_ice(frost point) = p_water(dew point)",
    source:
      "Murphy & Koop 2005 (liquid), Hyland & Wexler 1983 (ice); METAR dew points are over water (FMH-1)",
    answer: () => (temp) =>
      celsiusFromKelvin(temp < TEMP_TRIPLE_POINT_WATER ? tempFrostPointFromDewPoint(temp) : temp),
    sentence: (value, tempC) =>
      tempC < 0
        ? `A reported dew point of ${tempC.toFixed(0)} °C means frost on anything below ${value.toFixed(1)} °C.`
        : `A dew point of ${tempC.toFixed(0)} °C means dew, not frost, on anything below it.`,
  },
} as const satisfies Record<string, Topic>;

export type WhyTopic = keyof typeof WHY_TOPICS;
