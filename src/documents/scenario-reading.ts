import { finding } from "../findings/index.js";
import { type AircraftScenario, type Ensemble, settle, siteOf } from "../scenario/index.js";
import { type Site, USUAL_MEMBERS } from "../simulation/index.js";
import { clockOf } from "./clock.js";
import { inCurrentForm } from "./current-form.js";
import { eventsOf, heatedForOf, startConfiguration } from "./events-reading.js";
import { checkInitial, knownTempsOf } from "./initial-reading.js";
import { jsonOf } from "./json.js";
import { installationOf, kitOf } from "./kit-reading.js";
import { learnedOf } from "./learned-reading.js";
import { fault, type Notes, newNotes, type Reading, sectionsOf } from "./reading.js";
import type { ScenarioDocument, ScenarioSections } from "./scenario-schema.js";
import { weatherOf } from "./weather-reading.js";
import type { ReadFile } from "./weather-sources/index.js";
import { limitsOf, wantOf } from "./wish-reading.js";

/** A scenario and the document that says it, in today's form. */
export interface ReadScenario extends AircraftScenario {
  readonly document: ScenarioDocument;
}

export type ScenarioReading = Reading<ReadScenario>;

export interface ScenarioReadingOptions {
  /** Gives the text of weather files that the document names. */
  readonly readFile?: ReadFile;
  /** Nothing heats, whatever the document plugs in: every heater is taken as off. */
  readonly withoutPower?: boolean;
}

/**
 * Reads a scenario document, as text or as a value, of this or any earlier version. Every fault is named at once; what
 * the document leaves open is listed among the assumptions.
 */
export function readScenarioDocument(
  source: unknown,
  { readFile, withoutPower = false }: ScenarioReadingOptions = {},
): ScenarioReading {
  const json = jsonOf(source);
  if (!json.ok) return { ok: false, issues: [json.issue] };
  const form = inCurrentForm(json.value);
  if (!form.ok) return { ok: false, issues: [form.issue] };
  const notes = newNotes();
  const asWritten = sectionsOf(form.document, notes);
  const sections = withoutPower ? withHeatersOff(asWritten, notes) : asWritten;
  const clock = clockOf(sections, notes);
  const installation = installationOf(sections, notes);
  const learned = learnedOf(sections, installation, readFile, notes);
  const kit = kitOf(sections, installation, notes);
  const configuration = startConfiguration(sections, kit, notes);
  const weather = weatherOf(sections, clock, readFile, notes);
  const events = eventsOf(sections, kit, clock, notes);
  const want = wantOf(sections, kit, clock, notes);
  const limits = limitsOf(sections, installation, notes);
  const site = standingSite(sections, notes);
  const ensemble = ensembleOf(sections, notes);
  if (notes.issues.length > 0) return { ok: false, issues: notes.issues };
  if (
    clock === undefined ||
    installation === undefined ||
    kit === undefined ||
    configuration === undefined ||
    weather === undefined
  ) {
    throw new Error("a section of the document was refused without an issue");
  }
  const heatedFor = heatedForOf(sections, clock, notes);
  const { name = "", initial = {}, battery } = sections;
  checkInitial(initial, notes);
  const parts = { installation, kit, configuration, weather, events, want, limits, site, ensemble, learned };
  const read = settle(
    {
      ...parts,
      name,
      zone: clock.zone,
      start: clock.start,
      duration: clock.end - clock.start,
      batteryFitted: battery?.fitted ?? true,
      heatedFor,
      known: knownTempsOf(initial),
    },
    notes,
  );
  if (read === undefined) return { ok: false, issues: notes.issues };
  return { ok: true, document: sections as ScenarioDocument, ...read };
}

function withHeatersOff(sections: ScenarioSections, { assumptions }: Notes): ScenarioSections {
  const { plugged_in = [], plugged_in_since: _, events = [], want, ...rest } = sections;
  const cold = events.filter((event) => !("heaters" in event));
  if (plugged_in.length > 0 || cold.length < events.length) assumptions.push(finding("no-power-here", {}));
  return {
    ...rest,
    plugged_in: [],
    events: cold,
    ...(want === undefined ? {} : { want: { ...want, heaters: [] } }),
  };
}

/** Ground and hangar where the aircraft stands; a hangar that it stands in has to be described. */
export function standingSite(
  { site, hangar, place, events = [] }: Pick<ScenarioSections, "site" | "hangar" | "place" | "events">,
  notes: Notes,
): Site {
  const isUsed = place === "hangar" || events.some((e) => e.do === "move" && e.to === "hangar");
  if (hangar === undefined && isUsed) {
    fault(notes, ["hangar"], "the hangar's air_c: the aircraft stands in it", hangar);
  }
  return siteOf({ hangarC: hangar?.air_c, roughness: site?.roughness_m }, notes.assumptions);
}

const USUAL_SEED = 1;

function ensembleOf({ ensemble = {} }: ScenarioSections, notes: Notes): Ensemble {
  const { members = USUAL_MEMBERS, seed = USUAL_SEED } = ensemble;
  if (ensemble.members === undefined) notes.assumptions.push(finding("members-taken", { members }));
  const { correction } = ensemble;
  if (correction === undefined) return { members, seed };
  const { air_k: airShift, spread, plans } = correction;
  return { members, seed, correction: { airShift, spread, plans } };
}
