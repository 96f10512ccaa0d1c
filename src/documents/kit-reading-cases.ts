import type { Configuration, Installation } from "../aircraft/index.js";
import { type Finding, finding, keyOf } from "../findings/index.js";
import type { FittedAircraft } from "../learning/index.js";
import type { StricterLimits } from "../readiness/index.js";
import type { Site } from "../simulation/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import { inFormOfKind } from "./current-form.js";
import type { DocumentIssue } from "./issue.js";
import { handlingBefore, type KitChoice, kitChoicesOf, type Prices, pricesOf } from "./kit-choice-reading.js";
import { installationOf } from "./kit-reading.js";
import { learnedOf } from "./learned-reading.js";
import { fault, type Notes, newNotes, type Reading, sectionsBy } from "./reading.js";
import { readScenarioDocument, standingSite } from "./scenario-reading.js";
import type { ReadFile } from "./weather-sources/index.js";
import { type KitDocument, type KitSections, kitSchema } from "./winter-schema.js";
import { limitsOf } from "./wish-reading.js";

/** Weather that holds all night, after a cold soak in it. */
interface ColdCase {
  /** [K] */
  readonly tempAir: number;
  /** [m/s] at 10 m */
  readonly windSpeed: number;
}

/** A kit comparison as read from its document, with all that was assumed on the way. */
export interface ReadKitComparison {
  readonly document: KitDocument;
  readonly name: string;
  readonly installation: Installation;
  readonly learned: FittedAircraft | undefined;
  readonly place: Configuration["place"];
  readonly site: Site;
  readonly limits: StricterLimits;
  readonly kits: readonly KitChoice[];
  readonly cases: readonly ColdCase[];
  readonly chance: number;
  readonly unplugBefore: number;
  readonly coverOffBefore: number;
  readonly prices: Prices;
  readonly ensemble: { readonly members: number; readonly seed: number };
  /** Scenario documents of the night, one a kit; empty without a night. */
  readonly nights: readonly object[];
  readonly assumptions: readonly Finding[];
  readonly warnings: readonly DocumentIssue[];
}

export type KitComparisonReading = Reading<ReadKitComparison>;

const USUAL_CASES: NonNullable<KitDocument["cases"]> = [-10, -20, -30, -40].flatMap((air_c) =>
  [0, 5].map((wind_mps) => ({ air_c, wind_mps })),
);
const USUAL_CHANCE = 0.9;
/** Chances of the cases are known to 4 %. */
const USUAL_MEMBERS = 60;
const USUAL_SEED = 1;

/** Reads a kit document, as text or as a value. Every fault is named at once. */
export function readKitDocument(
  source: unknown,
  { readFile }: { readonly readFile?: ReadFile } = {},
): KitComparisonReading {
  const form = inFormOfKind("kit", source);
  if (!form.ok) return { ok: false, issues: [form.issue] };
  const notes = newNotes();
  const sections = sectionsBy(kitSchema, form.document, notes);
  const { aircraft, learned: told, limits: stricter } = sections;
  const installation = installationOf(aircraft === undefined ? {} : { aircraft }, notes);
  const learned = learnedOf(told === undefined ? {} : { learned: told }, installation, readFile, notes);
  const kits = kitChoicesOf(sections, installation, notes);
  const limits = limitsOf(stricter === undefined ? {} : { limits: stricter }, installation, notes);
  const site = standingSite(sections, notes);
  const handling = handlingBefore(sections, notes);
  const { members = USUAL_MEMBERS, seed = USUAL_SEED } = sections.ensemble ?? {};
  const chance = sections.chance ?? USUAL_CHANCE;
  if (sections.chance === undefined) notes.assumptions.push(finding("chance-taken", { chance }));
  const nights = notes.issues.length === 0 ? nightsOf(sections, kits, chance, readFile, notes) : [];
  if (notes.issues.length > 0) return { ok: false, issues: notes.issues };
  if (installation === undefined) throw new Error("a section of the document was refused without an issue");
  notes.assumptions.push(finding("cold-cases-taken", {}));
  const document = sections as KitDocument;
  return {
    ok: true,
    ...{ document, installation, learned, kits, limits, site, chance, nights },
    name: document.name,
    place: document.place,
    cases: (document.cases ?? USUAL_CASES).map(({ air_c, wind_mps }) => ({
      tempAir: kelvinFromCelsius(air_c),
      windSpeed: wind_mps,
    })),
    ...handling,
    prices: pricesOf(sections, notes),
    ensemble: { members, seed },
    assumptions: notes.assumptions,
    warnings: notes.warnings,
  };
}

/** The same night with each of the kits, its covers on from the start. */
function nightsOf(
  sections: KitSections,
  kits: readonly KitChoice[],
  chance: number,
  readFile: ReadFile | undefined,
  notes: Notes,
): object[] {
  const { tonight } = sections;
  if (tonight === undefined) return [];
  const { departure, pulled_out, ...night } = tonight;
  const { soakline, aircraft, learned, zone, place, hangar, site, limits, ensemble } = sections;
  const common = { soakline, aircraft, learned, zone, place, hangar, site, limits, ensemble };
  const given = Object.fromEntries(Object.entries(common).filter(([, value]) => value !== undefined));
  const want = {
    ...{ departure, chance },
    ...(sections.unplug_before_min === undefined ? {} : { unplug_before_min: sections.unplug_before_min }),
    ...(sections.cover_off_before_min === undefined
      ? {}
      : { cover_off_before_min: sections.cover_off_before_min }),
    ...(pulled_out === undefined ? {} : { pulled_out }),
  };
  const documents = kits.map(({ name, kit }) => ({
    ...given,
    ...night,
    name,
    kit: { heaters: kit.heaters, covers: kit.covers },
    fitted: { covers: kit.covers.map(({ id }) => id) },
    want: { ...want, heaters: kit.heaters.map(({ id }) => id) },
  }));
  const [first] = documents;
  if (first === undefined) return [];
  const reading = readScenarioDocument(first, readFile === undefined ? {} : { readFile });
  if (reading.ok) {
    const known = new Set(notes.assumptions.map(keyOf));
    notes.assumptions.push(...reading.assumptions.filter((one) => !known.has(keyOf(one))));
    notes.warnings.push(...reading.warnings);
    return documents;
  }
  for (const issue of reading.issues) {
    const path = issue.path.replace(/^want\./, "");
    notes.issues.push({ ...issue, path: `tonight.${path}` });
  }
  if (notes.issues.length === 0) fault(notes, ["tonight"], "a night that can be planned", tonight);
  return [];
}
