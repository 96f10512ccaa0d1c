import { isRecord } from "./issue.js";
import { jsonOf } from "./json.js";

/** What-ifs asked for beside the document: each replaces what the document says. */
export interface Overrides {
  /** Nothing is fitted on the cowl at the start, nor put on later. */
  readonly withoutCover?: boolean | undefined;
  /** These heaters are the only ones of the kit, off at the start and used as the plan says. */
  readonly heaters?: readonly string[] | undefined;
  readonly departure?: string | undefined;
  readonly chance?: number | undefined;
  readonly members?: number | undefined;
  readonly seed?: number | undefined;
  /** [°C] of the whole engine at the start. */
  readonly engine_c?: number | undefined;
  /** Report texts instead of the document's weather; one alone leaves the document's other one. */
  readonly metar?: string | undefined;
  readonly taf?: string | undefined;
}

type Json = Record<string, unknown>;

/**
 * A document with what-ifs put in, still unchecked, so that a bad one is named like any other fault. A source that is
 * no object is handed back as it is.
 */
export function overridden(source: unknown, overrides: Overrides): unknown {
  const json = jsonOf(source);
  if (!json.ok || !isRecord(json.value)) return source;
  const { withoutCover, heaters, departure, chance, members, seed, engine_c, metar, taf } = overrides;
  let document: Json = json.value;
  if (withoutCover)
    document = withoutEvents({ ...document, fitted: { covers: [] } }, ["cover_on", "cover_off"]);
  if (heaters !== undefined) document = withHeaters(document, heaters);
  // A chance alone names no departure: it is no wish.
  if (departure !== undefined || document.want !== undefined) {
    document = withSection(document, "want", { departure, chance });
  }
  document = withSection(document, "ensemble", { members, seed });
  if (engine_c !== undefined) document = withEngineAt(document, engine_c);
  return metar === undefined && taf === undefined ? document : withReports(document, { metar, taf });
}

/** The same for a document about the airframe, which has its departure and no engine. */
export function overriddenAirframe(source: unknown, overrides: Overrides): unknown {
  const json = jsonOf(source);
  if (!json.ok || !isRecord(json.value)) return source;
  const { departure, members, seed, metar, taf } = overrides;
  let document = withSection(json.value, "ensemble", { members, seed });
  if (departure !== undefined) {
    const { hours: _, ...rest } = document;
    document = { ...rest, departure };
  }
  return metar === undefined && taf === undefined ? document : withReports(document, { metar, taf });
}

function withHeaters(document: Json, heaters: readonly string[]): Json {
  const { want, ...rest } = withoutEvents(document, ["plug_in", "unplug"]);
  const { heaters: _, ...wanted } = isRecord(want) ? want : {};
  const kit = { ...(isRecord(rest.kit) ? rest.kit : {}), heaters };
  return { ...rest, kit, plugged_in: [], ...(isRecord(want) ? { want: wanted } : {}) };
}

/** Readings of single parts give way; how well they were known stays. */
function withEngineAt(document: Json, engine_c: number): Json {
  const { uncertainty_k } = isRecord(document.initial) ? document.initial : {};
  return { ...document, initial: defined({ all_c: engine_c, uncertainty_k }) };
}

function withoutEvents(document: Json, gone: readonly string[]): Json {
  const { events } = document;
  if (!Array.isArray(events)) return document;
  return {
    ...document,
    events: events.filter((event) => !isRecord(event) || !gone.includes(String(event.do))),
  };
}

/** New reports stand alone, unless the document's weather is reports too: then they replace their like. */
function withReports(document: Json, reports: Pick<Overrides, "metar" | "taf">): Json {
  const { metar, taf } = isRecord(document.weather) ? document.weather : {};
  return { ...document, weather: defined({ metar, taf, ...defined(reports) }) };
}

function withSection(document: Json, key: string, values: Json): Json {
  const given = defined(values);
  if (Object.keys(given).length === 0) return document;
  return { ...document, [key]: { ...(isRecord(document[key]) ? document[key] : {}), ...given } };
}

function defined(values: Json): Json {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
}
