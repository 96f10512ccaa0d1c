import type { Command } from "commander";
import type { Answers } from "./answers.js";
import { EXIT } from "./exit.js";
import { FLAG, type RunFlags } from "./flags.js";
import { baseText } from "./text/base-text.js";
import { frostText } from "./text/frost-text.js";
import { kitText } from "./text/kit-text.js";
import { thawText } from "./text/thaw-text.js";

/** Commands on documents of a kind of their own: a base, a wing's night, a stay in the hangar, kits. */
export function addDocumentCommands(program: Command, answers: Answers): void {
  documentCommand(
    program,
    "base",
    "One plan for all aircraft of a base: outlets, hangar bays, carts and people",
  )
    .addOption(FLAG.taf())
    .addOption(FLAG.metar())
    .action(async (file: string, flags: RunFlags) => {
      const plan = await answers.ofFile("base", file, flags);
      if (plan === undefined) return;
      answers.show(plan, flags, baseText);
      answers.shell.exitWith(plan.status === "all-ready" ? EXIT.ok : EXIT.notReachable);
    });

  documentCommand(
    program,
    "frost",
    "Frost on the wing by departure: chance, hours, thickness, with and without a cover",
  )
    .addOption(FLAG.depart())
    .addOption(FLAG.taf())
    .addOption(FLAG.metar())
    .action(async (file: string, flags: RunFlags) =>
      answers.show(await answers.ofFile("frost", file, flags), flags, frostText),
    );

  documentCommand(
    program,
    "thaw",
    "When a snowy or wet aircraft in a hangar is clear and dry, and what freezes again outside",
  )
    .addOption(FLAG.taf())
    .addOption(FLAG.metar())
    .action(async (file: string, flags: RunFlags) =>
      answers.show(await answers.ofFile("thaw", file, flags), flags, thawText),
    );

  documentCommand(program, "kit", "Heaters, covers and switches compared, tonight and in the cold").action(
    async (file: string, flags: RunFlags) =>
      answers.show(await answers.ofFile("kit", file, flags), flags, kitText),
  );
}

/** A command on one document, of the kind of its name unless told otherwise. */
export function documentCommand(
  program: Command,
  name: string,
  description: string,
  what = `document of kind "${name}"`,
): Command {
  return program
    .command(name)
    .description(description)
    .argument("<file>", `${what}; - reads standard input`)
    .addOption(FLAG.json())
    .addOption(FLAG.all())
    .addOption(FLAG.units())
    .addOption(FLAG.wind())
    .addOption(FLAG.members())
    .addOption(FLAG.seed());
}
