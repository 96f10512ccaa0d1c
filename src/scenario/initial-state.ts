import type { PartName } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import type { InitialState } from "../simulation/index.js";
import { celsiusFromKelvin, SECONDS_OF_HOUR } from "../units/index.js";
import { type WeatherSeries, weatherAt } from "../weather/index.js";
import type { KnownFrom } from "./aircraft-scenario.js";
import { afterGroundRun } from "./ground-run.js";
import { heatedPast } from "./heated-past.js";
import { type SinceShutDown, sinceShutDown } from "./shut-down.js";
import type { StandingAircraft } from "./standing-aircraft.js";

/** [K] standard deviation of a temperature read off an instrument, and of one guessed from the air; project judgement. */
const READING_SD = 1;
const GUESS_SD = 3;
/** [s] how far back the coldest air counts for an engine nobody has read; project judgement. */
const LOOK_BACK = 6 * SECONDS_OF_HOUR;

/** What is known of the temperatures at the start. */
export interface KnownTemps {
  /** [K] */
  readonly temps: ReadonlyMap<PartName, number>;
  /** [K] of every part without its own. */
  readonly others?: number | undefined;
  /** [s] since it was shut down from cruise. */
  readonly shutDownAgo?: number | undefined;
  /** [s] of idling that end at the start. */
  readonly groundRun?: number | undefined;
  /** [kg/m2] */
  readonly snowOnCowl?: number | undefined;
  /** [K] standard deviation of all of them. */
  readonly sd?: number | undefined;
}

export function knownFrom({ temps, others, shutDownAgo, groundRun }: KnownTemps): KnownFrom {
  if (shutDownAgo !== undefined) return { from: "shut-down", ago: shutDownAgo };
  const isRead = temps.size > 0 || others !== undefined || groundRun !== undefined;
  return { from: isRead ? "readings" : "air" };
}

export interface StartOfRun {
  /** [s] since epoch */
  readonly start: number;
  /** [s] that the heaters on at the start have been on; undefined where nobody knows, or none is. */
  readonly heatedFor: number | undefined;
  /** The weather as far as it is known. */
  readonly weather: WeatherSeries;
}

/**
 * Temperatures at the start; what nobody read is taken from a shut-down, from the heat so far or from the air, with more
 * doubt. Undefined when the weather begins more than a day after the shut-down.
 */
export function initialStateOf(
  known: KnownTemps,
  aircraft: StandingAircraft,
  { start, heatedFor, weather }: StartOfRun,
  assumptions: Finding[],
): InitialState | undefined {
  const { configuration, site } = aircraft;
  const { others, shutDownAgo, groundRun = 0, snowOnCowl, sd: told } = known;
  const cooled = shutDownAgo === undefined ? undefined : sinceShutDown(shutDownAgo, start, aircraft, weather);
  if (shutDownAgo !== undefined && cooled === undefined) return undefined;
  if (cooled !== undefined) noteShutDown((shutDownAgo ?? 0) / SECONDS_OF_HOUR, cooled, assumptions);
  const past = heatedFor === undefined ? undefined : heatedPast(heatedFor, start, aircraft, weather);
  const isPlayed = past !== undefined && others === undefined && cooled === undefined;
  if (isPlayed) {
    assumptions.push(finding("parts-as-heated", { hours: (heatedFor ?? 0) / SECONDS_OF_HOUR }));
  }
  const temps = new Map<string, number>([...(isPlayed ? past.temps : (cooled?.temps ?? [])), ...known.temps]);
  const isInHangar = configuration.place === "hangar";
  const surroundings = isInHangar ? site.tempHangar : coldestAir(weather, start);
  if (others === undefined && cooled === undefined && !isPlayed) {
    assumptions.push(
      finding("parts-at-air", {
        air_c: celsiusFromKelvin(surroundings),
        of: temps.size === 0 ? "all" : "others",
        where: isInHangar ? "hangar" : "outside",
      }),
    );
  }
  const tempOthers = others ?? surroundings;
  const run =
    groundRun > 0
      ? afterGroundRun(groundRun, aircraft.installation, temps, tempOthers, airAt(weather, start))
      : undefined;
  if (run !== undefined) assumptions.push(run.said);
  const before = cooled?.sd ?? (others === undefined ? GUESS_SD : READING_SD);
  const sd = told ?? Math.max(before, run?.sd ?? 0);
  if (told === undefined) assumptions.push(finding("start-known-to", { sd_k: sd }));
  return {
    configuration,
    temps: run?.temps ?? temps,
    tempOthers,
    ...(heatedFor === undefined ? {} : { heatedFor }),
    ...(past === undefined ? {} : { wetFor: past.wetFor }),
    ...(snowOnCowl === undefined ? {} : { snowOnCowl }),
    sd,
  };
}

function noteShutDown(hours: number, { weatherHeld }: SinceShutDown, assumptions: Finding[]): void {
  assumptions.push(finding("shut-down-taken", { hours: Number(hours.toFixed(4)) }));
  if (weatherHeld) assumptions.push(finding("weather-held-back", {}));
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
