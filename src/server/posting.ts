import { type DocumentIssue, isRecord, issueAt } from "../documents/index.js";
import {
  type EventKind,
  type EventOf,
  type EventsReading,
  type LogbookEvent,
  readEvents,
} from "../logbook/index.js";
import type { Role, Store } from "../store/index.js";

// Which of the events somebody posted may be kept, and in whose name.

interface Refused {
  /** Place in the batch. */
  readonly index: number;
  /** Null where it has none that can be read. */
  readonly id: string | null;
  readonly issues: readonly DocumentIssue[];
}

export interface Sorted {
  readonly events: readonly LogbookEvent[];
  readonly refused: readonly Refused[];
}

interface Author {
  readonly name: string;
  readonly role: Role;
}

type Reader = Pick<Store, "event" | "eventsBefore">;
type Correction = EventOf<"correction">;

/** Written by the keeper alone: what it planned, switched and noticed. */
const OF_KEEPER: ReadonlySet<EventKind> = new Set<EventKind>([
  "plan-issued",
  "plan-withdrawn",
  "probes-read",
  "switch-commanded",
  "switch-confirmed",
  "fault",
  "fault-cleared",
]);

/** The set-up holds addresses that the server calls, with its secrets: not for everybody. */
const OF_OWNER: ReadonlySet<EventKind> = new Set<EventKind>(["set-up"]);

export async function sortPosted(batch: readonly unknown[], author: Author, store: Reader): Promise<Sorted> {
  const events: LogbookEvent[] = [];
  const refused: Refused[] = [];
  const inBatch = new Map<string, Found>();
  for (const [index, posted] of batch.entries()) {
    const reading = readOne(posted);
    const event = reading.events[0];
    if (event === undefined) {
      refused.push({ index, id: idOf(posted), issues: reading.issues });
      continue;
    }
    const issues = [
      ...issuesOfKind(event, author.role),
      ...(await issuesOfTarget(event, author.role, (id) => find(id, inBatch, store))),
    ];
    if (inBatch.has(event.id)) issues.push(issueAt(["id"], "an id used once in a batch", event.id));
    if (issues.length > 0) {
      refused.push({ index, id: event.id, issues });
      continue;
    }
    inBatch.set(event.id, { event });
    if (event.kind === "correction" && event.instead !== null) {
      inBatch.set(event.instead.id, { event: event.instead, broughtBy: event });
    }
    // Sent again, perhaps by somebody else on the same phone, it stays in the name of whoever sent it first.
    const kept = await store.event(event.id);
    events.push(signed(event, kept === undefined ? author.name : kept.event.by));
  }
  return { events, refused };
}

/** One event: not a whole export, nor a text that holds one. */
function readOne(posted: unknown): EventsReading {
  if (!isRecord(posted)) return { events: [], issues: [issueAt([], "an event", posted)] };
  if (!("soakline_logbook" in posted)) return readEvents(posted);
  const issue = issueAt(["soakline_logbook"], "one event, not an export of many", posted.soakline_logbook);
  return { events: [], issues: [issue] };
}

/** The author is whom the server knows, never whom the client says. */
function signed(event: LogbookEvent, by: string | undefined): LogbookEvent {
  const { by: _, ...rest } = event;
  const own = { ...rest, ...(by === undefined ? {} : { by }) } as LogbookEvent;
  if (own.kind !== "correction" || own.instead === null) return own;
  return { ...own, instead: signed(own.instead, by) as typeof own.instead };
}

function issuesOfKind(event: LogbookEvent, role: Role): DocumentIssue[] {
  const instead = event.kind === "correction" ? event.instead : null;
  const kinds = [{ path: ["kind"], kind: event.kind }];
  if (instead !== null) kinds.push({ path: ["instead", "kind"], kind: instead.kind });
  return kinds
    .filter(({ kind }) => !mayWrite(kind, role))
    .map(({ path, kind }) => {
      const whose = OF_KEEPER.has(kind)
        ? "people (this one is the keeper's)"
        : `a ${role} (this one is the owner's)`;
      return issueAt(path, `a kind written by ${whose}`, kind);
    });
}

function mayWrite(kind: EventKind, role: Role): boolean {
  return !OF_KEEPER.has(kind) && (role === "owner" || !OF_OWNER.has(kind));
}

/** A correction may change only what its author may write, however many corrections lie between. */
async function issuesOfTarget(
  event: LogbookEvent,
  role: Role,
  lookUp: (id: string) => Promise<Found | undefined>,
): Promise<DocumentIssue[]> {
  const passed = new Set<string>();
  let of = event.kind === "correction" ? event.of : undefined;
  while (of !== undefined && !passed.has(of)) {
    passed.add(of);
    const found = await lookUp(of);
    // What is not known yet may come later; but then nobody can tell whether a pilot may correct it.
    if (found === undefined) {
      return role === "owner"
        ? []
        : [issueAt(["of"], "an event that is known here or earlier in the batch", of)];
    }
    if (issuesOfKind(found.event, role).length > 0) {
      return [issueAt(["of"], "an event of a kind that you may write yourself", found.event.kind)];
    }
    of = found.event.kind === "correction" ? found.event.of : found.broughtBy?.of;
  }
  return [];
}

interface Found {
  readonly event: LogbookEvent;
  /** The correction it is the `instead` of. */
  readonly broughtBy?: Correction;
}

async function find(
  id: string,
  inBatch: ReadonlyMap<string, Found>,
  store: Reader,
): Promise<Found | undefined> {
  const known = inBatch.get(id) ?? (await store.event(id));
  return known ?? findInstead(id, store);
}

/** Corrections are few: they are looked through only when one names what an earlier one brought in. */
async function findInstead(id: string, store: Reader): Promise<Found | undefined> {
  for (let before: number | undefined; ; ) {
    const page = await store.eventsBefore({
      kinds: ["correction"],
      limit: 500,
      ...(before === undefined ? {} : { before }),
    });
    for (const { event } of page) {
      if (event.kind === "correction" && event.instead?.id === id) {
        return { event: event.instead, broughtBy: event };
      }
    }
    before = page.at(-1)?.sequence;
    if (before === undefined) return undefined;
  }
}

function idOf(posted: unknown): string | null {
  return isRecord(posted) && typeof posted.id === "string" ? posted.id.slice(0, 100) : null;
}
