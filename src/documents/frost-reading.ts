import type { FrostRequest } from "../airframe/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { weatherAt } from "../weather/index.js";
import { airframeEnsembleOf, kelvinOf, panelOf, wingCoverOf, wingSiteOf } from "./airframe-reading.js";
import { type Clock, clockOf, epochOfDeparture } from "./clock.js";
import { inFormOfKind } from "./current-form.js";
import { type FrostDocument, type FrostSections, frostSchema } from "./frost-schema.js";
import type { DocumentIssue } from "./issue.js";
import { nightWeather } from "./night-weather.js";
import { type Findings, fault, newFindings, sectionsBy } from "./reading.js";
import { weatherOf } from "./weather-reading.js";
import type { ReadFile } from "./weather-sources.js";

/** A night as read from its document, with all that was assumed on the way. */
export interface ReadFrost {
  readonly document: FrostDocument;
  readonly name: string;
  readonly zone: string;
  readonly request: FrostRequest;
  readonly assumptions: readonly string[];
  readonly warnings: readonly DocumentIssue[];
}

export type FrostReading =
  | ({ readonly ok: true } & ReadFrost)
  | { readonly ok: false; readonly issues: readonly DocumentIssue[] };

/** Two nights of so many, with and without a cover, take 2 s of one core (measured). */
const USUAL_MEMBERS = 100;

/** Reads a frost document, as text or as a value, of this or any earlier version. Every fault is named at once. */
export function readFrostDocument(
  source: unknown,
  { readFile }: { readonly readFile?: ReadFile } = {},
): FrostReading {
  const form = inFormOfKind("frost", source);
  if (!form.ok) return { ok: false, issues: [form.issue] };
  const findings = newFindings();
  const sections = sectionsBy(frostSchema, form.document, findings);
  const clock = nightOf(sections, findings);
  const weather = weatherOf(sections, clock, readFile, findings);
  const night = weather && nightWeather(weather.cut, findings);
  const air = clock && night && weatherAt(night, clock.start).tempAir;
  const inside = panelOf(sections, { temp: air, words: "the air at the start" }, findings);
  const cover = sections.cover === undefined ? undefined : wingCoverOf(sections.cover, findings);
  const site = wingSiteOf(sections.site, findings);
  const ensemble = airframeEnsembleOf(sections.ensemble, USUAL_MEMBERS, findings);
  if (findings.issues.length > 0) return { ok: false, issues: findings.issues };
  if (clock === undefined || night === undefined || inside === undefined) {
    throw new Error("a section of the document was refused without an issue");
  }
  const document = sections as FrostDocument;
  return {
    ok: true,
    document,
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
    assumptions: findings.assumptions,
    warnings: findings.warnings,
  };
}

/** [h] longest and shortest night, as the schema has them for hours. */
const SHORTEST = 0.5;
const LONGEST = 120;

/** From the start to the departure, or over so many hours. */
function nightOf(sections: FrostSections, findings: Findings): Clock | undefined {
  const { hours, departure } = sections;
  const clock = clockOf({ ...sections, hours: hours ?? SHORTEST }, findings);
  if ((hours === undefined) === (departure === undefined)) {
    // A fault in one of them has been named already: then the other is not missing.
    if (
      hours !== undefined ||
      !findings.issues.some(({ path }) => path === "hours" || path === "departure")
    ) {
      fault(findings, [], "either hours or departure", hours === undefined ? "neither" : "both");
    }
    return undefined;
  }
  if (departure === undefined || clock === undefined) return clock;
  const end = epochOfDeparture(departure, ["departure"], clock, findings);
  if (end === undefined) return undefined;
  const after = (end - clock.start) / SECONDS_OF_HOUR;
  if (after >= SHORTEST && after <= LONGEST) return { ...clock, end };
  return fault(findings, ["departure"], `a time ${SHORTEST} to ${LONGEST} h after the start`, departure);
}
