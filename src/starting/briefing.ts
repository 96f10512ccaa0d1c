import { type Caution, type Installation, oilById, type PartName } from "../aircraft/index.js";
import { eachOnce } from "../findings/index.js";
import { celsiusFromKelvin, RADIANS_PER_SECOND_OF_RPM } from "../units/index.js";
import { batteryState, tempBatteryLeast } from "./battery-state.js";
import { START_CAUTIONS } from "./cautions.js";
import { crankingTry } from "./cranking.js";
import { fuelStart } from "./fuel-start.js";
import { oilFitness, oilPressureDelay } from "./oil-fitness.js";
import { oilGradeAdvice } from "./oil-grade.js";

export interface StartNote {
  readonly topic:
    | "oil"
    | "oil-pressure"
    | "oil-grade"
    | "propeller"
    | "cranking"
    | "battery"
    | "fuel"
    | "breather";
  readonly text: string;
  /** What can hurt, beside what it belongs to. */
  readonly cautions: readonly Caution[];
}

/** What to know before the starter is pressed, at the temperatures expected then. */
export interface StartBriefing {
  readonly notes: readonly StartNote[];
}

/** [K] */
const FREEZING = 273.15;

/**
 * Oil, pressure, propeller, cranking, battery and fuel in words, each with its cautions. Single values at middle
 * temperatures: the criteria carry the spread.
 * @param temps [K] by part: oil, barrels, crankshaft, battery, heads_front, heads_rear
 * @param tempAir [K] outside
 */
export function startBriefing(
  installation: Installation,
  temps: ReadonlyMap<string, number>,
  tempAir: number,
  batteryFitted = true,
): StartBriefing {
  const at = (part: PartName) => {
    const temp = temps.get(part);
    if (temp === undefined) throw new RangeError(`missing temperature: ${part}`);
    return temp;
  };
  const oil = oilById(installation.oil.oil_id);
  const fitness = oilFitness(oil, at("oil"));
  const pressure = oilPressureDelay(oil, at("oil"));
  const grade = oilGradeAdvice(oil, tempAir);
  const cranking = crankingTry(installation, {
    oil: at("oil"),
    barrels: at("barrels"),
    crankshaft: at("crankshaft"),
    battery: at("battery"),
  });
  const { battery } = installation;
  const state = batteryState(battery, installation.cranking.system_v, at("battery"), tempAir);
  const fuel = fuelStart(installation.fuel, Math.min(at("heads_front"), at("heads_rear")));
  const notes: StartNote[] = [
    { topic: "oil", text: fitness.text, cautions: fitness.cautions },
    { topic: "oil-pressure", text: pressureText(pressure), cautions: [pressure.caution] },
  ];
  if (!grade.listed) {
    notes.push({ topic: "oil-grade", text: `${grade.text} (${grade.source})`, cautions: [] });
  }
  notes.push({
    topic: "propeller",
    text: "look that it is clear, and call out, before anything is switched on",
    cautions: [START_CAUTIONS.propeller],
  });
  if (batteryFitted) {
    notes.push(
      { topic: "cranking", text: crankingText(cranking), cautions: cranking.cautions },
      {
        topic: "battery",
        text: batteryText(state, at("battery"), battery.assumed_charge),
        cautions: eachOnce([...mayBeFrozen(installation, at("battery")), ...state.cautions]),
      },
    );
  } else {
    notes.push({
      topic: "battery",
      text: "no battery is in the aircraft: fit it warm and charged",
      cautions: [],
    });
  }
  notes.push({ topic: "fuel", text: fuel.text, cautions: fuel.cautions });
  if (tempAir < FREEZING) {
    notes.push({
      topic: "breather",
      text: "it may be iced: feel and look",
      cautions: [START_CAUTIONS.frozenBreather, START_CAUTIONS.groundRun],
    });
  }
  return { notes };
}

/** A battery so cold that it is frozen should it be empty: its charge is seldom known. */
function mayBeFrozen({ battery }: Installation, temp: number): Caution[] {
  if (battery.chemistry !== "lead-acid") return [];
  return temp < tempBatteryLeast(battery, 0) ? [START_CAUTIONS.frozenBattery] : [];
}

/** [s] without oil pressure after which the engine is stopped (START_CAUTIONS.noOilPressure). */
const TIME_NO_PRESSURE = 10;

function pressureText({ least, most }: ReturnType<typeof oilPressureDelay>): string {
  if (!Number.isFinite(most)) return "oil pressure may not come at all: the oil may not reach the pump";
  const range = `oil pressure may take ${least.toFixed(0)} to ${most.toFixed(0)} s`;
  return least > TIME_NO_PRESSURE
    ? `${range}, and the engine is to be stopped after ${TIME_NO_PRESSURE} s: heat it first`
    : `${range}; stop the engine after ${TIME_NO_PRESSURE} s without`;
}

function crankingText({ status, speed, current, voltage }: ReturnType<typeof crankingTry>): string {
  const rpm = (speed / RADIANS_PER_SECOND_OF_RPM).toFixed(0);
  if (status === "stalls") return "the starter is not expected to turn the engine";
  const figures = `${rpm} rpm at ${current.toFixed(0)} A and ${voltage.toFixed(1)} V`;
  return status === "turns" ? `the starter turns about ${figures}` : `too slow to fire: about ${figures}`;
}

function batteryText(
  { status, crankingPower, mayCharge }: ReturnType<typeof batteryState>,
  temp: number,
  charge: number,
): string {
  const at = `the battery at ${celsiusFromKelvin(temp).toFixed(0)} °C, taken as ${Math.round(100 * charge)} % charged,`;
  if (status === "frozen") return `${at} may be frozen`;
  if (status === "cut-off") return `${at} gives nothing this cold`;
  const power = `${at} gives ${Math.round(100 * crankingPower)} % of its warm cranking power`;
  return mayCharge ? power : `${power} and takes no charge`;
}
