import { type Command, Option } from "commander";
import {
  eventsToCsv,
  eventsToJson,
  type LogbookEvent,
  readEvents,
  readEventsCsv,
  readingsToCsv,
  readReadingsCsv,
} from "../logbook/index.js";
import { readTextFile, writeTextFile } from "../node/index.js";
import { createAccounts } from "../server/index.js";
import { backupTo, openStore, type ProbeReading, restoreFrom, type Store } from "../store/index.js";
import { BadInput } from "./exit.js";
import { askPassword } from "./password.js";
import type { Shell } from "./program.js";
import { dataOption, told, USUAL_DATA } from "./store-flags.js";

interface DataFlags {
  readonly data?: string;
}

/** Commands on the store of a base, whether it is being kept at the moment or not. */
export function addBaseData(program: Command, shell: Shell): void {
  const say = (text: string) => shell.stdout.write(`${text}\n`);

  program
    .command("backup")
    .description(
      "write the whole base to one checked file, while it is being kept; keep the file as safe as the store",
    )
    .argument("<file>", "file to write")
    .addOption(dataOption())
    .action(async (file: string, flags: DataFlags) => {
      const { events, readings } = await told(() => backupTo(flags.data ?? USUAL_DATA, file));
      say(
        `${events} events and ${readings} readings written to ${file}. It holds password hashes: keep it safe.`,
      );
    });

  program
    .command("restore")
    .description("fill an empty store from a file that backup wrote")
    .argument("<file>", "file to read")
    .addOption(dataOption())
    .action(async (file: string, flags: DataFlags) => {
      const { events, readings } = await told(() => restoreFrom(flags.data ?? USUAL_DATA, file));
      say(`${events} events and ${readings} readings restored from ${file}`);
    });

  program
    .command("export")
    .description("the logbook as JSON or CSV by the file's name, or the probes' readings as CSV")
    .argument("<file>", "file to write, .json or .csv")
    .addOption(dataOption())
    .addOption(
      new Option("--readings <resolution>", "readings of the probes instead of events").choices([
        "raw",
        "minute",
        "ten-minutes",
        "hour",
      ]),
    )
    .action((file: string, flags: DataFlags & { readings?: "raw" | "minute" | "ten-minutes" | "hour" }) =>
      withStore(flags, async (store) => {
        const isCsv = /\.csv$/i.test(file);
        if (flags.readings !== undefined) {
          if (!isCsv) throw wrongName(file, "a name that ends in .csv");
          const readings = await allReadings(store, flags.readings);
          writeTextFile(file, readingsToCsv(readings));
          say(`${readings.length} readings written to ${file}`);
          return;
        }
        if (!isCsv && !/\.json$/i.test(file)) throw wrongName(file, "a name that ends in .json or .csv");
        const events = await allEvents(store);
        writeTextFile(file, isCsv ? eventsToCsv(events) : eventsToJson(events));
        say(`${events.length} events written to ${file}`);
      }),
    );

  program
    .command("import")
    .description(
      "take events (JSON or CSV) or readings (CSV) into the store; what is there already is left as it is",
    )
    .argument("<file>", "file that export wrote")
    .addOption(dataOption())
    .action((file: string, flags: DataFlags) =>
      withStore(flags, async (store) => {
        const text = readTextFile(file);
        if (!text.ok) {
          throw new BadInput([
            { path: "FILE", expected: `a file that can be read (${text.reason})`, received: file },
          ]);
        }
        if (isReadings(text.text)) say(await importReadings(store, text.text));
        else say(await importEvents(store, text.text, /\.csv$/i.test(file)));
      }),
    );

  program
    .command("owner")
    .description(
      "set up an owner, or give one a new password; asked for here, or the first line of standard input",
    )
    .argument("<name>", "name to sign in with")
    .addOption(dataOption())
    .action((name: string, flags: DataFlags) =>
      withStore(flags, async (store) => {
        const accounts = createAccounts(store);
        const user = await accounts.byName(name);
        if (user !== undefined && user.role !== "owner") {
          throw new BadInput([
            { path: "name", expected: "an owner, or a name not in use", received: `${name}, a ${user.role}` },
          ]);
        }
        const password = await askPassword(`New password for ${name}: `, shell);
        try {
          if (user !== undefined) await accounts.changePassword(user, password, "password");
          else if ((await store.users()).some(({ role }) => role === "owner"))
            await accounts.add(name, password, "owner");
          else await accounts.setUpOwner(name, password);
        } catch (error) {
          throw asBadInput(error);
        }
        say(
          user === undefined
            ? `${name} is set up as owner.`
            : `${name} has a new password; every session is ended.`,
        );
      }),
    );

  async function withStore(flags: DataFlags, work: (store: Store) => Promise<void>): Promise<void> {
    const store = await told(() => openStore(flags.data ?? USUAL_DATA));
    try {
      await work(store);
    } finally {
      await store.close();
    }
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

type Resolution = Parameters<Store["readings"]>[0]["resolution"];

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
  return `${kept} readings taken in, ${known} were there already, ${readings.length - kept - known} too old to be kept`;
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
  return `${kept} events taken in, ${known} were there already`;
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
