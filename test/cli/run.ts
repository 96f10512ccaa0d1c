import { spawn } from "node:child_process";

export interface Finished {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Environment of a plain terminal with UTF-8; tests change what they are about. */
export const PLAIN = { PATH: process.env.PATH, LANG: "C.UTF-8" };

/** Runs the built command line as its users do. `interruptAfter` [ms] sends it what Ctrl-C sends. */
export function soakline(
  args: readonly string[],
  {
    env = PLAIN,
    input = "",
    interruptAfter,
  }: { env?: NodeJS.ProcessEnv; input?: string; interruptAfter?: number } = {},
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
    child.stdin.end(input);
    if (interruptAfter !== undefined) setTimeout(() => child.kill("SIGINT"), interruptAfter);
  });
}
