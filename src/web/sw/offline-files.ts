import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import type { Plugin } from "vite";

/** What the service worker must not keep: itself, and what says whether a server is there. */
const NEVER_KEPT = new Set(["sw.js", "server.json"]);

/** Writes the list of all built files into the service worker, so that the app opens without a network. */
export function offlineFiles(): Plugin {
  let publicDir = "";
  return {
    name: "offline-files",
    apply: "build",
    configResolved(config) {
      publicDir = config.publicDir;
    },
    buildStart() {
      this.emitFile({ type: "chunk", id: join(import.meta.dirname, "sw.ts"), fileName: "sw.js" });
    },
    generateBundle(_, bundle) {
      const worker = bundle["sw.js"];
      if (worker?.type !== "chunk") throw new Error("missing sw.js: the service worker was not built");
      const hash = createHash("sha256");
      const files = new Set(["./"]);
      for (const [name, output] of Object.entries(bundle)) {
        if (NEVER_KEPT.has(name) || name.endsWith(".map")) continue;
        hash.update(name).update(output.type === "chunk" ? output.code : output.source);
        if (name !== "index.html") files.add(name);
      }
      for (const name of filesBelow(publicDir)) {
        if (NEVER_KEPT.has(name)) continue;
        hash.update(name).update(readFileSync(join(publicDir, name)));
        files.add(name);
      }
      worker.code = worker.code
        .replace(/(["'`])__FILES__\1/, JSON.stringify([...files].sort()))
        .replace(/(["'`])__VERSION__\1/, JSON.stringify(hash.digest("hex").slice(0, 16)));
      if (worker.code.includes("__FILES__"))
        throw new Error("the service worker's file list was not filled in");
    },
  };
}

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)));
}
