import { hostname } from "node:os";
import type { Command } from "commander";
import { Option } from "commander";
import type { WinterStudyDocument } from "../index.js";
import {
  awaitStudy,
  bundled,
  CheckpointTrouble,
  readerBeside,
  studyOnThreads,
  submitStudy,
  workWinters,
  writeTextFile,
} from "../node/index.js";
import type { Answers } from "./answers.js";
import { BadInput } from "./exit.js";
import { FLAG, overridesOf, type RunFlags } from "./flags.js";
import { textOf } from "./named-file.js";
import { winterText } from "./text/winter-text.js";
import { winterCsv } from "./winter-csv.js";

interface WinterFlags extends RunFlags {
  readonly csv?: string;
  readonly keep?: string;
  readonly threads?: number;
  readonly queue?: string;
}

const QUEUE = () => new Option("--queue <url>", "PostgreSQL database through which processes share the work");

export function addWinterCommands(program: Command, answers: Answers): void {
  const { stderr } = answers.shell;

  program
    .command("winter")
    .description("Whole winters: departures ready, energy, cost and wear of each kit and habit")
    .argument("<file>", 'document of kind "winter"; - reads standard input')
    .addOption(FLAG.json())
    .addOption(FLAG.units())
    .addOption(FLAG.wind())
    .addOption(FLAG.all())
    .addOption(FLAG.members())
    .addOption(FLAG.seed())
    .option("--csv <file>", "also write the rows to a CSV file")
    .option("--keep <file>", "keep finished work in a file, and resume from it")
    .addOption(
      new Option("--threads <n>", "number of threads; without it, one for each core").argParser(aCount),
    )
    .addOption(QUEUE())
    .action(async (file: string, flags: WinterFlags) => {
      const study = await studied(file, flags, answers);
      if (study === undefined) return;
      if (flags.csv !== undefined) writeTextFile(flags.csv, winterCsv(study));
      answers.show(study, flags, winterText);
    });

  program
    .command("winter-worker")
    .description("Work on winters from a shared queue")
    .addOption(QUEUE().makeOptionMandatory())
    .option("--drain", "end when the queue is empty")
    .action(async ({ queue, drain }: { queue: string; drain?: boolean }) => {
      const name = `${hostname()} ${process.pid}`;
      const worked = await reached(queue, () =>
        workWinters({
          ...{ url: queue, name },
          ...(drain === undefined ? {} : { drain }),
          onPiece: (key) => stderr.write(`${key}\n`),
        }),
      );
      stderr.write(`${worked} pieces worked\n`);
    });
}

async function studied(
  file: string,
  flags: WinterFlags,
  { shell, ofWork }: Answers,
): Promise<WinterStudyDocument | undefined> {
  const text = textOf(file, "FILE", shell);
  const { bundle, reading } = bundled(text, overridesOf(flags, shell), readerBeside(file));
  try {
    return await ofWork("winter", flags, async (onProgress) => {
      if (!reading.ok) return { status: "refused", issues: reading.issues };
      const { queue, keep, threads } = flags;
      if (queue === undefined) return studyOnThreads({ bundle, read: reading, keep, threads, onProgress });
      return reached(queue, async () =>
        awaitStudy(queue, await submitStudy(queue, bundle, reading), reading, onProgress),
      );
    });
  } catch (error) {
    if (!(error instanceof CheckpointTrouble)) throw error;
    throw new BadInput([
      { path: "--keep", expected: "a file of this study, or a new one", received: error.message },
    ]);
  }
}

/** Work that needs the database, with a plain word where it cannot be reached. */
async function reached<T>(url: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (!UNREACHED.test(code)) throw error;
    const reason = error instanceof Error ? error.message || code : code;
    throw new BadInput([
      {
        path: "--queue",
        expected: "a PostgreSQL that can be reached",
        received: `${shownUrl(url)} (${reason})`,
      },
    ]);
  }
}

/** No connection, no such database or user, no right: classes of errors of Node and PostgreSQL (SQLSTATE). */
const UNREACHED = /^(ECONN|ENOTFOUND|EAI_|ETIMEDOUT|ERR_INVALID_URL|3D000|28|08|42501)/;

/** An address without its password. */
function shownUrl(url: string): string {
  return url.replace(/:\/\/([^:@/]*):[^@/]*@/, "://$1:...@");
}

function aCount(text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value >= 1 && value <= 256) return value;
  throw new BadInput([{ path: "--threads", expected: "a whole number from 1 to 256", received: text }]);
}
