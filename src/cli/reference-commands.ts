import { Argument, type Command } from "commander";
import type { Answers } from "./answers.js";
import { BadInput } from "./exit.js";
import { FLAG, type RunFlags } from "./flags.js";
import { CATALOGUE, catalogueEntry, catalogueList, type Section } from "./text/catalogue-text.js";
import { whyText } from "./text/why-text.js";
import { whyAnswer } from "./why.js";

/** Commands that look something up. */
export function addReferenceCommands(program: Command, answers: Answers): void {
  program
    .command("why")
    .description("One question at one temperature: answer, equation, source and curve")
    .argument("[topic]", "question to answer; without it, lists them")
    .argument("[temp_c]", "temperature, °C", "-20")
    .addOption(FLAG.aircraft())
    .addOption(FLAG.json())
    .addOption(FLAG.units())
    .addOption(FLAG.wind())
    .action((topic: string | undefined, temp: string, flags: RunFlags & { aircraft: string }) =>
      answers.show(whyAnswer(topic, temp, flags.aircraft), flags, (answer, style) =>
        "topics" in answer ? answer.topics : whyText(answer, Number(temp), style),
      ),
    );

  program
    .command("catalogue")
    .description("Engines, heaters and covers that documents name by id")
    .addArgument(new Argument("[section]", "part of the catalogue").choices(Object.keys(CATALOGUE)))
    .argument("[id]", "one entry, with the source of its numbers")
    .addOption(FLAG.json())
    .addOption(FLAG.units())
    .addOption(FLAG.wind())
    .action((section: Section | undefined, id: string | undefined, flags: RunFlags) => {
      const sections = section === undefined ? (Object.keys(CATALOGUE) as Section[]) : [section];
      if (id !== undefined) return answers.show(entryOf(sections, id), flags, catalogueEntry);
      const entries = Object.fromEntries(sections.map((s) => [s, CATALOGUE[s]]));
      answers.show(entries, flags, (_, style) => catalogueList(sections, style));
    });
}

function entryOf(sections: readonly Section[], id: string) {
  const known = sections.flatMap((s) => CATALOGUE[s]);
  const entry = known.find((e) => e.id === id);
  if (entry !== undefined) return entry;
  throw new BadInput([{ path: "id", expected: `one of ${known.map((e) => e.id).join(", ")}`, received: id }]);
}
