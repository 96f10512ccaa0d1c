import type { Caution } from "../aircraft/index.js";
import type {
  KitCaseDocument,
  KitChoice,
  KitComparisonDocument,
  PlanDocument,
  ReadKitComparison,
} from "../documents/index.js";
import { eachOnce } from "../findings/index.js";
import { posteriorFor } from "../learning/index.js";
import { type Band, bandOf } from "../numerics/index.js";
import { allCriteria } from "../readiness/index.js";
import { caseGeometry, caseMoisture, WATER_IN_OIL_WINTER } from "../starting/index.js";
import { celsiusFromKelvin, SECONDS_OF_HOUR } from "../units/index.js";
import { type ColdCase, createColdCase, STEADY } from "./cold-case.js";
import { attendedCost, energyCost } from "./costs.js";
import { firstCautions } from "./first-cautions.js";
import { barsOf, rejectionsOf, unplugBeforeOf } from "./heater-limits.js";
import { triedLeads } from "./lead-table.js";
import { leastLead } from "./least-lead.js";
import { kitAnswer, rankKits } from "./ranking.js";
import { kitHeader, roundedTo } from "./study-header.js";
import { attendedTime } from "./switching.js";

/** [h] of heating tried: to a quarter, half or whole hour. */
const HEATING = Array.from({ length: 97 }, (_, i) => i / 4).filter(
  (h) => h > 0 && (h <= 4 || (h <= 12 && 2 * h === Math.round(2 * h)) || h === Math.round(h)),
);

/** [K] so that a case judged twice comes to the same chance. */
const TOLERANCE = 0.02;

/** One kit in all cold cases; none where it may not be used. */
export function kitInTheCold(read: ReadKitComparison, choice: KitChoice): KitCaseDocument[] {
  const { installation, place, site, limits, cases, ensemble, coverOffBefore } = read;
  const { kit } = choice;
  if (barsOf(kit, read).length > 0) return [];
  const unplugBefore = unplugBeforeOf(kit, read.unplugBefore);
  const tried = triedLeads(kit, unplugBefore, HEATING);
  // Without a heater the only question is whether it is ready as it stands: nothing is tried.
  const leads = tried.length === 0 ? [unplugBefore + SECONDS_OF_HOUR] : tried;
  const setting = { place, covers: kit.covers.map(({ id }) => id).sort() };
  const heaters = kit.heaters.map(({ id }) => id);
  const request = {
    ...{ installation, kit, place, site, leads, unplugBefore, coverOffBefore },
    criteria: allCriteria(installation, kit, limits),
    age: undefined,
    tolerance: TOLERANCE,
    ensemble: {
      ...ensemble,
      posterior: read.learned === undefined ? undefined : posteriorFor(read.learned, { setting, heaters }),
    },
  };
  return cases.map(({ tempAir, windSpeed }) => {
    const cold = createColdCase(request, { tempAir, windSpeed });
    const { index, aim } = leastLead(cold, tried, read.chance);
    const { chance, tooHot, warm, weakest } = cold.verdict(index);
    const { criterion } = aim === "least" ? weakest : warm.weakest;
    const surface = index < 0 ? new Float64Array() : cold.hottestSurface(index);
    const on = index < 0 ? 0 : leads[index]! - unplugBefore;
    const attended = attendedTime(choice, on);
    const moisture = wetTimes(read, cold, index, tempAir);
    return {
      air_c: roundedTo(celsiusFromKelvin(tempAir), 1),
      wind_mps: windSpeed,
      status: statusOf(index, chance, read.chance),
      aim,
      lead_h: index < 0 ? null : roundedTo(leads[index]! / SECONDS_OF_HOUR, 4),
      chance: roundedTo(chance, 4),
      warm_chance: roundedTo(warm.chance, 4),
      weakest: criterion.id,
      weakest_title: criterion.title,
      energy_kwh: rounded(bandOf(cold.energy(index).slice(1)), 2, 3.6e6),
      attended_h: roundedTo(attended / SECONDS_OF_HOUR, 2),
      cost: costOfStart(read, cold, index, attended),
      hottest_surface_c: surface.length === 0 ? null : rounded(bandOf(surface.map(celsiusFromKelvin)), 0),
      hottest_film_c: rounded(bandOf(cold.hottestFilm(index).map(celsiusFromKelvin)), 0),
      too_hot: tooHot.map(({ criterion }) => criterion.id),
      wet_h: moisture === null ? null : roundedTo(moisture.wet / SECONDS_OF_HOUR, 1),
      frost_h: moisture === null ? null : roundedTo(moisture.frosted / SECONDS_OF_HOUR, 1),
    };
  });
}

