import type { Outcome, TemperatureLog } from "../index.js";
import { failureOf } from "./exit.js";
import { overridesOf, type RunFlags } from "./flags.js";
import type { JobKind, Results } from "./job.js";
import { textOf } from "./named-file.js";
import { createProgress } from "./progress.js";
import type { Shell } from "./shell.js";
import { fitting, type Looks, type Style, styleFor } from "./style.js";

type TextOf<T> = (result: T, style: Style) => readonly string[];

/** How the commands come to their answers and print them. */
export interface Answers {
  readonly shell: Shell;
  /** The answer for the document in a file; undefined, with the reason printed, where there is none. */
  ofFile<K extends JobKind>(
    kind: K,
    file: string,
    flags: RunFlags,
    log?: TemperatureLog,
  ): Promise<Results[K] | undefined>;
  /** The same for a document at hand, told as `label` while it is worked on. */
  ofDocument<K extends JobKind>(
    kind: K,
    document: unknown,
    flags: RunFlags,
    label: string,
  ): Promise<Results[K] | undefined>;
  /** The result of work that may be interrupted; undefined, with the reason printed, where there is none. */
  ofWork<T>(
    label: string,
    flags: RunFlags,
    work: (onProgress: (done: number | undefined) => void) => Promise<Outcome<T>>,
  ): Promise<T | undefined>;
  /** Prints a result as text or as JSON; without one its reason has been said. */
  show<T>(result: T | undefined, flags: RunFlags, text: TextOf<T>): void;
}

export function createAnswers(shell: Shell): Answers {
  const answers: Answers = {
    shell,
    ofFile(kind, file, flags, log) {
      const source = textOf(file, "FILE", shell);
      const job = { kind, source, file, overrides: overridesOf(flags, shell), ...(log && { log }) };
      return answers.ofWork(kind, flags, (onProgress) => shell.runJob(job, onProgress));
    },
    ofDocument(kind, source, flags, label) {
      const job = { kind, source, file: "-", overrides: overridesOf(flags, shell) };
      return answers.ofWork(label, flags, (onProgress) => shell.runJob(job, onProgress));
    },
    async ofWork(label, flags, work) {
      const progress = createProgress(label, shell.stderr);
      try {
        const outcome = await shell.interruptible(work(progress.show), progress.clear);
        progress.clear();
        if (outcome.status === "completed") return outcome.result;
        const { code, lines } = failureOf(outcome);
        shell.stderr.write(printed(lines, styleOf(shell, flags)));
        shell.exitWith(code);
        return undefined;
      } finally {
        progress.clear();
      }
    },
    show(result, flags, text) {
      if (result === undefined) return;
      const style = styleOf(shell, flags);
      shell.stdout.write(flags.json ? `${JSON.stringify(result)}\n` : printed(text(result, style), style));
    },
  };
  return answers;
}

function styleOf({ env, stdout }: Shell, flags: Looks): Style {
  return styleFor({ env, isTty: stdout.isTTY === true }, flags);
}

function printed(lines: readonly string[], style: Style): string {
  return `${lines.map((line) => fitting(line, style)).join("\n")}\n`;
}
