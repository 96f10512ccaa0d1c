import { spawn } from "node:child_process";

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
  /** Sends what Ctrl-C sends, half a second after all input was taken. */
  readonly interrupted?: boolean;
}

/** Runs the built command line as its users do. */
export function soakline(
  args: readonly string[],
  { env = PLAIN, input = "", interrupted = false }: Circumstances = {},
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
