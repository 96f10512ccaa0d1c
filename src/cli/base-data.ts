import { type Command, Option } from "commander";
import type { Shell } from "./shell.js";
import { dataOption, USUAL_DATA } from "./store-flags.js";

interface DataFlags {
  readonly data?: string;
}

/** Only these commands wait for what a store needs. */
const base = () => import("./base-store.js");

/** Commands on the store of a base, whether it is being kept at the moment or not. */
export function addBaseData(program: Command, shell: Shell): void {
  const say = (text: string): void => {
    shell.stdout.write(`${text}\n`);
  };
  const dataOf = ({ data = USUAL_DATA }: DataFlags) => data;

  program
    .command("backup")
    .description("Write the whole base to one checked file, also while it runs; it holds password hashes")
    .argument("<file>", "file to write")
    .addOption(dataOption())
    .action(async (file: string, flags: DataFlags) =>
      say(await (await base()).backedUp(dataOf(flags), file)),
    );

  program
    .command("restore")
    .description("Fill an empty store from a backup file")
    .argument("<file>", "file to read")
    .addOption(dataOption())
    .action(async (file: string, flags: DataFlags) =>
      say(await (await base()).restored(dataOf(flags), file)),
    );

  program
    .command("export")
    .description("Export the logbook as .json or .csv, or probe readings as .csv")
    .argument("<file>", "file to write, .json or .csv")
    .addOption(dataOption())
    .addOption(
      new Option("--readings <resolution>", "export probe readings instead of events").choices(RESOLUTIONS),
    )
    .action(async (file: string, flags: DataFlags & { readings?: (typeof RESOLUTIONS)[number] }) =>
      say(await (await base()).exported(dataOf(flags), file, flags.readings)),
    );

  program
    .command("import")
    .description("Import events (JSON or CSV) or readings (CSV); nothing in the store is overwritten")
    .argument("<file>", "file written by export")
    .addOption(dataOption())
    .action(async (file: string, flags: DataFlags) =>
      say(await (await base()).imported(dataOf(flags), file)),
    );

  program
    .command("owner")
    .description("Set up an owner or change a password; it is asked for, or read from standard input")
    .argument("<name>", "name to sign in with")
    .addOption(dataOption())
    .action(async (name: string, flags: DataFlags) =>
      say(await (await base()).ownerSetUp(dataOf(flags), name, shell)),
    );
}

const RESOLUTIONS = ["raw", "minute", "ten-minutes", "hour"] as const;
