import { type Command, Option } from "commander";
import type { Shell } from "./program.js";
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
    .description(
      "write the whole base to one checked file, also while it is kept; keep it as safe as the store",
    )
    .argument("<file>", "file to write")
    .addOption(dataOption())
    .action(async (file: string, flags: DataFlags) =>
      say(await (await base()).backedUp(dataOf(flags), file)),
    );

  program
    .command("restore")
    .description("fill an empty store from a file that backup wrote")
    .argument("<file>", "file to read")
    .addOption(dataOption())
    .action(async (file: string, flags: DataFlags) =>
      say(await (await base()).restored(dataOf(flags), file)),
    );

  program
    .command("export")
    .description("the logbook as JSON or CSV by the file's name, or the probes' readings as CSV")
    .argument("<file>", "file to write, .json or .csv")
    .addOption(dataOption())
    .addOption(
      new Option("--readings <resolution>", "readings of the probes instead of events").choices(RESOLUTIONS),
    )
    .action(async (file: string, flags: DataFlags & { readings?: (typeof RESOLUTIONS)[number] }) =>
      say(await (await base()).exported(dataOf(flags), file, flags.readings)),
    );

  program
    .command("import")
    .description("import events (JSON or CSV) or readings (CSV); nothing in the store is overwritten")
    .argument("<file>", "file that export wrote")
    .addOption(dataOption())
    .action(async (file: string, flags: DataFlags) =>
      say(await (await base()).imported(dataOf(flags), file)),
    );

  program
    .command("owner")
    .description(
      "set up an owner, or give one a new password; asked for, or the first line of standard input",
    )
    .argument("<name>", "name to sign in with")
    .addOption(dataOption())
    .action(async (name: string, flags: DataFlags) =>
      say(await (await base()).ownerSetUp(dataOf(flags), name, shell)),
    );
}

const RESOLUTIONS = ["raw", "minute", "ten-minutes", "hour"] as const;
