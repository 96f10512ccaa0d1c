import type { Log } from "../devices/index.js";
import type { ServerOptions } from "../server/index.js";

export interface KeeperLog {
  /** As devices call it. */
  readonly onLog: Log;
  write(level: "info" | "warn" | "error", text: string, more?: object): void;
}

const ORDER = { debug: 0, info: 1, warn: 2, error: 3 } as const;

/** Lines of JSON beside those of the server. */
export function createKeeperLog(options: ServerOptions["log"]): KeeperLog {
  if (options === false) return { write: () => undefined, onLog: () => undefined };
  const { level: least, stream = process.stdout } = options;
  return {
    write,
    onLog: (level, text) => write(level === "warning" ? "warn" : level, text),
  };

  function write(level: "info" | "warn" | "error", text: string, more: object = {}): void {
    if (ORDER[level] < ORDER[least]) return;
    stream.write(
      `${JSON.stringify({ level, time: new Date().toISOString(), part: "keeper", msg: text, ...more })}\n`,
    );
  }
}
