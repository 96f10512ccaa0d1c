import type { Command } from "commander";
import type { Answers } from "./answers.js";
import { documentCommand } from "./document-commands.js";
import { EXIT } from "./exit.js";
import { FLAG, type RunFlags } from "./flags.js";
import { awayText } from "./text/away-text.js";
import { explanationText } from "./text/explanation-text.js";
import { planText } from "./text/plan-text.js";
import { simulationText } from "./text/simulation-text.js";

/** Commands on one aircraft's scenario. */
export function addScenarioCommands(program: Command, answers: Answers): void {
  const { exitWith } = answers.shell;

  scenarioCommand(program, "plan", "When to plug in and unplug for the wanted departure")
    .addOption(FLAG.chance())
    .addOption(FLAG.depart())
    .action(async (file: string, flags: RunFlags) => {
      const plan = await answers.ofFile("plan", file, flags);
      if (plan === undefined) return;
      answers.show(plan, flags, planText);
      const isGo = plan.status === "ready" || plan.status === "not-required";
      exitWith(isGo ? EXIT.ok : EXIT.notReachable);
    });

  scenarioCommand(program, "explain", "Why the plan is so: every check, and where the heat goes")
    .addOption(FLAG.chance())
    .addOption(FLAG.depart())
    .action(async (file: string, flags: RunFlags) =>
      answers.show(await answers.ofFile("explain", file, flags), flags, explanationText),
    );

  scenarioCommand(
    program,
    "simulate",
    "Temperature of every part over time, with the document's own events",
  ).action(async (file: string, flags: RunFlags) =>
    answers.show(await answers.ofFile("simulate", file, flags), flags, simulationText),
  );

  scenarioCommand(program, "away", "No power: will it start when you are back, and what would make it do so")
    .addOption(FLAG.chance())
    .addOption(FLAG.back())
    .action(async (file: string, flags: RunFlags) => {
      const away = await answers.ofFile("away", file, flags);
      if (away === undefined) return;
      answers.show(away, flags, awayText);
      exitWith(away.status === "ready" ? EXIT.ok : EXIT.notReachable);
    });
}

function scenarioCommand(program: Command, name: string, description: string): Command {
  return documentCommand(program, name, description, "scenario document")
    .addOption(FLAG.heater())
    .addOption(FLAG.withoutCover())
    .addOption(FLAG.engine())
    .addOption(FLAG.taf())
    .addOption(FLAG.metar());
}
