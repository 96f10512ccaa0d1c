import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach } from "vitest";
import { pause } from "../devices/waiting.js";
import { type Serving, serve } from "./serving.js";

// Real processes, really killed: the base in one, the made aircraft with their heaters in another. They run what is
// built (`npm run build`).

export const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

export function newData(): string {
  const folder = mkdtempSync(join(tmpdir(), "soakline-serve-"));
  ends.push(() => rmSync(folder, { recursive: true, force: true }));
  return join(folder, "demo.sqlite");
}

export async function served(...args: string[]): Promise<Serving> {
  const one = await serve(["--demo", ...args]);
  ends.push(() => one.kill("SIGKILL"));
  return one;
}

/** On by hand, as soon as the switch can be. */
export async function switchOn({ post }: Serving, aircraft: string): Promise<void> {
  for (let n = 0; ; n++) {
    const response = await post(`/api/v1/switches/${aircraft}/lead`, { to: "on", minutes: 60 });
    if (response.ok) return;
    if (n > 100) throw new Error(await response.text());
    await pause(300);
  }
}
