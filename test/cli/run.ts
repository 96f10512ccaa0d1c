import { spawn } from "node:child_process";
import { Readable } from "node:stream";
import { type JobKind, perform, type Results } from "../../src/cli/job.js";
import { runCommandLine } from "../../src/cli/program.js";
import type { Shell } from "../../src/cli/shell.js";
import type { Outcome } from "../../src/index.js";
import { readTextFile } from "../../src/node/index.js";

export interface Finished {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Environment of a plain terminal with UTF-8; tests change what they are about. */
export const PLAIN = { PATH: process.env.PATH, LANG: "C.UTF-8" };

export interface Circumstances {
  readonly env?: NodeJS.ProcessEnv;
  readonly input?: string;
}

/** Runs the whole command line in this process, with streams of its own. */
export async function soakline(
  args: readonly string[],
  { env = PLAIN, input = "" }: Circumstances = {},
): Promise<Finished> {
  let [stdout, stderr] = ["", ""];
  let code = 0;
  await runCommandLine(["node", "soakline", ...args], {
    env,
    stdin: Readable.from([input]),
    stdout: {
      write(text: string | Uint8Array) {
        stdout += text;
        return true;
      },
    },
    stderr: {
      write(text: string | Uint8Array) {
        stderr += text;
        return true;
      },
    },
    readText: (path) => (path === "-" ? { ok: true, text: input } : readTextFile(path)),
    runJob: answered,
    exitWith(given) {
      code = given;
    },
    interruptible: (work) => work,
  });
  return { code, signal: null, stdout, stderr };
}

const outcomes = new Map<string, Outcome<Results[JobKind]>>();

/** What a worker would answer, worked out once for each job: a job has no other input than itself and files that stand. */
const answered: Shell["runJob"] = async (job) => {
  const key = JSON.stringify(job);
  if (!outcomes.has(key)) outcomes.set(key, await perform(job, () => true));
  return structuredClone(outcomes.get(key)) as never;
};

/** Runs the built command line as its users do: a process, its pipes, a worker. */
export function soaklineProcess(
  args: readonly string[],
  /** `interrupted` sends what Ctrl-C sends, half a second after all input was taken. */
  { env = PLAIN, input = "", interrupted = false }: Circumstances & { readonly interrupted?: boolean } = {},
): Promise<Finished> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ["dist/cli/main.js", ...args], { env });
    let stdout = "";
    let stderr = "";
    child.stdout.setEncoding("utf8").on("data", (text) => {
      stdout += text;
    });
    child.stderr.setEncoding("utf8").on("data", (text) => {
      stderr += text;
    });
    child.on("error", reject);
    child.on("close", (code, signal) => resolve({ code, signal, stdout, stderr }));
    child.stdin.on("error", () => undefined); // a child that fails before it reads closes the pipe
    if (interrupted) child.stdin.on("finish", () => setTimeout(() => child.kill("SIGINT"), 500));
    child.stdin.end(input);
  });
}
