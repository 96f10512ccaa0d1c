import type { Installation, Kit } from "../aircraft/index.js";
import { type StricterLimits, temperatureCriteria } from "../readiness/index.js";
import { type WishWithHeaters, wishOf } from "../scenario/index.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import { type Clock, epochOfDeparture } from "./clock.js";
import { requireIds } from "./events-reading.js";
import { fault, type Notes } from "./reading.js";
import type { ScenarioSections } from "./scenario-schema.js";

/** What a document wants, if anything; every time of it has to lie within the scenario. */
export function wantOf(
  { want, hours }: ScenarioSections,
  kit: Kit | undefined,
  clock: Clock | undefined,
  notes: Notes,
): WishWithHeaters | undefined {
  if (want === undefined) return undefined;
  if (want.heaters !== undefined && kit !== undefined) {
    requireIds(want.heaters, kit.heaters, ["want", "heaters"], "kit.heaters", notes);
  }
  if (clock === undefined) return undefined;
  const epoch = epochOfDeparture(want.departure, ["want", "departure"], clock, notes);
  if (epoch === undefined) return undefined;
  const departure = epoch - clock.start;
  if (!(departure > 0 && epoch <= clock.end)) {
    fault(notes, ["want", "departure"], `a time within the scenario's ${hours} h`, want.departure);
  }
  const given = {
    departure,
    chance: want.chance,
    heaters: want.heaters,
    unplugBefore: want.unplug_before_min,
    coverOffBefore: want.cover_off_before_min,
    pulledOut: want.pulled_out,
  };
  const found = wishOf(given, kit ?? { heaters: [], covers: [] }, notes.assumptions);
  const { unplugBefore, coverOffBefore } = found.wish;
  const most = (departure / SECONDS_OF_HOUR).toFixed(1);
  for (const [key, value] of Object.entries({
    unplug_before_min: unplugBefore,
    cover_off_before_min: coverOffBefore,
  })) {
    if (departure > 0 && value >= departure) {
      fault(notes, ["want", key], `less than the ${most} h until departure`, value / SECONDS_OF_MINUTE);
    }
  }
  if (coverOffBefore > unplugBefore) {
    const expected = `${unplugBefore / SECONDS_OF_MINUTE} or less: covers come off after unplugging`;
    fault(notes, ["want", "cover_off_before_min"], expected, want.cover_off_before_min);
  }
  return found;
}

/** The owner's limits; a laxer one than the maker's is refused. */
export function limitsOf(
  { limits }: Pick<ScenarioSections, "limits">,
  installation: Installation | undefined,
  notes: Notes,
): StricterLimits {
  if (limits === undefined || installation === undefined) return {};
  const maker = installation.limits.no_preheat_c;
  const engine = limits.engine_at_least_c;
  const oil = limits.oil_at_least_c;
  const evenness = limits.evenness_at_most_k;
  const laxest = evennessLimit(installation);
  const refuse = (key: keyof typeof limits, expected: string) =>
    fault(notes, ["limits", key], `${expected}: ${OVERRIDE}`, limits[key]);
  if (engine !== undefined && engine < maker) {
    refuse("engine_at_least_c", `${maker} or more, the maker's limit`);
  }
  const oilLeast = Math.max(maker, engine ?? maker);
  if (oil !== undefined && oil < oilLeast) {
    refuse("oil_at_least_c", `${oilLeast} or more, the engine's limit`);
  }
  if (evenness !== undefined && evenness > laxest) {
    refuse("evenness_at_most_k", `${laxest} or less, the usual limit`);
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
