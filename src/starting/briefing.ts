import { type Caution, type Installation, oilById, type PartName } from "../aircraft/index.js";
import { eachOnce, type Finding, finding } from "../findings/index.js";
import { celsiusFromKelvin, KELVIN_OF_ZERO_CELSIUS, RADIANS_PER_SECOND_OF_RPM } from "../units/index.js";
import { batteryState, tempBatteryLeast } from "./battery-state.js";
import { START_CAUTIONS } from "./cautions.js";
import { type CrankingTry, crankingTry } from "./cranking.js";
import { fuelStart } from "./fuel-start.js";
import { type OilPressureDelay, oilFitness, oilPressureDelay } from "./oil-fitness.js";
import { oilGradeAdvice } from "./oil-grade.js";

interface StartNote {
  readonly topic:
    | "oil"
    | "oil-pressure"
    | "oil-grade"
    | "propeller"
    | "cranking"
    | "battery"
    | "fuel"
    | "breather";
  readonly text: Finding;
  /** What can hurt, beside what it belongs to. */
  readonly cautions: readonly Caution[];
}

/** What to know before the starter is pressed, at the temperatures expected then. */
export interface StartBriefing {
  readonly notes: readonly StartNote[];
}

/** [K] of a part. */
type TempOf = (part: PartName) => number;

/**
 * Oil, pressure, propeller, cranking, battery and fuel, each with its cautions. Single values at middle temperatures: the
 * criteria carry the spread.
 * @param temps [K] by part: oil, barrels, crankshaft, battery, heads_front, heads_rear
 * @param tempAir [K] outside
 */
export function startBriefing(
  installation: Installation,
  temps: ReadonlyMap<string, number>,
  tempAir: number,
  batteryFitted = true,
): StartBriefing {
  const at: TempOf = (part) => {
    const temp = temps.get(part);
    if (temp === undefined) throw new RangeError(`missing temperature: ${part}`);
    return temp;
  };
  const fuel = fuelStart(installation.fuel, Math.min(at("heads_front"), at("heads_rear")));
  return {
    notes: [
      ...oilNotes(installation, at("oil"), tempAir),
      { topic: "propeller", text: finding("propeller-clear", {}), cautions: [START_CAUTIONS.propeller] },
      ...(batteryFitted
        ? [crankingNote(installation, at), batteryNote(installation, at("battery"), tempAir)]
        : [{ topic: "battery" as const, text: finding("battery-absent", {}), cautions: [] }]),
      { topic: "fuel", text: fuel.text, cautions: fuel.cautions },
      ...(tempAir < KELVIN_OF_ZERO_CELSIUS ? [breatherNote()] : []),
    ],
  };
}

function oilNotes(installation: Installation, tempOil: number, tempAir: number): StartNote[] {
  const oil = oilById(installation.oil.oil_id);
  const fitness = oilFitness(oil, tempOil);
  const pressure = oilPressureDelay(oil, tempOil);
  const { listed, text, source } = oilGradeAdvice(oil, tempAir);
  const notes: StartNote[] = [
    { topic: "oil", text: fitness.text, cautions: fitness.cautions },
    { topic: "oil-pressure", text: pressureFinding(pressure), cautions: [START_CAUTIONS.noOilPressure] },
  ];
  if (!listed)
    notes.push({
      topic: "oil-grade",
      text: finding("with-source", { finding: text, source }),
      cautions: [],
    });
  return notes;
}

function crankingNote(installation: Installation, at: TempOf): StartNote {
  const cranking = crankingTry(installation, {
    oil: at("oil"),
    barrels: at("barrels"),
    crankshaft: at("crankshaft"),
    battery: at("battery"),
  });
  return { topic: "cranking", text: crankingFinding(cranking), cautions: cranking.cautions };
}

function batteryNote({ battery }: Installation, temp: number, tempAir: number): StartNote {
  const { status, crankingPower, mayCharge, cautions } = batteryState(battery, temp, tempAir);
  const known = { temp_c: celsiusFromKelvin(temp), charge: battery.assumed_charge };
  // A battery so cold that it is frozen should it be empty: its charge is seldom known.
  const mayBeFrozen = battery.chemistry === "lead-acid" && temp < tempBatteryLeast(battery, 0);
  return {
    topic: "battery",
    text:
      status === "usable"
        ? finding("battery-power", { ...known, power: crankingPower, may_charge: mayCharge })
        : finding(status === "frozen" ? "battery-frozen" : "battery-cut-off", known),
    cautions: eachOnce([...(mayBeFrozen ? [START_CAUTIONS.frozenBattery] : []), ...cautions]),
  };
}

function breatherNote(): StartNote {
  return {
    topic: "breather",
    text: finding("breather-iced", {}),
    cautions: [START_CAUTIONS.frozenBreather, START_CAUTIONS.groundRun],
  };
}

/** [s] without oil pressure after which the engine is stopped (START_CAUTIONS.noOilPressure). */
const TIME_NO_PRESSURE = 10;

function pressureFinding({ least, most }: OilPressureDelay): Finding {
  if (!Number.isFinite(most)) return finding("oil-pressure-never", {});
  return finding("oil-pressure-delay", { least_s: least, most_s: most, limit_s: TIME_NO_PRESSURE });
}

function crankingFinding({ status, speed, current, voltage }: CrankingTry): Finding {
  if (status === "stalls") return finding("starter-stalls", {});
  return finding(status === "turns" ? "starter-turns" : "starter-slow", {
    rpm: speed / RADIANS_PER_SECOND_OF_RPM,
    current_a: current,
    voltage_v: voltage,
  });
}
