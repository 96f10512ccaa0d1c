import { Argument, Command } from "commander";
import { demoBase, type PlanDocument, type TemperatureLog } from "../index.js";
import { readTextFile, writeTextFile } from "../node/index.js";
import { addBaseData } from "./base-data.js";
import { BadInput, EXIT, type ExitCode, failureOf } from "./exit.js";
import { FLAG, overridesOf, type RunFlags } from "./flags.js";
import { type JobKind, runJob } from "./job.js";
import { type LogFlags, logFrom } from "./log-file.js";
import { createProgress } from "./progress.js";
import { addServe } from "./serve.js";
import { fitting, type Looks, type Style, styleFor } from "./style.js";
import { awayText } from "./text/away-text.js";
import { baseText } from "./text/base-text.js";
import { CATALOGUE, catalogueEntry, catalogueList, type Section } from "./text/catalogue-text.js";
import { explanationText } from "./text/explanation-text.js";
import { frostText } from "./text/frost-text.js";
import { kitText } from "./text/kit-text.js";
import { learningText } from "./text/learning-text.js";
import { nowText } from "./text/now-text.js";
import { planText } from "./text/plan-text.js";
import { simulationText } from "./text/simulation-text.js";
import { thawText } from "./text/thaw-text.js";
import { tonightText } from "./text/tonight-text.js";
import { whyText } from "./text/why-text.js";
import { whyAnswer } from "./why.js";
import { addWinterCommands } from "./winter.js";

/** What the commands need of the process. */
export interface Shell {
  readonly env: NodeJS.ProcessEnv;
  readonly stdout: NodeJS.WriteStream;
  readonly stderr: NodeJS.WriteStream;
  /** Called with the code the process is to end with. */
  exitWith(code: ExitCode): void;
  /** Runs `clean` should the user interrupt while `work` is under way. */
  interruptible<T>(work: Promise<T>, clean: () => void): Promise<T>;
}

const START_HERE = `
Start here:
  soakline tonight                      plans of the invented demo base
  soakline plan scenario.json           the plan for one aircraft
  soakline serve --demo                 the web app, with the demo base
  soakline help plan                    options of one command
`;

