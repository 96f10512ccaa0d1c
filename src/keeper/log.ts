import type { ServerOptions } from "../server/index.js";

export interface KeeperLog {
  write(level: "info" | "warn" | "error", text: string, more?: object): void;
}

const ORDER = { debug: 0, info: 1, warn: 2, error: 3 } as const;

/** Lines of JSON beside those of the server. */
export function createKeeperLog(options: ServerOptions["log"]): KeeperLog {
  if (options === false) return { write: () => undefined };
  const { level: least, stream = process.stdout } = options;
  return {
    write(level, text, more = {}) {
      if (ORDER[level] < ORDER[least]) return;
      stream.write(
        `${JSON.stringify({ level, time: new Date().toISOString(), part: "keeper", msg: text, ...more })}\n`,
      );
    },
  };
}
