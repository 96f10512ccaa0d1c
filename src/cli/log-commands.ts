import type { Command } from "commander";
import { writeTextFile } from "../node/index.js";
import type { Answers } from "./answers.js";
import { FLAG, type RunFlags } from "./flags.js";
import { type LogFlags, logFrom } from "./log-file.js";
import { learningText } from "./text/learning-text.js";
import { nowText } from "./text/now-text.js";

/** Commands on a log of temperatures. */
export function addLogCommands(program: Command, answers: Answers): void {
  logCommand(program, "learn", "What a temperature log teaches about this aircraft")
    .option("--save <file>", "save what was learned, for `learned` in scenarios")
    .action(async (file: string, flags: RunFlags & LogFlags & { save?: string }) => {
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

function logCommand(program: Command, name: string, description: string): Command {
  return program
    .command(name)
    .description(description)
    .argument("<file>", "scenario document with the events of the logged time")
    .requiredOption("--log <file>", "CSV file of logged temperatures")
    .addOption(FLAG.column())
    .option("--log-zone <zone>", "IANA time zone of log times that name none")
    .addOption(FLAG.logUnit())
    .addOption(FLAG.logEngine())
    .addOption(FLAG.json())
    .addOption(FLAG.units())
    .addOption(FLAG.wind());
}
