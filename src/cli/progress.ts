import type { Output } from "./shell.js";

/** A line on the error stream that says how far the work is; silent where nobody watches it. */
export interface Progress {
  show(done: number | undefined): void;
  clear(): void;
}

export function createProgress(label: string, stream: Output): Progress {
  if (stream.isTTY !== true) return { show: () => undefined, clear: () => undefined };
  let shown = "";
  return {
    show(done) {
      const text = done === undefined ? `${label} ...` : `${label} ${Math.round(done * 100)} %`;
      if (text === shown) return;
      shown = text;
      stream.write(`\r${text}\x1b[K`);
    },
    clear() {
      if (shown !== "") stream.write("\r\x1b[K");
      shown = "";
    },
  };
}
