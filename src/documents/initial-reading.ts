import type { PartName } from "../aircraft/index.js";
import type { InitialState } from "../simulation/index.js";
import { celsiusFromKelvin, kelvinFromCelsius, SECONDS_OF_HOUR } from "../units/index.js";
import { type WeatherSeries, weatherAt } from "../weather/index.js";
import type { Clock } from "./clock.js";
import { afterGroundRun } from "./ground-run-reading.js";
import { heatedPast } from "./heated-past.js";
import { type Findings, fault } from "./reading.js";
import type { ScenarioDocument, ScenarioSections } from "./scenario-schema.js";
import { type SinceShutDown, sinceShutDown } from "./shut-down-reading.js";
import type { StandingAircraft } from "./standing-aircraft.js";

/** [K] standard deviation of a temperature read off an instrument, and of one guessed from the air; project judgement. */
const READING_SD = 1;
const GUESS_SD = 3;
/** [s] how far back the coldest air counts for an engine nobody has read; project judgement. */
const LOOK_BACK = 6 * SECONDS_OF_HOUR;

type InitialKey = Exclude<
  keyof NonNullable<ScenarioDocument["initial"]>,
  "all_c" | "shut_down_h_ago" | "ground_run_min" | "snow_on_cowl_kg_m2" | "uncertainty_k"
>;

const PARTS_OF_KEY: Readonly<Record<InitialKey, readonly PartName[]>> = {
  sump_c: ["sump"],
  oil_c: ["oil"],
  crankcase_c: ["crankcase"],
  crankshaft_c: ["crankshaft"],
  cylinders_c: ["barrels"],
  heads_c: ["heads_front", "heads_rear"],
  accessories_c: ["accessories"],
  hub_c: ["hub"],
  cowl_air_c: ["cowl_air"],
  cowl_skin_c: ["cowl_skin"],
  battery_c: ["battery"],
  coolant_c: ["coolant"],
};

/** Temperatures at the start; what nobody read is taken from the air, with more doubt. */
export function initialStateOf(
  { initial = {}, hangar }: ScenarioSections,
  aircraft: StandingAircraft,
  weather: WeatherSeries,
  clock: Clock,
  findings: Findings,
  heatedFor?: number,
): InitialState {
  const { configuration } = aircraft;
  const { all_c, shut_down_h_ago, ground_run_min = 0, snow_on_cowl_kg_m2, uncertainty_k } = initial;
  if (all_c !== undefined && shut_down_h_ago !== undefined) {
    const expected = "either all_c or shut_down_h_ago, not both";
    fault(findings, ["initial"], expected, { all_c, shut_down_h_ago });
  }
  const cooled =
    shut_down_h_ago === undefined ? undefined : shutDown(shut_down_h_ago, aircraft, weather, clock, findings);
  const past = heatedFor === undefined ? undefined : heatedPast(heatedFor, clock.start, aircraft, weather);
  const isPlayed = past !== undefined && all_c === undefined && cooled === undefined;
  const temps = new Map<string, number>(isPlayed ? past.temps : cooled?.temps);
  if (isPlayed) {
    findings.assumptions.push(
      `Parts without a reading are taken as heated for ${((heatedFor ?? 0) / SECONDS_OF_HOUR).toFixed(1)} h from cold, under the weather that is known.`,
    );
  }
  for (const [key, parts] of Object.entries(PARTS_OF_KEY)) {
    const celsius = initial[key as InitialKey];
    if (celsius !== undefined) for (const part of parts) temps.set(part, kelvinFromCelsius(celsius));
  }
  const inHangar = configuration.place === "hangar" && hangar !== undefined;
  const surroundings = inHangar ? kelvinFromCelsius(hangar.air_c) : coldestAir(weather, clock.start);
  if (all_c === undefined && cooled === undefined && !isPlayed) {
    const what =
      temps.size === 0
        ? "No temperature of the engine is given: all parts are"
        : "Parts without a reading are";
    const where = inHangar
      ? "the hangar's air"
      : "the coldest air of the 6 h before the start that the weather knows";
    findings.assumptions.push(`${what} taken at ${celsiusFromKelvin(surroundings).toFixed(1)} °C, ${where}.`);
  }
  const tempOthers = all_c === undefined ? surroundings : kelvinFromCelsius(all_c);
  const before = cooled?.sd ?? (all_c === undefined ? GUESS_SD : READING_SD);
  const run =
    ground_run_min > 0
      ? afterGroundRun(ground_run_min, aircraft.installation, temps, tempOthers, airAt(weather, clock.start))
      : undefined;
  if (run !== undefined) findings.assumptions.push(run.text);
  const sd = uncertainty_k ?? Math.max(before, run?.sd ?? 0);
  if (uncertainty_k === undefined) {
    findings.assumptions.push(
      `Temperatures at the start are taken as known to ±${sd.toFixed(0)} K (standard deviation).`,
    );
  }
  return {
    configuration,
    temps: run?.temps ?? temps,
    tempOthers,
    ...(heatedFor === undefined ? {} : { heatedFor }),
    ...(past === undefined ? {} : { wetFor: past.wetFor }),
    ...(snow_on_cowl_kg_m2 === undefined ? {} : { snowOnCowl: snow_on_cowl_kg_m2 }),
    sd,
  };
}

function shutDown(
  hours: number,
  aircraft: Parameters<typeof initialStateOf>[1],
  weather: WeatherSeries,
  clock: Clock,
  findings: Findings,
): SinceShutDown | undefined {
  const cooled = sinceShutDown(hours, clock.start, aircraft, weather);
  if (cooled === undefined) {
    const expected = "a shut-down no more than a day before the weather begins";
    return fault(findings, ["initial", "shut_down_h_ago"], expected, hours);
  }
  findings.assumptions.push(
    `The engine is taken as shut down from cruise ${hours} h before the start, with temperatures typical of its class, and as cooled since where it stands now.`,
  );
  if (cooled.weatherHeld) {
    findings.assumptions.push(
      "The weather begins after the shut-down: its first values are held back to it.",
    );
  }
  return cooled;
}

/** [K] at the start and over the hours before it, as far as the weather reaches. */
function coldestAir(weather: WeatherSeries, start: number): number {
  const { time, tempAir } = weather;
  const before = tempAir.filter((_, k) => time[k] >= start - LOOK_BACK && time[k] <= start);
  return Math.min(airAt(weather, start), ...before);
}

/** [K] or the nearest the weather knows. */
function airAt(weather: WeatherSeries, at: number): number {
  const { time } = weather;
  return weatherAt(weather, Math.min(Math.max(at, time[0]), time[time.length - 1])).tempAir;
}
