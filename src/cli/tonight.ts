import type { Command } from "commander";
import { demoBase, type PlanDocument } from "../index.js";
import type { Answers } from "./answers.js";
import { FLAG, type RunFlags } from "./flags.js";
import { tonightText } from "./text/tonight-text.js";

export function addTonight(program: Command, answers: Answers): void {
  program
    .command("tonight")
    .description("The invented demo base: a plan for each aircraft")
    .addOption(FLAG.json())
    .addOption(FLAG.all())
    .addOption(FLAG.units())
    .addOption(FLAG.wind())
    .addOption(FLAG.members())
    .action(async (flags: RunFlags) => {
      const base = demoBase();
      const plans: PlanDocument[] = [];
      for (const source of base.scenarios) {
        const plan = await answers.ofDocument("plan", source, flags, source.name);
        if (plan === undefined) return;
        plans.push(plan);
      }
      answers.show({ ...base, plans }, flags, (_, style) => tonightText(base, plans, style));
    });
}
