import {
  type DocumentIssue,
  isRecord,
  issueAt,
  issuesOfSchema,
  jsonOf,
  type Path,
} from "../documents/index.js";
import { eventSchema, type LogbookEvent } from "./events.js";
import { eventInCurrentForm } from "./migrate-event.js";
import { readBaseSetUp, readFormerSetUp } from "./set-up-reading.js";

export interface EventsReading {
  /** The good ones, in the order given. */
  readonly events: readonly LogbookEvent[];
  /** Why the others are not among them, each with its place: "[2].at", or "events[2].at" in an export. */
  readonly issues: readonly DocumentIssue[];
}

/** The version of exports that this program writes. */
export const LOGBOOK_VERSION = 2;

/** Reads one event, a list of them or an export of a logbook, of any version, as text or as a value. */
export function readEvents(source: unknown): EventsReading {
  const json = jsonOf(source);
  if (!json.ok) return { events: [], issues: [json.issue] };
  const document = json.value;
  if (Array.isArray(document)) return readAll(document, (i) => [i]);
  if (isRecord(document) && "soakline_logbook" in document) return readExport(document);
  return readAll([document], () => []);
}

function readExport(document: Readonly<Record<string, unknown>>): EventsReading {
  const { soakline_logbook: version, events, ...rest } = document;
  const refused = (path: Path, expected: string, received: unknown): EventsReading => ({
    events: [],
    issues: [issueAt(path, expected, received)],
  });
  if (!(typeof version === "number" && Number.isInteger(version) && version >= 1)) {
    return refused(["soakline_logbook"], `a version from 1 to ${LOGBOOK_VERSION}`, version);
  }
  if (version > LOGBOOK_VERSION) {
    const expected = `${LOGBOOK_VERSION} or less: the export is of a newer program`;
    return refused(["soakline_logbook"], expected, version);
  }
  if (!Array.isArray(events)) return refused(["events"], "an array", events);
  const strange = Object.keys(rest)[0];
  if (strange !== undefined) {
    return refused([strange], "no such key (known: soakline_logbook, events)", rest[strange]);
  }
  return readAll(events, (i) => ["events", i], standingOf(events));
}

/**
 * Reads events one by one, each with its place. Of the set-ups of a whole logbook only the one that stands is judged by
 * its switches: what was before it is history, and is not lost for what is known today.
 * @param standing the place of the set-up that stands; left out where every one is new
 */
export function readAll(
  list: readonly unknown[],
  placeOf: (index: number) => Path,
  standing?: number,
): EventsReading {
  const events: LogbookEvent[] = [];
  const issues: DocumentIssue[] = [];
  list.forEach((entry, i) => {
    const event = eventInCurrentForm(entry);
    const isFormer = standing !== undefined && standing !== i;
    const parsed = eventSchema.safeParse(event);
    const found = parsed.success ? contentIssues(parsed.data, isFormer) : issuesOfSchema(parsed.error, event);
    if (found.length === 0) events.push(event as LogbookEvent);
    else issues.push(...found.map((issue) => within(placeOf(i), issue)));
  });
  return { events, issues };
}

/** The place of the set-up, as written or as corrected, that holds when all of the list has happened. */
export function standingOf(list: readonly unknown[]): number {
  let [standing, latest] = [-1, Number.NEGATIVE_INFINITY];
  list.forEach((entry, i) => {
    if (!isRecord(entry)) return;
    const said = entry.kind === "correction" ? entry.instead : entry;
    if (!isRecord(said) || said.kind !== "set-up") return;
    const at = Date.parse(String(said.at));
    if (at < latest) return;
    [standing, latest] = [i, at];
  });
  return standing;
}

/** What the schema cannot say. */
function contentIssues(event: LogbookEvent, isFormer: boolean): DocumentIssue[] {
  switch (event.kind) {
    case "set-up": {
      const reading = isFormer ? readFormerSetUp(event.base) : readBaseSetUp(event.base);
      return reading.ok ? [] : reading.issues.map((issue) => within(["base"], issue));
    }
    case "forecast":
      return (["csv_file", "epw_file"] as const)
        .filter((key) => event.weather[key] !== undefined)
        .map((key) =>
          issueAt(["weather", key], "the weather itself, not the name of a file", event.weather[key]),
        );
    case "correction": {
      const { instead, id, of } = event;
      if (of === id) return [issueAt(["of"], "the id of another event", of)];
      if (instead === null) return [];
      const issues = contentIssues(instead, isFormer).map((issue) => within(["instead"], issue));
      if (instead.id === id || instead.id === of) {
        issues.push(issueAt(["instead", "id"], "an id of its own", instead.id));
      }
      return issues;
    }
    default:
      return [];
  }
}

function within(path: Path, issue: DocumentIssue): DocumentIssue {
  if (path.length === 0) return issue;
  const { path: place } = issueAt(path, "", undefined);
  const inner = issue.path;
  if (inner === "document") return { ...issue, path: place };
  return { ...issue, path: inner.startsWith("[") ? `${place}${inner}` : `${place}.${inner}` };
}
