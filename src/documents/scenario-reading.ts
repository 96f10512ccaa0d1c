import type { FittedAircraft } from "../learning/index.js";
import type { StricterLimits } from "../readiness/index.js";
import type { Scenario, Site } from "../simulation/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import { clockOf } from "./clock.js";
import { inCurrentForm } from "./current-form.js";
import { eventsOf, heatedForOf, refuseIndoors, startConfiguration, warnLongestOn } from "./events-reading.js";
import { initialStateOf } from "./initial-reading.js";
import type { DocumentIssue } from "./issue.js";
import { jsonOf } from "./json.js";
import { installationOf, kitOf } from "./kit-reading.js";
import { learnedOf } from "./learned-reading.js";
import { type Findings, fault, newFindings, sectionsOf } from "./reading.js";
import type { ScenarioDocument, ScenarioSections } from "./scenario-schema.js";
import { weatherOf } from "./weather-reading.js";
import type { ReadFile } from "./weather-sources.js";
import { limitsOf, type WishWithHeaters, wishOf } from "./wish-reading.js";

/** A scenario as read from its document, with all that was assumed on the way. */
export interface ReadScenario {
  readonly document: ScenarioDocument;
  readonly name: string;
  /** IANA zone, or fixed offset, in which times are shown. */
  readonly zone: string;
  readonly scenario: Scenario;
  /** Undefined when the document wants nothing. */
  readonly want: WishWithHeaters | undefined;
  readonly limits: StricterLimits;
  /** Whether a battery is in the aircraft. */
  readonly batteryFitted: boolean;
  /** What was learned of this aircraft; undefined where it is the catalogue's. */
  readonly learned: FittedAircraft | undefined;
  readonly ensemble: { readonly members: number; readonly seed: number };
  /** In plain words: what the document left open and what was taken. */
  readonly assumptions: readonly string[];
  /** Doubts about the sources that did not keep them from being used. */
  readonly warnings: readonly DocumentIssue[];
}

export type ScenarioReading =
  | ({ readonly ok: true } & ReadScenario)
  | { readonly ok: false; readonly issues: readonly DocumentIssue[] };

/**
 * Reads a scenario document, as text or as a value, of this or any earlier version. Every fault is named at once; what
 * the document leaves open is listed among the assumptions.
 * @param readFile gives the text of weather files that the document names
 */
export function readScenarioDocument(
  source: unknown,
  { readFile }: { readonly readFile?: ReadFile } = {},
): ScenarioReading {
  const json = jsonOf(source);
  if (!json.ok) return { ok: false, issues: [json.issue] };
  const form = inCurrentForm(json.value);
  if (!form.ok) return { ok: false, issues: [form.issue] };
  const findings = newFindings();
  const sections = sectionsOf(form.document, findings);
  const clock = clockOf(sections, findings);
  const installation = installationOf(sections, findings);
  const learned = learnedOf(sections, installation, readFile, findings);
  const kit = kitOf(sections, installation, findings);
  const configuration = startConfiguration(sections, kit, findings);
  const weather = weatherOf(sections, clock, readFile, findings);
  const events = eventsOf(sections, kit, clock, findings);
  const want = wishOf(sections, kit, clock, findings);
  const limits = limitsOf(sections, installation, findings);
  const site = siteOf(sections, findings);
  const ensemble = ensembleOf(sections, findings);
  if (findings.issues.length > 0) return { ok: false, issues: findings.issues };
  if (
    clock === undefined ||
    installation === undefined ||
    kit === undefined ||
    configuration === undefined ||
    weather === undefined
  ) {
    throw new Error("a section of the document was refused without an issue");
  }
  const duration = clock.end - clock.start;
  warnLongestOn(kit, configuration, events, duration, findings);
  refuseIndoors(kit, configuration, events, findings);
  const heatedFor = heatedForOf(sections, clock, findings);
  const document = sections as ScenarioDocument;
  const initial = initialStateOf(
    sections,
    { installation, kit, configuration, site },
    weather.whole,
    clock,
    findings,
    heatedFor,
  );
  if (findings.issues.length > 0) return { ok: false, issues: findings.issues };
  return {
    ok: true,
    document,
    name: document.name,
    zone: clock.zone,
    scenario: {
      installation,
      kit,
      start: clock.start,
      duration,
      weather: weather.cut,
      site,
      initial,
      events,
    },
    want,
    limits,
    batteryFitted: document.battery?.fitted ?? true,
    learned,
    ensemble,
    assumptions: findings.assumptions,
    warnings: findings.warnings,
  };
}

/** [m] snow-covered fields, pack ice, beach: smoother ground than most, so more wind at the cowl (properties/wind). */
const USUAL_ROUGHNESS = 0.005;
/** [°C] a hangar of which nothing is known, for trying it as a way out; project judgement. */
const USUAL_HANGAR = 5;

/** Ground and hangar where the aircraft stands. */
export function siteOf(
  { site, hangar, place, events = [] }: Pick<ScenarioSections, "site" | "hangar" | "place" | "events">,
  findings: Findings,
): Site {
  const used = place === "hangar" || events.some((e) => e.do === "move" && e.to === "hangar");
  if (hangar === undefined && used) {
    fault(findings, ["hangar"], "the hangar's air_c: the aircraft stands in it", hangar);
  } else if (hangar === undefined) {
    findings.assumptions.push(
      `No hangar is described: where one is tried as a way out, its air is taken at ${USUAL_HANGAR} °C.`,
    );
  }
  if (site === undefined) {
    findings.assumptions.push(
      `Ground upwind is taken as snow-covered fields (roughness length ${USUAL_ROUGHNESS} m), where much of the wind reaches the cowl.`,
    );
  }
  return {
    tempHangar: kelvinFromCelsius(hangar?.air_c ?? USUAL_HANGAR),
    roughness: site?.roughness_m ?? USUAL_ROUGHNESS,
  };
}

const USUAL_MEMBERS = 500;
const USUAL_SEED = 1;

function ensembleOf(
  { ensemble = {} }: ScenarioSections,
  findings: Findings,
): { members: number; seed: number } {
  const { members = USUAL_MEMBERS, seed = USUAL_SEED } = ensemble;
  if (ensemble.members === undefined)
    findings.assumptions.push(`Chances are counted over ${members} drawn cases.`);
  return { members, seed };
}
