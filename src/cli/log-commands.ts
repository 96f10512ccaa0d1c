import type { Command } from "commander";
import { deriveBase, readEvents } from "../logbook/index.js";
import { writeTextFile } from "../node/index.js";
import type { Answers } from "./answers.js";
import { BadInput } from "./exit.js";
import { FLAG, type RunFlags } from "./flags.js";
import { type LogFlags, logFrom } from "./log-file.js";
import { textOf } from "./named-file.js";
import type { Shell } from "./shell.js";
import { learningText } from "./text/learning-text.js";
import { nowText } from "./text/now-text.js";
import { recordText } from "./text/record-text.js";

/** Commands on a log of temperatures. */
export function addLogCommands(program: Command, answers: Answers): void {
  logCommand(program, "learn", "What a temperature log teaches about this aircraft")
    .option("--save <file>", "save what was learned, for `learned` in scenarios")
    .action(async (file: string, flags: RunFlags & LogFlags & { save?: string }) => {
      if (flags.log === undefined) {
        answers.show(recordOf(file, answers.shell), flags, recordText);
        return;
      }
      const learning = await answers.ofFile("learn", file, flags, logFrom(file, flags, answers.shell));
      if (learning !== undefined && flags.save !== undefined) {
        writeTextFile(flags.save, `${JSON.stringify(learning.learned, undefined, 2)}\n`);
      }
      answers.show(learning, flags, learningText);
    });

  logCommand(program, "now", "Temperature of every part at the log's last reading, probed or not").action(
    async (file: string, flags: RunFlags & LogFlags) =>
      answers.show(
        await answers.ofFile("now", file, flags, logFrom(file, flags, answers.shell)),
        flags,
        nowText,
      ),
  );
}

/** How often the plans in a logbook's export came true. Throws BadInput for a file that is no logbook. */
function recordOf(file: string, shell: Shell) {
  const { events, issues } = readEvents(textOf(file, "FILE", shell));
  const base = issues.length > 0 ? undefined : deriveBase(events);
  if (base !== undefined) return base.record;
  const expected = "--log with a scenario document, or a logbook's export (soakline export) alone";
  throw new BadInput([{ path: "learn", expected, received: file }]);
}

function logCommand(program: Command, name: string, description: string): Command {
  return program
    .command(name)
    .description(description)
    .argument(
      "<file>",
      "scenario document with the events of the logged time; for learn alone a logbook's export",
    )
    .option("--log <file>", "CSV file of logged temperatures")
    .addOption(FLAG.column())
    .option("--log-zone <zone>", "IANA time zone of log times that name none")
    .addOption(FLAG.logUnit())
    .addOption(FLAG.logEngine())
    .addOption(FLAG.json())
    .addOption(FLAG.units())
    .addOption(FLAG.wind());
}
