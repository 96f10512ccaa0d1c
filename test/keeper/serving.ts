import { type ChildProcess, spawn } from "node:child_process";
import { PLAIN } from "../cli/run.js";
import { until } from "../devices/waiting.js";

/** `soakline serve` as its users run it, from what is built. */
export interface Serving {
  readonly url: string;
  readonly said: () => string;
  get(path: string): Promise<unknown>;
  post(path: string, body: unknown): Promise<Response>;
  kill(signal: NodeJS.Signals): Promise<number | null>;
}

export async function serve(args: readonly string[]): Promise<Serving> {
  const child: ChildProcess = spawn(
    process.execPath,
    ["dist/cli/main.js", "serve", "--port", "0", "--log", "error", ...args],
    { env: PLAIN, stdio: ["ignore", "pipe", "pipe"] },
  );
  let said = "";
  for (const stream of [child.stdout, child.stderr]) {
    stream?.setEncoding("utf8").on("data", (text) => {
      said += text;
    });
  }
  const ended = new Promise<number | null>((resolve) => child.once("exit", resolve));
  await until(() => /Open http/.test(said) || child.exitCode !== null, 60_000, `serve says: ${said}`);
  const url = /Open (http:\/\/\S+)/.exec(said)?.[1];
  if (url === undefined) throw new Error(said);
  return {
    url,
    said: () => said,
    async get(path) {
      const response = await fetch(url + path);
      if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
      return response.json();
    },
    post: (path, body) =>
      fetch(url + path, {
        method: "POST",
        headers: { "content-type": "application/json", "soakline-request": "test" },
        body: JSON.stringify(body),
      }),
    kill(signal) {
      child.kill(signal);
      return ended;
    },
  };
}
