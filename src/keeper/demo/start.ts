import { fork } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";
import type { Doing } from "./world.js";

export interface DemoSettings {
  readonly url: string;
  readonly seed: number;
  /** [ms] since 1970 UTC when the demo's logbook was opened, and now. */
  readonly opened: number;
  readonly from: number;
  /** Seconds of the made world in one real second. */
  readonly speed: number;
  /** Where the temperatures are kept through a restart. */
  readonly worldFile?: string;
  /** Whether it says on standard output when a heater goes on or off. */
  readonly talks?: boolean;
}

/** What people did with the aircraft, as the logbook has it. */
export interface DemoNews {
  readonly standing: Readonly<Record<string, Doing>>;
}

export interface DemoProcess {
  readonly pid: number | undefined;
  tell(news: DemoNews): void;
  close(): Promise<void>;
}

export function startDemoProcess(settings: DemoSettings): DemoProcess {
  const child = fork(fileURLToPath(new URL("./process.js", import.meta.url)), [JSON.stringify(settings)]);
  return {
    pid: child.pid,
    tell(news) {
      if (child.connected) child.send(news);
    },
    async close() {
      if (child.exitCode !== null || child.signalCode !== null) return;
      const ended = once(child, "exit");
      if (child.connected) child.disconnect();
      const timer = setTimeout(() => child.kill("SIGKILL"), 5000);
      await ended;
      clearTimeout(timer);
    },
  };
}
