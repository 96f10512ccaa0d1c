import { createInterface } from "node:readline";
import { Writable } from "node:stream";
import type { Shell } from "./shell.js";

/** A password typed without being shown, or the first line of what is piped in. */
export function askPassword(
  question: string,
  { stdin, stderr }: Pick<Shell, "stdin" | "stderr">,
): Promise<string> {
  const isTty = stdin.isTTY === true;
  // What is typed is echoed by the line editor, not by the terminal: it writes into nothing.
  const nowhere = new Writable({ write: (_, __, done) => done() });
  const lines = createInterface({ input: stdin, output: nowhere, terminal: isTty });
  if (isTty) stderr.write(question);
  return new Promise((resolve) => {
    let answered = false;
    lines.once("line", (line) => {
      answered = true;
      lines.close();
      resolve(line);
    });
    lines.once("close", () => {
      if (isTty) stderr.write("\n");
      if (!answered) resolve("");
    });
  });
}
