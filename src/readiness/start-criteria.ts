import { type Installation, oilById, originOf, type PartName } from "../aircraft/index.js";
import { UniformTable } from "../numerics/index.js";
import {
  crankingLimitOil,
  FLAMMABILITY_GASOLINE,
  fuelVapourFraction,
  fuelVapourPressureAp42,
  type OilLimit,
  PRESSURE_STANDARD,
  pumpingLimitOil,
  RANGE_TEMP_FUEL_AP42,
} from "../properties/index.js";
import {
  clampedFuel,
  fuelVolatility,
  OFFERED_MOST,
  TEMP_WARM_START,
  tempBatteryLeast,
  tempChargeLeast,
} from "../starting/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import { clearanceCriteria } from "./clearance-criteria.js";
import { crankingCriteria } from "./cranking-criteria.js";
import type { Criterion, EnsembleState } from "./criterion.js";
import { extreme, lowest } from "./extreme.js";

/** What is known of the start beyond the description. */
export interface StartOptions {
  /** State of charge of the battery [0..1]; what the description assumes when absent. */
  readonly charge?: number;
}

/**
 * What a start needs beyond warm parts: oil that flows and lets itself be cranked, a starter that spins the engine, a
 * battery that is not frozen, fuel that gives a mixture. Rules of thumb and indices among them are advisory.
 */
export function startCriteria(installation: Installation, { charge }: StartOptions = {}): Criterion[] {
  return [
    ...oilCriteria(installation),
    ...crankingCriteria(installation, charge),
    ...batteryCriteria(installation, charge ?? installation.battery.assumed_charge),
    ...fuelCriteria(installation),
    ...clearanceCriteria(installation),
  ];
}

const BASIS: Readonly<Record<OilLimit["basis"], string>> = {
  "winter-grade": "limit of the oil's own SAE J300 grade on its Walther line",
  "between-grades":
    "SAE J300 read between its rows on the oil's Walther line (project judgement for straight grades)",
  "pour-point": "pour point of the oil",
};

function oilCriteria({ oil }: Installation): Criterion[] {
  const installed = oilById(oil.oil_id);
  const pumping = pumpingLimitOil(installed);
  const cranking = crankingLimitOil(installed);
  const source = ({ basis }: OilLimit) => `${BASIS[basis]}; ${installed.name}: ${installed.origin}`;
  return [
    lowest(
      "oil-pump",
      "oil flows to the pump",
      ["oil"],
      pumping.temp,
      "oil that does not flow to the pump leaves bearings dry, whatever the gauge's needle does later",
      source(pumping),
    ),
    lowest(
      "oil-crank",
      "oil films thin enough to crank",
      ["barrels", "crankshaft"],
      cranking.temp,
      "most of a cold engine's drag is in the films between pistons and barrels and in the bearings",
      source(cranking),
    ),
  ];
}

function batteryCriteria({ battery }: Installation, charge: number): Criterion[] {
  const lithium = battery.chemistry === "lithium-iron-phosphate";
  const percent = (100 * charge).toFixed(0);
  return [
    lowest(
      "battery",
      lithium ? "battery above its cut-off" : "battery above freezing",
      ["battery"],
      tempBatteryLeast(battery, charge),
      lithium
        ? "the pack gives nothing below its cut-off"
        : `acid of a battery ${percent} % charged freezes; a frozen battery can burst when it is loaded or charged`,
      lithium
        ? "battery makers' articles: discharge cut-off -20 °C"
        : "warmest of the published tables of freezing against specific gravity; gravity against charge: BCI table",
    ),
    {
      ...lowest(
        "battery-charge",
        "battery warm enough to charge",
        ["battery"],
        tempChargeLeast(battery),
        lithium
          ? "charging below 0 °C harms the cells, also by the alternator"
          : "a colder battery takes almost no charge: what a start uses is not put back",
        lithium ? "battery makers' articles: charge cut-off 0 °C" : "SAE 430132 (1943): at least 40 °F",
      ),
      advisory: true,
    },
  ];
}

const HEADS: readonly PartName[] = ["heads_front", "heads_rear"];
const FUEL_INTERVALS = 240;

function fuelCriteria({ fuel, origins }: Installation): Criterion[] {
  const volatility = fuelVolatility(fuel);
  const table = (f: (temp: number) => number) =>
    new UniformTable(f, RANGE_TEMP_FUEL_AP42.min, RANGE_TEMP_FUEL_AP42.max, FUEL_INTERVALS);
  const fraction = table((temp) => fuelVapourFraction(volatility, temp, PRESSURE_STANDARD));
  const warm = fuelVapourPressureAp42(volatility, TEMP_WARM_START);
  const ratio = table((temp) => warm / fuelVapourPressureAp42(volatility, temp));
  const fuelSource = originOf(origins, "fuel");
  const atColdestHead = (state: EnsembleState, out: Float64Array, value: (temp: number) => number) => {
    extreme(state, HEADS, Math.min, out);
    for (let m = 0; m < out.length; m++) out[m] = value(clampedFuel(out[m]));
  };
  const fractionAt = (temp: number) => fraction.value(temp);
  const ratioAt = (temp: number) => Math.max(1, ratio.value(temp));
  return [
    {
      id: "fuel-vapour",
      title: "fuel vapour at the coldest head",
      quantity: "fraction",
      direction: "at-least",
      judged: "at-start",
      limit: FLAMMABILITY_GASOLINE.lean,
      reason: "even air saturated with this fuel is too lean to burn: no priming helps, only warmth",
      source: `AP-42 chapter 7.1; lean limit IEC 60079-20-1; fuel: ${fuelSource}`,
      values: (state, out) => atColdestHead(state, out, fractionAt),
    },
    {
      id: "fuel-offered",
      title: "fuel needed, times a warm start",
      quantity: "ratio",
      direction: "at-most",
      judged: "at-start",
      limit: OFFERED_MOST,
      advisory: true,
      reason:
        "more prime than that floods the intake before it evaporates: fire, washed cylinder walls, frosted plugs",
      source: `warm: 15 °C; share that evaporates taken as vapour pressure, AP-42; limit from handbooks' strokes, project judgement; fuel: ${fuelSource}`,
      values: (state, out) => atColdestHead(state, out, ratioAt),
    },
    {
      ...lowest(
        "plugs",
        "coldest head, for a second try",
        [...HEADS],
        kelvinFromCelsius(0),
        "when it fires and quits in the cold, the plugs frost over: no second try below 0 °C",
        "Cessna 172S NAV III POH Supplement 8",
      ),
      advisory: true,
    },
  ];
}
