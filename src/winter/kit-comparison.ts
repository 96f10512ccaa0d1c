import type {
  KitChoice,
  KitComparisonDocument,
  PlanDocument,
  ReadKitComparison,
} from "../documents/index.js";
import { posteriorFor } from "../learning/index.js";
import { type Band, bandOf } from "../numerics/index.js";
import { allCriteria } from "../readiness/index.js";
import { caseGeometry, caseMoisture, WATER_IN_OIL_WINTER } from "../starting/index.js";
import { celsiusFromKelvin, SECONDS_OF_HOUR } from "../units/index.js";
import { createLeadCases, type LeadCases, STEADY } from "./lead-cases.js";
import { leastLeads } from "./lead-search.js";
import { triedLeads } from "./lead-table.js";
import { kitText, roundedTo } from "./study-header.js";

type KitResult = KitComparisonDocument["kits"][number];
type CaseResult = KitResult["cases"][number];

/** One kit in all cold cases. */
export function kitInTheCold(read: ReadKitComparison, choice: KitChoice): CaseResult[] {
  const { installation, place, site, limits, cases, ensemble, unplugBefore, coverOffBefore } = read;
  const { kit } = choice;
  const tried = triedLeads(kit.heaters, unplugBefore);
  // Without a heater the only question is whether it is ready as it stands.
  const leads = tried.length === 0 ? [unplugBefore + SECONDS_OF_HOUR] : tried;
  const setting = { place, covers: kit.covers.map(({ id }) => id).sort() };
  const heaters = kit.heaters.map(({ id }) => id);
  const lead = createLeadCases({
    ...{ installation, kit, place, site, cases, leads, unplugBefore, coverOffBefore },
    criteria: allCriteria(installation, kit, limits),
    age: undefined,
    ensemble: {
      ...ensemble,
      posterior: read.learned === undefined ? undefined : posteriorFor(read.learned, { setting, heaters }),
    },
  });
  const found = leastLeads(lead, leads, read.chance);
  const indices = found.map(({ index }) => (tried.length === 0 ? -1 : index));
  const verdicts = lead.verdictAt(indices);
  return cases.map(({ tempAir, windSpeed }, c) => {
    const index = indices[c]!;
    const { weakest, chance, tooHot } = verdicts[c]!;
    const surface = index < 0 ? new Float64Array() : lead.hottestSurface(c, index).subarray(1);
    return {
      air_c: roundedTo(celsiusFromKelvin(tempAir), 1),
      wind_mps: windSpeed,
      reached: chance >= read.chance,
      lead_h: index < 0 ? null : roundedTo(found[c]!.lead / SECONDS_OF_HOUR, 2),
      chance: roundedTo(chance, 4),
      weakest: weakest.criterion.id,
      weakest_title: weakest.criterion.title,
      energy_kwh: rounded(bandOf(lead.energy(c, index).slice(1)), 2, 3.6e6),
      hottest_surface_c: surface.length === 0 ? null : rounded(bandOf(surface.map(celsiusFromKelvin)), 0),
      hottest_film_c: rounded(bandOf(lead.hottestFilm(c, index).slice(1).map(celsiusFromKelvin)), 0),
      too_hot: tooHot.map(({ criterion }) => criterion.id),
      wet_h: roundedTo(wetTime(read, lead, c, index, tempAir) / SECONDS_OF_HOUR, 1),
    };
  });
}

export function kitComparison(
  read: ReadKitComparison,
  results: readonly { readonly cases: readonly CaseResult[]; readonly tonight: PlanDocument | null }[],
): KitComparisonDocument {
  const { name, installation, kits, ensemble, chance, prices, assumptions, warnings } = read;
  const cautions = kits.flatMap(({ kit }) =>
    [...kit.heaters, ...kit.covers].flatMap((piece) => piece.cautions),
  );
  return {
    soakline: 2,
    kind: "kit-comparison",
    name,
    aircraft: { id: installation.id, name: installation.name },
    members: ensemble.members,
    wanted_chance: chance,
    currency: prices.currency,
    kits: kits.map((choice, k) => ({
      ...kitText(choice),
      attended: choice.kit.heaters.some(({ attended }) => attended),
      longest_on_h:
        choice.kit.heaters.length === 0
          ? null
          : Math.min(...choice.kit.heaters.map(({ longest_on_h }) => longest_on_h)),
      tonight: results[k]!.tonight,
      cases: [...results[k]!.cases],
    })),
    assumptions: [...assumptions],
    warnings: [...warnings],
    cautions: cautions
      .filter(({ text }, i) => cautions.findIndex((other) => other.text === text) === i)
      .map(({ text, source }) => ({ text, source })),
  };
}

/** [s] that the middle aircraft's inner walls are wet from plug-in to unplugging, of the wall wet longest. */
function wetTime(
  { installation }: ReadKitComparison,
  lead: LeadCases,
  c: number,
  index: number,
  tempAir: number,
): number {
  if (index < 0) return 0;
  const course = lead.middleCourse(c, index);
  if (course.time.length < 2) return 0;
  const geometry = caseGeometry(installation);
  const steady = (value: number) => new Float64Array(course.time.length).fill(value);
  const water = { inOil: WATER_IN_OIL_WINTER * geometry.oilMass, onSurfaces: 0 };
  const outside = { tempAir: steady(tempAir), tempDewPoint: steady(tempAir - STEADY.depression) };
  return caseMoisture(geometry, course, outside, water).wetTimeMost;
}

function rounded({ low, mid, high }: Band, digits: number, unit = 1) {
  return {
    p05: roundedTo(low / unit, digits),
    p50: roundedTo(mid / unit, digits),
    p95: roundedTo(high / unit, digits),
  };
}
