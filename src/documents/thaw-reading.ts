import { FILM_LEFT, snowMass, type ThawStay, type WingSite } from "../airframe/index.js";
import { type Finding, finding } from "../findings/index.js";
import { celsiusFromKelvin, KELVIN_OF_ZERO_CELSIUS } from "../units/index.js";
import { cutSeries, type WeatherSeries } from "../weather/index.js";
import { airframeEnsembleOf, kelvinOf, panelOf, wingSiteOf } from "./airframe-reading.js";
import { type Clock, clockOf } from "./clock.js";
import { inFormOfKind } from "./current-form.js";
import { gapOf, hangarOf, outsideAirOf } from "./hangar-reading.js";
import type { DocumentIssue } from "./issue.js";
import { nightWeather } from "./night-weather.js";
import { fault, type Notes, newNotes, type Reading, sectionsBy } from "./reading.js";
import { rollOutOf } from "./roll-out-reading.js";
import { type ThawDocument, type ThawSections, thawSchema } from "./thaw-schema.js";
import { weatherOf } from "./weather-reading.js";
import type { ReadFile } from "./weather-sources/index.js";

/** A stay in a hangar as read from its document, with all that was assumed on the way. */
export interface ReadThaw extends ThawStay {
  readonly name: string;
  readonly zone: string;
  readonly assumptions: readonly Finding[];
  readonly warnings: readonly DocumentIssue[];
}

export type ThawReading = Reading<ReadThaw>;

/** A day of so many, the trials and the roll-out take 5 s of one core (measured). */
const USUAL_MEMBERS = 40;

/** Reads a thaw document, as text or as a value, of this or any earlier version. Every fault is named at once. */
export function readThawDocument(
  source: unknown,
  { readFile }: { readonly readFile?: ReadFile } = {},
): ThawReading {
  const form = inFormOfKind("thaw", source);
  if (!form.ok) return { ok: false, issues: [form.issue] };
  const notes = newNotes();
  const sections = sectionsBy(thawSchema, form.document, notes);
  const clock = clockOf(sections, notes);
  const snow = snowOf(sections.snow, notes);
  const tempAircraft = aircraftTemperature(sections, snow, notes);
  const inside = panelOf(sections, { temp: tempAircraft, as: "skin-at-roll-in" }, notes);
  const hangar = sections.hangar && hangarOf(sections.hangar, notes);
  const outside = sections.outside && outsideAirOf(sections.outside, "outside", notes);
  const site = siteOf(sections, notes);
  const rollOut =
    sections.roll_out && sections.outside
      ? rollOutOf(sections.roll_out, sections.outside, sections.site?.elevation_m ?? 0, clock, notes)
      : undefined;
  const forecast = weatherOf(sections, clock, readFile, notes);
  const weather = forecast && clock && nightWeather(fromStart(forecast.whole, clock), notes);
  const film = filmOf(sections, notes);
  const ensemble = airframeEnsembleOf(sections.ensemble, USUAL_MEMBERS, notes);
  if (notes.issues.length > 0) return { ok: false, issues: notes.issues };
  if (
    clock === undefined ||
    tempAircraft === undefined ||
    inside === undefined ||
    hangar === undefined ||
    outside === undefined
  ) {
    throw new Error("a section of the document was refused without an issue");
  }
  const document = sections as ThawDocument;
  const { humidity_percent } = document.hangar;
  return {
    ok: true,
    name: document.name,
    zone: clock.zone,
    start: clock.start,
    request: {
      panel: inside.panel,
      area: document.aircraft.area_m2,
      snow,
      brushable: brushableOf(document.snow, snow),
      film,
      gap: gapOf(document.gap),
      tempAircraft,
      ...(inside.tempInside === undefined ? {} : { tempInside: inside.tempInside }),
      hangar,
      outside,
      ...(humidity_percent === undefined ? {} : { relativeHumidity: humidity_percent / 100 }),
      pressure: site.pressure,
      duration: clock.end - clock.start,
      ensemble,
    },
    site,
    rollOut,
    weather,
    assumptions: notes.assumptions,
    warnings: notes.warnings,
  };
}

/** The forecast from the roll-in to its own end; that it begins in time has been looked at. */
function fromStart(whole: WeatherSeries, { start, end }: Clock): WeatherSeries {
  const cut = cutSeries(whole, start, Math.max(end, whole.time[whole.time.length - 1]));
  if (!cut.ok) throw new Error("weather that was accepted cannot be cut");
  return cut.series;
}

/** Of a place that nobody rolls out to only the air's pressure counts. */
function siteOf({ site, roll_out }: ThawSections, notes: Notes): WingSite {
  if (roll_out !== undefined) return wingSiteOf(site, notes);
  if (site?.elevation_m === undefined) notes.assumptions.push(finding("hangar-at-sea-level", {}));
  return wingSiteOf(site, newNotes());
}

/** [-] of loose snow that a broom leaves. Project judgement. */
const LEFT_BY_BRUSHING = 0.1;
/** [kg/m2] most that is looked at. */
const MOST_SNOW = 500;

/** [kg/m2] that lies on it when it comes in. */
function snowOf(given: ThawSections["snow"], notes: Notes): number {
  if (given === undefined) {
    notes.assumptions.push(finding("no-snow-named", {}));
    return 0;
  }
  const { kind, depth_mm, brushed = false } = given;
  if (brushed && kind === "ice") {
    fault(notes, ["snow", "brushed"], "false: ice does not come off with a broom", brushed);
  }
  if (brushed) {
    notes.assumptions.push(finding("broom-leaves", { share: LEFT_BY_BRUSHING }));
  }
  const mass = snowMass(depth_mm / 1000, kind);
  if (mass > MOST_SNOW) {
    const most = Math.floor((depth_mm * MOST_SNOW) / mass);
    fault(notes, ["snow", "depth_mm"], `at most ${most} of ${kind}, ${MOST_SNOW} kg/m2`, depth_mm);
  }
  return brushed ? mass * LEFT_BY_BRUSHING : mass;
}

/** [kg/m2] of `snow` that a broom would still take off: loose snow that nobody has brushed yet; ice stays. */
function brushableOf(given: ThawSections["snow"], snow: number): number {
  return given === undefined || given.kind === "ice" || given.brushed ? 0 : snow * (1 - LEFT_BY_BRUSHING);
}

/** [K] of the skin when it comes in. */
function aircraftTemperature(
  { aircraft, outside }: ThawSections,
  snow: number,
  notes: Notes,
): number | undefined {
  const given = aircraft?.temp_c;
  if (given !== undefined) {
    if (snow > 0 && given > 0) {
      fault(notes, ["aircraft", "temp_c"], "0 or less: snow lies on it", given);
    }
    return kelvinOf(given);
  }
  if (outside === undefined) return undefined;
  const air = kelvinOf(outside.air_c);
  const soaked = Math.min(air, snow > 0 ? KELVIN_OF_ZERO_CELSIUS : WARMEST_SKIN);
  notes.assumptions.push(finding("comes-in-cold", { skin_c: celsiusFromKelvin(soaked) }));
  return soaked;
}

const WARMEST_SKIN = kelvinOf(40);

/** [kg/m2] of water left on the skin. */
function filmOf({ film }: ThawSections, { assumptions }: Notes): number {
  if (film === undefined) assumptions.push(finding("skin-drips", {}));
  return FILM_LEFT[film ?? "dripping"];
}