export function createProgram(shell: Shell): Command {
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
  const style = (flags: Looks) => styleFor({ env: shell.env, isTty: shell.stdout.isTTY }, flags);

  runCommand(program, "plan", "When to plug in and unplug for the wanted departure")
    .addOption(FLAG.chance())
    .addOption(FLAG.depart())
    .action(async (file: string, flags: RunFlags) => {
      const plan = await run("plan", file, flags);
      if (plan === undefined) return;
      show(plan, flags, planText);
      const isGo = plan.status === "ready" || plan.status === "not-required";
      shell.exitWith(isGo ? EXIT.ok : EXIT.notReachable);
    });

  runCommand(program, "explain", "Why the plan is so: every check, and where the heat goes")
    .addOption(FLAG.chance())
    .addOption(FLAG.depart())
    .action(async (file: string, flags: RunFlags) =>
      show(await run("explain", file, flags), flags, explanationText),
    );

  runCommand(
    program,
    "simulate",
    "Temperature of every part over time, with the document's own events",
  ).action(async (file: string, flags: RunFlags) =>
    show(await run("simulate", file, flags), flags, simulationText),
  );

  runCommand(program, "away", "No power: will it start when you are back, and what would make it do so")
    .addOption(FLAG.chance())
    .addOption(FLAG.back())
    .action(async (file: string, flags: RunFlags) => {
      const away = await run("away", file, flags);
      if (away === undefined) return;
      show(away, flags, awayText);
      shell.exitWith(away.status === "ready" ? EXIT.ok : EXIT.notReachable);
    });

  documentCommand(
    program,
    "base",
    "One plan for all aircraft of a base: outlets, hangar bays, carts and people",
    'document of kind "base"',
  )
    .addOption(FLAG.taf())
    .addOption(FLAG.metar())
    .action(async (file: string, flags: RunFlags) => {
      const plan = await run("base", file, flags);
      if (plan === undefined) return;
      show(plan, flags, baseText);
      shell.exitWith(plan.status === "all-ready" ? EXIT.ok : EXIT.notReachable);
    });

  airframeCommand(
    program,
    "frost",
    "Frost on the wing by departure: chance, hours, thickness, with and without a cover",
  )
    .addOption(FLAG.depart())
    .addOption(FLAG.taf())
    .addOption(FLAG.metar())
    .action(async (file: string, flags: RunFlags) => show(await run("frost", file, flags), flags, frostText));

  airframeCommand(
    program,
    "thaw",
    "When a snowy or wet aircraft in a hangar is clear and dry, and what freezes again outside",
  )
    .addOption(FLAG.taf())
    .addOption(FLAG.metar())
    .action(async (file: string, flags: RunFlags) => show(await run("thaw", file, flags), flags, thawText));

  documentCommand(
    program,
    "kit",
    "Heaters, covers and switches compared, tonight and in the cold",
    'document of kind "kit"',
  ).action(async (file: string, flags: RunFlags) => show(await run("kit", file, flags), flags, kitText));

  addWinterCommands(program, { ...shell, show });

  logCommand(program, "learn", "What a temperature log teaches about this aircraft")
    .option("--save <file>", "save what was learned, for `learned` in scenarios")
    .action(async (file: string, flags: RunFlags & LogFlags & { save?: string }) => {
      const learning = await run("learn", file, flags, logFrom(flags));
      if (learning !== undefined && flags.save !== undefined) {
        writeTextFile(flags.save, `${JSON.stringify(learning.learned, undefined, 2)}\n`);
      }
      show(learning, flags, learningText);
    });

  logCommand(program, "now", "Temperature of every part at the log's last reading, probed or not").action(
    async (file: string, flags: RunFlags & LogFlags) =>
      show(await run("now", file, flags, logFrom(flags)), flags, nowText),
  );

  program
    .command("why")
    .description("One question at one temperature: answer, equation, source and curve")
    .argument("[topic]", "question to answer; without it, lists them")
    .argument("[temp_c]", "temperature, °C", "-20")
    .addOption(FLAG.aircraft())
    .addOption(FLAG.json())
    .addOption(FLAG.units())
    .addOption(FLAG.wind())
    .action((topic: string | undefined, temp: string, flags: RunFlags & { aircraft: string }) => {
      const answer = whyAnswer(topic, temp, flags.aircraft);
      if (flags.json) printJson(answer);
      else if ("topics" in answer) print(answer.topics, style(flags));
      else print(whyText(answer, Number(temp), style(flags)), style(flags));
    });

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
      if (id === undefined) {
        const entries = Object.fromEntries(sections.map((s) => [s, CATALOGUE[s]]));
        if (flags.json) printJson(entries);
        else print(catalogueList(sections, style(flags)), style(flags));
        return;
      }
      const known = sections.flatMap((s) => CATALOGUE[s]);
      const entry = known.find((e) => e.id === id);
      if (entry === undefined) {
        throw new BadInput([
          { path: "id", expected: `one of ${known.map((e) => e.id).join(", ")}`, received: id },
        ]);
      }
      if (flags.json) printJson(entry);
      else print(catalogueEntry(entry, style(flags)), style(flags));
    });

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
        const plan = await runSource("plan", source, "-", flags, source.name);
        if (plan === undefined) return;
        plans.push(plan);
      }
      if (flags.json) printJson({ ...base, plans });
      else print(tonightText(base, plans, style(flags)), style(flags));
    });

  addServe(program, shell);
  addBaseData(program, shell);
  return program;

  async function run<K extends JobKind>(kind: K, file: string, flags: RunFlags, log?: TemperatureLog) {
    const text = readTextFile(file);
    if (!text.ok) {
      throw new BadInput([
        { path: "FILE", expected: `a file that can be read (${text.reason})`, received: file },
      ]);
    }
    return runSource(kind, text.text, file, flags, kind, log);
  }

  async function runSource<K extends JobKind>(
    kind: K,
    source: unknown,
    file: string,
    flags: RunFlags,
    label: string,
    log?: TemperatureLog,
  ) {
    const progress = createProgress(label, shell.stderr);
    const job = { kind, source, file, overrides: overridesOf(flags), ...(log === undefined ? {} : { log }) };
    const outcome = await shell.interruptible(runJob(job, progress.show), progress.clear);
    progress.clear();
    if (outcome.status === "completed") return outcome.result;
    const { code, lines } = failureOf(outcome);
    shell.stderr.write(`${lines.map((line) => fitting(line, style(flags))).join("\n")}\n`);
    shell.exitWith(code);
    return undefined;
  }

  /** A result as text or as JSON; without one its reason has been said. */
  function show<T>(
    result: T | undefined,
    flags: RunFlags,
    text: (result: T, style: Style) => readonly string[],
  ): void {
    if (result === undefined) return;
    if (flags.json) printJson(result);
    else print(text(result, style(flags)), style(flags));
  }

  function print(lines: readonly string[], style: Style): void {
    shell.stdout.write(`${lines.map((line) => fitting(line, style)).join("\n")}\n`);
  }

  function printJson(value: unknown): void {
    shell.stdout.write(`${JSON.stringify(value)}\n`);
  }
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
    .addOption(FLAG.json())
    .addOption(FLAG.units())
    .addOption(FLAG.wind());
}

function runCommand(program: Command, name: string, description: string): Command {
  return documentCommand(program, name, description, "scenario document")
    .addOption(FLAG.heater())
    .addOption(FLAG.withoutCover())
    .addOption(FLAG.engine())
    .addOption(FLAG.taf())
    .addOption(FLAG.metar());
}

function airframeCommand(program: Command, name: string, description: string): Command {
  return documentCommand(program, name, description, `document of kind "${name}"`);
}

function documentCommand(program: Command, name: string, description: string, what: string): Command {
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
