import { type Installation, oilById } from "../aircraft/index.js";
import { type Finding, finding, type StartingFindings } from "../findings/index.js";
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
  readonly unit: string;
  readonly equation: string;
  readonly source: string;
  /** The value at a temperature [K], in `unit`; undefined where an engine has no such thing. */
  readonly answer: (installation: Installation) => ((temp: number) => number) | undefined;
  readonly sentence: (value: number, temp_c: number, installation: Installation) => Finding;
}

export type WhyTopic = StartingFindings["why-title"]["topic"];

const TEMP_WARM_CHART = kelvinFromCelsius(celsiusFromFahrenheit(80));

/** In the order of a start. */
export const WHY_TOPICS: Readonly<Record<WhyTopic, Topic>> = {
  "oil-viscosity": {
    unit: "Pa s",
    equation: "log10 log10(nu + 0.7) = A - B log10 T (Walther); mu = rho nu",
    source: "ASTM D341-17; limits SAE J300 (pumping 60 Pa s) and the oil's pour point",
    answer: ({ oil }) => {
      const installed = oilById(oil.oil_id);
      return (temp) => dynamicViscosityOil(installed, temp);
    },
    sentence: (value, temp_c, { oil }) => {
      const installed = oilById(oil.oil_id);
      return finding("why-oil-viscosity", {
        oil: installed.name,
        temp_c,
        viscosity_pa_s: value,
        ratio: value / dynamicViscosityOil(installed, TEMP_REFERENCE_LENGTH),
        cranking_c: celsiusFromKelvin(crankingLimitOil(installed).temp),
        pumping_c: celsiusFromKelvin(pumpingLimitOil(installed).temp),
      });
    },
  },
  "oil-pressure": {
    unit: "s",
    equation: "t = 4 s (mu / 0.11 Pa s)^0.5, a factor of two either way",
    source: "project judgement between a warm day and an SAE abstract: more than 23 s at -20 to -30 °C",
    answer: ({ oil }) => {
      const installed = oilById(oil.oil_id);
      return (temp) => oilPressureDelay(installed, temp).usual;
    },
    sentence: (value, temp_c) =>
      finding("why-oil-pressure", { temp_c, least_s: value / 2, most_s: 2 * value }),
  },
  "cranking-drag": {
    unit: "N m",
    equation: "T = (V / 4 pi)(p_gas + p_dry + p_film (mu omega / mu_0 omega_0)^n), n = 0.5, at 100 rpm",
    source:
      "drag level and n: project judgement, held to the workshop chart 100/155/210/350 % at 80/32/0/-20 °F within 10 % for SAE 10W-30",
    answer: (installation) => {
      const drag = crankingDrag(installation);
      const installed = oilById(installation.oil.oil_id);
      return (temp) => crankingTorque(drag, dynamicViscosityOil(installed, temp), CRANKING_REFERENCE_SPEED);
    },
    sentence: (value, temp_c, installation) => {
      const drag = crankingDrag(installation);
      const warm = dynamicViscosityOil(oilById(installation.oil.oil_id), TEMP_WARM_CHART);
      return finding("why-cranking-drag", {
        temp_c,
        torque_nm: value,
        ratio: value / crankingTorque(drag, warm, CRANKING_REFERENCE_SPEED),
        mostly: value > 2 * drag.fixed ? "films" : "compression",
      });
    },
  },
  "cranking-power": {
    unit: "%",
    equation: "table of cranking power against temperature, straight between its points",
    source:
      "US Army TM 5-4210-230-14&P-1 Table 3 (100, 65, 40, 20 % at 80, 32, 0, -20 °F); lithium: project judgement",
    answer: ({ battery }) => {
      const kind = batteryKind(battery);
      return (temp) => 100 * crankingPowerFraction(kind, temp);
    },
    sentence: (value, temp_c, { battery: { chemistry, sealed } }) =>
      finding("why-cranking-power", {
        temp_c,
        battery: chemistry === "lithium-iron-phosphate" ? "lithium" : sealed ? "sealed" : "flooded",
        power: value / 100,
      }),
  },
  "cranking-speed": {
    unit: "rpm",
    equation: "k_T (V_0 - k_E omega)/(R_battery + R_starter) = T(omega)",
    source:
      "starter line against drag, battery resistance from its cold cranking rating (BCI: 30 s at 0 °F, 7.2 V)",
    answer: (installation) => {
      const model = crankingModel(installation);
      return (temp) => model.speed(temp, temp, temp, temp, USUAL_CRANKING) / RADIANS_PER_SECOND_OF_RPM;
    },
    sentence: (value, temp_c, { cranking, battery }) =>
      finding("why-cranking-speed", {
        temp_c,
        charge: battery.assumed_charge,
        rpm: value,
        least_rpm: cranking.speed_min_rpm,
      }),
  },
  "battery-freezing": {
    unit: "K",
    equation: "margin = T - T_freeze(specific gravity), gravity from charge",
    source:
      "warmest of the published tables of freezing against specific gravity (US Army TM 5-4210, TM 5-1185 and others); SG against charge: BCI table",
    answer: ({ battery }) => {
      const least = tempBatteryLeast(battery, battery.assumed_charge);
      return (temp) => temp - least;
    },
    sentence: (value, temp_c, { battery }) => {
      const least_c = celsiusFromKelvin(tempBatteryLeast(battery, battery.assumed_charge));
      if (battery.chemistry === "lithium-iron-phosphate") {
        return finding("why-battery-cut-off", { temp_c, margin_k: value, cut_off_c: least_c });
      }
      return finding("why-battery-freezing", {
        temp_c,
        charge: battery.assumed_charge,
        margin_k: value,
        freezing_c: least_c,
        empty_c: celsiusFromKelvin(tempBatteryLeast(battery, 0)),
      });
    },
  },
  "fuel-vapour": {
    unit: "vol %",
    equation:
      "x = p_v / p, p_v = exp(A - B/(t + 459.6)) psi, A and B from Reid vapour pressure and distillation slope",
    source: "EPA AP-42 chapter 7.1; lean limit 1.4 vol % (IEC 60079-20-1, NFPA 497)",
    answer:
      ({ fuel }) =>
      (temp) =>
        100 * fuelStart(fuel, temp).vapourFraction,
    sentence: (value, temp_c, { fuel }) => {
      const { offeredRatio, tempLeanLimit } = fuelStart(fuel, kelvinFromCelsius(temp_c));
      return finding("why-fuel-vapour", {
        temp_c,
        fuel: fuel.grade,
        vapour: value / 100,
        lean: FLAMMABILITY_GASOLINE.lean,
        lean_c: celsiusFromKelvin(tempLeanLimit),
        ratio: offeredRatio,
      });
    },
  },
  "bearing-clearance": {
    unit: "mm",
    equation: "c = D(1 + alpha_case (T - 20)) - d(1 + alpha_shaft (T - 20))",
    source: `linear expansion of handbook alloys with their cold-range means. ${CLEARANCE_LIMITS}`,
    answer: ({ clearances: { bearing } }) =>
      bearing === undefined ? undefined : (temp) => 1000 * clearanceOf(bearing, temp, temp),
    sentence: (value, temp_c, { clearances }) =>
      finding("why-bearing-clearance", {
        temp_c,
        left_mm: value,
        whole_mm: clearances.bearing?.clearance_mm ?? 0,
      }),
  },
  "piston-clearance": {
    unit: "mm",
    equation: "c = D(1 + alpha_barrel (T - 20)) - d(1 + alpha_piston (100 - 20))",
    source: `linear expansion of handbook alloys; piston at 100 °C in the first minutes: project judgement. ${CLEARANCE_LIMITS}`,
    answer: (installation) => {
      const { piston } = installation.clearances;
      if (pistonIndex(installation, TEMP_REFERENCE_LENGTH) === undefined) return undefined;
      return (temp) => 1000 * clearanceOf(piston, temp, TEMP_PISTON_FIRST_MINUTES);
    },
    sentence: (value, temp_c, { clearances: { piston } }) =>
      finding("why-piston-clearance", {
        temp_c,
        left_mm: value,
        warm_mm: 1000 * clearanceOf(piston, TEMP_REFERENCE_LENGTH, TEMP_PISTON_FIRST_MINUTES),
      }),
  },
  "frost-point": {
    unit: "°C",
    equation: "p_ice(frost point) = p_water(dew point)",
    source:
      "Murphy & Koop 2005 (liquid), Hyland & Wexler 1983 (ice); METAR dew points are over water (FMH-1)",
    answer: () => (temp) =>
      celsiusFromKelvin(temp < TEMP_TRIPLE_POINT_WATER ? tempFrostPointFromDewPoint(temp) : temp),
    sentence: (value, temp_c) =>
      temp_c < 0
        ? finding("why-frost-point", { temp_c, frost_c: value })
        : finding("why-dew-point", { temp_c }),
  },
};
