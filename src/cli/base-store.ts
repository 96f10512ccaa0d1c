import {
  deriveBase,
  eventsToCsv,
  eventsToJson,
  type LogbookEvent,
  type ProbeReading,
  readEvents,
  readEventsCsv,
  readingsToCsv,
  readReadingsCsv,
} from "../logbook/index.js";
import { readTextFile, writeTextFile } from "../node/index.js";
import { createAccounts } from "../server/index.js";
import {
  backupTo,
  openStore,
  type Resolution,
  restoreFrom,
  type Store,
  StoreFailure,
} from "../store/index.js";
import { BadInput } from "./exit.js";
import { askPassword } from "./password.js";
import type { Shell } from "./shell.js";
import { switchNotes } from "./text/switch-notes.js";

// What the commands on a base's store do. Each gives the sentence that is said when it is done.

export async function backedUp(data: string, file: string): Promise<string> {
  const { events, readings } = await told(() => backupTo(data, file));
  return `${events} events and ${readings} readings written to ${file}. It holds password hashes: keep it safe.`;
}

export async function restored(data: string, file: string): Promise<string> {
  const { events, readings } = await told(() => restoreFrom(data, file));
  const said = `${events} events and ${readings} readings restored from ${file}`;
  return withStore(data, async (store) => [said, ...(await notesOf(store))].join("\n"));
}

/** A base that was taken in is kept whatever its switches are; what they may not do is said. */
async function notesOf(store: Store): Promise<readonly string[]> {
  return switchNotes(deriveBase(await allEvents(store)));
}

export function exported(data: string, file: string, resolution?: Resolution): Promise<string> {
  return withStore(data, async (store) => {
    const isCsv = /\.csv$/i.test(file);
    if (resolution !== undefined) {
      if (!isCsv) throw wrongName(file, "a name that ends in .csv");
      const readings = await allReadings(store, resolution);
      writeTextFile(file, readingsToCsv(readings));
      return `${readings.length} readings written to ${file}`;
    }
    if (!isCsv && !/\.json$/i.test(file)) throw wrongName(file, "a name that ends in .json or .csv");
    const events = await allEvents(store);
    writeTextFile(file, isCsv ? eventsToCsv(events) : eventsToJson(events));
    return `${events.length} events written to ${file}`;
  });
}

export function imported(data: string, file: string): Promise<string> {
  return withStore(data, async (store) => {
    const text = readTextFile(file);
    if (!text.ok) {
      const expected = `a file that can be read (${text.reason})`;
      throw new BadInput([{ path: "FILE", expected, received: file }]);
    }
    return isReadings(text.text)
      ? importReadings(store, text.text)
      : importEvents(store, text.text, /\.csv$/i.test(file));
  });
}

export function ownerSetUp(data: string, name: string, shell: Shell): Promise<string> {
  return withStore(data, async (store) => {
    const accounts = createAccounts(store);
    const user = await accounts.byName(name);
    if (user !== undefined && user.role !== "owner") {
      const received = `${name}, a ${user.role}`;
      throw new BadInput([{ path: "name", expected: "an owner, or a name not in use", received }]);
    }
    const password = await askPassword(`New password for ${name}: `, shell);
    const hasOwner = (await store.users()).some(({ role }) => role === "owner");
    try {
      if (user !== undefined) await accounts.changePassword(user, password, "password");
      else if (hasOwner) await accounts.add(name, password, "owner");
      else await accounts.setUpOwner(name, password);
    } catch (error) {
      throw asBadInput(error);
    }
    return user === undefined
      ? `${name} is set up as owner.`
      : `${name} has a new password; every session is ended.`;
  });
}

async function withStore<T>(data: string, work: (store: Store) => Promise<T>): Promise<T> {
  const store = await told(() => openStore(data));
  try {
    return await work(store);
  } finally {
    await store.close();
  }
}

/** What the store says of itself is for the person at the terminal. */
export async function told<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StoreFailure || error instanceof RangeError) {
      throw new BadInput([{ path: "--data", expected: "a store that can be used", received: error.message }]);
    }
    if (
      error instanceof Error &&
      "code" in error &&
      typeof error.code === "string" &&
      /^E[A-Z]+$/.test(error.code)
    ) {
      throw new BadInput([{ path: "FILE", expected: "a file that can be used", received: error.message }]);
    }
    throw error;
  }
}

const PAGE = 1000;

async function allEvents(store: Store): Promise<LogbookEvent[]> {
  const events: LogbookEvent[] = [];
  for (let after = 0; ; ) {
    const page = await store.eventsAfter(after, PAGE);
    events.push(...page.map(({ event }) => event));
    const last = page.at(-1);
    if (last === undefined) return events;
    after = last.sequence;
  }
}

async function allReadings(store: Store, resolution: Resolution): Promise<ProbeReading[]> {
  if (resolution !== "raw") await store.rollUp();
  const probes = await store.latestReadings();
  const readings: ProbeReading[] = [];
  for (const { aircraft, probe, time: newest } of probes) {
    for (let from = 0; ; ) {
      const page = await store.readings({
        ...{ aircraft, probes: [probe], from, to: newest + 1, resolution, limit: PAGE },
      });
      readings.push(...page.map(({ time, mean }) => ({ aircraft, probe, time, tempC: mean })));
      const last = page.at(-1);
      if (last === undefined) break;
      from = last.time + 1;
    }
  }
  return readings;
}

function isReadings(text: string): boolean {
  const header = text.slice(0, 2000).split(/\r?\n/, 1)[0];
  return (
    /\btemp_c\b/.test(header) &&
    /\bprobe\b/.test(header) &&
    !/\bkind\b/.test(header) &&
    !header.startsWith("{")
  );
}

async function importReadings(store: Store, text: string): Promise<string> {
  const { readings, issues } = readReadingsCsv(text);
  if (issues.length > 0) throw new BadInput(issues);
  let [kept, known] = [0, 0];
  for (let at = 0; at < readings.length; at += PAGE) {
    const result = await store.appendReadings(readings.slice(at, at + PAGE));
    kept += result.kept;
    known += result.known;
  }
  await store.rollUp();
  return `${kept} readings imported, ${known} were there already, ${readings.length - kept - known} too old to be kept`;
}

async function importEvents(store: Store, text: string, isCsv: boolean): Promise<string> {
  const { events, issues } = isCsv ? readEventsCsv(text) : readEvents(text);
  if (issues.length > 0) throw new BadInput(issues);
  let [kept, known] = [0, 0];
  const conflicting: string[] = [];
  for (let at = 0; at < events.length; at += PAGE) {
    const result = await store.append(events.slice(at, at + PAGE));
    kept += result.kept.length;
    known += result.known.length;
    conflicting.push(...result.conflicting);
  }
  if (conflicting.length > 0) {
    throw new BadInput(
      conflicting.map((id) => ({
        path: id,
        expected: "the event of this id as it is kept",
        received: "another content",
      })),
    );
  }
  const said = `${kept} events imported, ${known} were there already`;
  const isSetUp = events.some((event) => event.kind === "set-up" || event.kind === "correction");
  return isSetUp ? [said, ...(await notesOf(store))].join("\n") : said;
}

function wrongName(file: string, expected: string): BadInput {
  return new BadInput([{ path: "FILE", expected, received: file }]);
}

function asBadInput(error: unknown): unknown {
  if (error instanceof Error && "issues" in error && Array.isArray(error.issues))
    return new BadInput(error.issues);
  if (error instanceof Error && "code" in error) {
    return new BadInput([
      { path: "name", expected: "an account that can be set up", received: error.message },
    ]);
  }
  return error;
}
