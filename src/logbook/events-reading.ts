import {
  type DocumentIssue,
  isRecord,
  issueAt,
  issuesOfSchema,
  jsonOf,
  type Path,
} from "../documents/index.js";
import { eventSchema, type LogbookEvent } from "./events.js";
import { readBaseSetUp } from "./set-up-reading.js";

export interface EventsReading {
  /** The good ones, in the order given. */
  readonly events: readonly LogbookEvent[];
  /** Why the others are not among them, each with its place: "[2].at", or "events[2].at" in an export. */
  readonly issues: readonly DocumentIssue[];
}

/** The version of exports that this program writes. */
export const LOGBOOK_VERSION = 1;

/** Reads one event, a list of them or an export of a logbook, as text or as a value. */
export function readEvents(source: unknown): EventsReading {
  const json = jsonOf(source);
  if (!json.ok) return { events: [], issues: [json.issue] };
  const document = json.value;
  if (Array.isArray(document)) return readAll(document, []);
  if (isRecord(document) && "soakline_logbook" in document) return readExport(document);
  const issues = eventIssues(document);
  return issues.length === 0 ? { events: [document as LogbookEvent], issues } : { events: [], issues };
}

function readExport(document: Readonly<Record<string, unknown>>): EventsReading {
  const { soakline_logbook: version, events, ...rest } = document;
  const refused = (path: Path, expected: string, received: unknown): EventsReading => ({
    events: [],
    issues: [issueAt(path, expected, received)],
  });
  if (version !== LOGBOOK_VERSION) return refused(["soakline_logbook"], `${LOGBOOK_VERSION}`, version);
  if (!Array.isArray(events)) return refused(["events"], "an array", events);
  const strange = Object.keys(rest)[0];
  if (strange !== undefined) {
    return refused([strange], "no such key (known: soakline_logbook, events)", rest[strange]);
  }
  return readAll(events, ["events"]);
}

function readAll(list: readonly unknown[], path: Path): EventsReading {
  const events: LogbookEvent[] = [];
  const issues: DocumentIssue[] = [];
  list.forEach((entry, i) => {
    const found = eventIssues(entry, [...path, i]);
    if (found.length === 0) events.push(entry as LogbookEvent);
    else issues.push(...found);
  });
  return { events, issues };
}

/** Every fault of one event; its place begins with `path`. */
export function eventIssues(event: unknown, path: Path = []): DocumentIssue[] {
  const parsed = eventSchema.safeParse(event);
  const found = parsed.success ? contentIssues(parsed.data) : issuesOfSchema(parsed.error, event);
  return found.map((issue) => within(path, issue));
}

/** What the schema cannot say. */
function contentIssues(event: LogbookEvent): DocumentIssue[] {
  switch (event.kind) {
    case "set-up": {
      const reading = readBaseSetUp(event.base);
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
      const issues = contentIssues(instead).map((issue) => within(["instead"], issue));
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
