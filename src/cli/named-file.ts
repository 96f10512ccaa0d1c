import { BadInput } from "./exit.js";
import type { Shell } from "./shell.js";

/** The text of a file named on the command line. Throws BadInput for one that cannot be read. */
export function textOf(file: string, path: string, { readText }: Pick<Shell, "readText">): string {
  const text = readText(file);
  if (text.ok) return text.text;
  throw new BadInput([{ path, expected: `a file that can be read (${text.reason})`, received: file }]);
}
