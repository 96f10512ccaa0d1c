import type { FrostRequest } from "../airframe/index.js";
import type { Finding } from "../findings/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { weatherAt } from "../weather/index.js";
import { airframeEnsembleOf, kelvinOf, panelOf, wingCoverOf, wingSiteOf } from "./airframe-reading.js";
import { type Clock, clockOf, epochOfDeparture } from "./clock.js";
import { inFormOfKind } from "./current-form.js";
import { type FrostDocument, type FrostSections, frostSchema } from "./frost-schema.js";
import type { DocumentIssue } from "./issue.js";
import { nightWeather } from "./night-weather.js";
import { fault, type Notes, newNotes, type Reading, sectionsBy } from "./reading.js";
import { weatherOf } from "./weather-reading.js";
import type { ReadFile } from "./weather-sources/index.js";

/** A night as read from its document, with all that was assumed on the way. */
export interface ReadFrost {
  readonly name: string;
  readonly zone: string;
  readonly request: FrostRequest;
  readonly assumptions: readonly Finding[];
  readonly warnings: readonly DocumentIssue[];
}

export type FrostReading = Reading<ReadFrost>;

/** Two nights of so many, with and without a cover, take 2 s of one core (measured). */
const USUAL_MEMBERS = 100;

/** Reads a frost document, as text or as a value, of this or any earlier version. Every fault is named at once. */
export function readFrostDocument(
  source: unknown,
  { readFile }: { readonly readFile?: ReadFile } = {},
): FrostReading {
  const form = inFormOfKind("frost", source);
  if (!form.ok) return { ok: false, issues: [form.issue] };
  const notes = newNotes();
  const sections = sectionsBy(frostSchema, form.document, notes);
  const clock = nightOf(sections, notes);
  const weather = weatherOf(sections, clock, readFile, notes);
  const night = weather && nightWeather(weather.cut, notes);
  const air = clock && night && weatherAt(night, clock.start).tempAir;
  const inside = panelOf(sections, { temp: air, as: "air-at-start" }, notes);
  const cover = sections.cover === undefined ? undefined : wingCoverOf(sections.cover, notes);
  const site = wingSiteOf(sections.site, notes);
  const ensemble = airframeEnsembleOf(sections.ensemble, USUAL_MEMBERS, notes);
  if (notes.issues.length > 0) return { ok: false, issues: notes.issues };
  if (clock === undefined || night === undefined || inside === undefined) {
    throw new Error("a section of the document was refused without an issue");
  }
  const document = sections as FrostDocument;
  return {
    ok: true,
    name: document.name,
    zone: clock.zone,
    request: {
      weather: night,
      start: clock.start,
      duration: clock.end - clock.start,
      site,
      panel: inside.panel,
      ...(cover === undefined ? {} : { cover }),
      ...(document.skin_c === undefined ? {} : { tempSkin: kelvinOf(document.skin_c) }),
      ...(inside.tempInside === undefined ? {} : { tempInside: inside.tempInside }),
      ensemble,
    },
    assumptions: notes.assumptions,
    warnings: notes.warnings,
  };
}

/** [h] longest and shortest night, as the schema has them for hours. */
const SHORTEST = 0.5;
const LONGEST = 120;

/** From the start to the departure, or over so many hours. */
function nightOf(sections: FrostSections, notes: Notes): Clock | undefined {
  const { hours, departure } = sections;
  const clock = clockOf({ ...sections, hours: hours ?? SHORTEST }, notes);
  if ((hours === undefined) === (departure === undefined)) {
    // A fault in one of them has been named already: then the other is not missing.
    if (hours !== undefined || !notes.issues.some(({ path }) => path === "hours" || path === "departure")) {
      fault(notes, [], "either hours or departure", hours === undefined ? "neither" : "both");
    }
    return undefined;
  }
  if (departure === undefined || clock === undefined) return clock;
  const end = epochOfDeparture(departure, ["departure"], clock, notes);
  if (end === undefined) return undefined;
  const after = (end - clock.start) / SECONDS_OF_HOUR;
  if (after >= SHORTEST && after <= LONGEST) return { ...clock, end };
  return fault(notes, ["departure"], `a time ${SHORTEST} to ${LONGEST} h after the start`, departure);
}
