import { Command, CommanderError } from "commander";
import { createAnswers } from "./answers.js";
import { addBaseData } from "./base-data.js";
import { addDocumentCommands } from "./document-commands.js";
import { BadInput, EXIT, type ExitCode } from "./exit.js";
import { addLogCommands } from "./log-commands.js";
import { addReferenceCommands } from "./reference-commands.js";
import { addScenarioCommands } from "./scenario-commands.js";
import { addServe } from "./serve.js";
import type { Shell } from "./shell.js";
import { addTonight } from "./tonight.js";
import { addWinterCommands } from "./winter.js";

const START_HERE = `
Start here:
  soakline tonight                      plans of the invented demo base
  soakline plan scenario.json           the plan for one aircraft
  soakline serve --demo                 the web app, with the demo base
  soakline help plan                    options of one command
`;

/** Runs one command line, its arguments as a process has them. Every end but an endless one is told by `exitWith`. */
export async function runCommandLine(argv: readonly string[], shell: Shell): Promise<void> {
  try {
    await createProgram(shell).parseAsync(argv);
  } catch (error) {
    shell.exitWith(codeOf(error, shell));
  }
}

function createProgram(shell: Shell): Command {
  const program = new Command("soakline")
    .description(
      "Plans the preheat of a light aircraft: when to plug in, with what chance it is ready, how long it stays so.",
    )
    .showHelpAfterError("(soakline --help shows what there is)")
    .addHelpText("after", START_HERE)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => shell.stdout.write(text),
      writeErr: (text) => shell.stderr.write(text),
    });
  const answers = createAnswers(shell);
  addScenarioCommands(program, answers);
  addDocumentCommands(program, answers);
  addWinterCommands(program, answers);
  addLogCommands(program, answers);
  addReferenceCommands(program, answers);
  addTonight(program, answers);
  addServe(program, shell);
  addBaseData(program, shell);
  return program;
}

function codeOf(error: unknown, { stderr }: Shell): ExitCode {
  // The parser has already said what is wrong, or shown its help.
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.ok : EXIT.badInput;
  if (error instanceof BadInput) {
    stderr.write(`${error.message}\n`);
    return EXIT.badInput;
  }
  stderr.write(`internal error, a mistake in the program: ${error instanceof Error ? error.stack : error}\n`);
  return EXIT.internalError;
}
