import type { Installation, Kit } from "../aircraft/index.js";
import type { Wish } from "../planning/index.js";
import { type StricterLimits, temperatureCriteria } from "../readiness/index.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import { type Clock, epochOfDeparture } from "./clock.js";
import { requireIds } from "./events-reading.js";
import { type Findings, fault } from "./reading.js";
import type { ScenarioSections } from "./scenario-schema.js";

/** Chance of being ready where none is asked for; project judgement. */
const USUAL_CHANCE = 0.9;
/** [min] to coil the lead, take the covers off, walk round and get in; project judgement. */
const USUAL_UNPLUG_BEFORE = 15;
const USUAL_COVER_OFF_BEFORE = 10;

/** A wish with the heaters to be used for it. */
export interface WishWithHeaters {
  readonly wish: Wish;
  readonly heaters: readonly string[];
}

export function wishOf(
  { want, hours }: ScenarioSections,
  kit: Kit | undefined,
  clock: Clock | undefined,
  findings: Findings,
): WishWithHeaters | undefined {
  if (want === undefined) return undefined;
  if (want.heaters !== undefined && kit !== undefined) {
    requireIds(want.heaters, kit.heaters, ["want", "heaters"], "kit.heaters", findings);
  }
  if (clock === undefined) return undefined;
  const epoch = epochOfDeparture(want.departure, ["want", "departure"], clock, findings);
  if (epoch === undefined) return undefined;
  const departure = epoch - clock.start;
  if (!(departure > 0 && epoch <= clock.end)) {
    fault(findings, ["want", "departure"], `a time within the scenario's ${hours} h`, want.departure);
  }
  const { assumptions } = findings;
  const heaters = want.heaters ?? kit?.heaters.map((h) => h.id) ?? [];
  if (want.heaters === undefined && heaters.length > 1) {
    assumptions.push(`All heaters of the kit are used together: ${heaters.join(", ")}.`);
  }
  const chance = want.chance ?? USUAL_CHANCE;
  if (want.chance === undefined) assumptions.push(`Wanted chance of being ready: ${percent(chance)}.`);
  const unplugBefore = minutes("unplug_before_min", want.unplug_before_min, USUAL_UNPLUG_BEFORE);
  const usualCoverOff = Math.min(USUAL_COVER_OFF_BEFORE, unplugBefore / SECONDS_OF_MINUTE);
  const coverOffBefore = minutes("cover_off_before_min", want.cover_off_before_min, usualCoverOff);
  if (coverOffBefore > unplugBefore) {
    const expected = `${unplugBefore / SECONDS_OF_MINUTE} or less: covers come off after unplugging`;
    fault(findings, ["want", "cover_off_before_min"], expected, want.cover_off_before_min);
  }
  return {
    wish: { departure, chance, unplugBefore, coverOffBefore, pulledOut: want.pulled_out ?? false },
    heaters,
  };

  function minutes(key: string, given: number | undefined, usual: number): number {
    const value = given ?? Math.min(usual, Math.floor(Math.max(0, departure) / SECONDS_OF_MINUTE / 2));
    if (given === undefined) {
      const what = key === "unplug_before_min" ? "The heater is unplugged" : "Covers come off";
      assumptions.push(`${what} ${value} min before the start.`);
    }
    if (departure > 0 && value * SECONDS_OF_MINUTE >= departure) {
      const most = (departure / SECONDS_OF_HOUR).toFixed(1);
      fault(findings, ["want", key], `less than the ${most} h until departure`, value);
    }
    return value * SECONDS_OF_MINUTE;
  }
}

/** The owner's limits; a laxer one than the maker's is refused. */
export function limitsOf(
  { limits }: ScenarioSections,
  installation: Installation | undefined,
  findings: Findings,
): StricterLimits {
  if (limits === undefined || installation === undefined) return {};
  const maker = installation.limits.no_preheat_c;
  const engine = limits.engine_at_least_c;
  const oil = limits.oil_at_least_c;
  const evenness = limits.evenness_at_most_k;
  const laxest = evennessLimit(installation);
  if (engine !== undefined && engine < maker) {
    fault(
      findings,
      ["limits", "engine_at_least_c"],
      `${maker} or more, the maker's limit: ${OVERRIDE}`,
      engine,
    );
  }
  const oilLeast = Math.max(maker, engine ?? maker);
  if (oil !== undefined && oil < oilLeast) {
    fault(
      findings,
      ["limits", "oil_at_least_c"],
      `${oilLeast} or more, the engine's limit: ${OVERRIDE}`,
      oil,
    );
  }
  if (evenness !== undefined && evenness > laxest) {
    fault(
      findings,
      ["limits", "evenness_at_most_k"],
      `${laxest} or less, the usual limit: ${OVERRIDE}`,
      evenness,
    );
  }
  return {
    ...(engine === undefined ? {} : { engineAtLeast: kelvinFromCelsius(engine) }),
    ...(oil === undefined ? {} : { oilAtLeast: kelvinFromCelsius(oil) }),
    ...(evenness === undefined ? {} : { evennessAtMost: evenness }),
    ...(limits.warm_through_c === undefined ? {} : { warmThrough: kelvinFromCelsius(limits.warm_through_c) }),
  };
}

const OVERRIDE = "a laxer limit needs a named override, which this version does not take";

function evennessLimit(installation: Installation): number {
  const criteria = temperatureCriteria(installation, { heaters: [], covers: [] });
  return criteria.find((c) => c.id === "evenness")?.limit ?? Number.POSITIVE_INFINITY;
}

function percent(share: number): string {
  return `${Number((share * 100).toFixed(1))} %`;
}