function statusOf(index: number, chance: number, wanted: number): KitCaseDocument["status"] {
  if (chance < wanted) return "not-reached";
  return index < 0 ? "not-required" : "ready";
}

/** Money of one start, middle estimate. @param attended [s] */
function costOfStart(
  { prices }: ReadKitComparison,
  cold: ColdCase,
  index: number,
  attended: number,
): KitCaseDocument["cost"] {
  const [all, burnt] = [cold.energy(index)[0]!, cold.fuel(index)[0]!];
  const energy = energyCost(all - burnt, burnt, prices);
  const time = attendedCost(attended, prices);
  return {
    energy: energy === undefined ? null : roundedTo(energy, 2),
    attended: roundedTo(time, 2),
    all: energy === undefined ? null : roundedTo(energy + time, 2),
  };
}

export function kitComparison(
  read: ReadKitComparison,
  results: readonly { readonly cases: readonly KitCaseDocument[]; readonly tonight: PlanDocument | null }[],
): KitComparisonDocument {
  const { name, installation, kits, ensemble, chance, prices, assumptions, warnings } = read;
  const cautions: Caution[] = kits.flatMap(({ kit }) =>
    [...kit.heaters, ...kit.covers].flatMap((piece) => piece.cautions),
  );
  const entries = kits.map((choice, k) => ({
    ...kitHeader(choice, read),
    not_advised: rejectionsOf(choice.kit),
    tonight: results[k]!.tonight,
    cases: [...results[k]!.cases],
  }));
  const ranking = rankKits(entries);
  return {
    soakline: 2,
    kind: "kit-comparison",
    name,
    aircraft: { id: installation.id, name: installation.name },
    members: ensemble.members,
    wanted_chance: chance,
    currency: prices.currency,
    attended_per_h: prices.attended,
    kits: entries,
    ranking,
    first_cautions: firstCautions(
      kits[ranking[0] ?? -1]?.kit,
      kits.map(({ kit }) => kit),
    ),
    answer: kitAnswer(entries, ranking),
    assumptions: [...assumptions],
    warnings: [...warnings],
    cautions: eachOnce(cautions),
  };
}

/** [s] that the middle aircraft's inner walls are wet or frosted from plug-in to unplugging, of the wall wet longest. */
function wetTimes(
  { installation, place, site }: ReadKitComparison,
  cold: ColdCase,
  index: number,
  tempAir: number,
): { readonly wet: number; readonly frosted: number } | null {
  if (index < 0) return null;
  const course = cold.middleCourse(index);
  const geometry = caseGeometry(installation);
  const steady = (value: number) => new Float64Array(course.time.length).fill(value);
  const water = { inOil: WATER_IN_OIL_WINTER * geometry.oilMass, onSurfaces: 0 };
  const around = place === "hangar" ? site.tempHangar : tempAir;
  const outside = { tempAir: steady(around), tempDewPoint: steady(around - STEADY.depression) };
  const { wetTimeMost, frostTimeMost } = caseMoisture(geometry, course, outside, water);
  return { wet: wetTimeMost, frosted: frostTimeMost };
}

function rounded({ low, mid, high }: Band, digits: number, unit = 1) {
  return {
    p05: roundedTo(low / unit, digits),
    p50: roundedTo(mid / unit, digits),
    p95: roundedTo(high / unit, digits),
  };
}
