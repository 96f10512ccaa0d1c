// The core must give the same numbers everywhere: it may not read the clock or draw unseeded randomness.
// The compiler already keeps DOM and Node out (tsconfig lib/types); these two globals it cannot see.
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";

const SHELL_FOLDERS = new Set(["node", "store", "devices", "server", "keeper", "cli", "web"]);
const FORBIDDEN = [
  [/\bDate\s*\.\s*now\b/, "Date.now"],
  [/\bnew\s+Date\s*\(\s*\)/, "new Date()"],
  [/\bMath\s*\.\s*random\b/, "Math.random"],
  [/\bperformance\s*\.\s*now\b/, "performance.now"],
  [/\bTemporal\s*\.\s*Now\b/, "Temporal.Now"],
];

/** Lines of `text` that use a forbidden global, as [line number, name]. */
export function impureLines(text) {
  return text.split("\n").flatMap((line, i) => {
    const code = line.replace(/\/\/.*$/, "").replace(/^\s*\*.*$/, "");
    return FORBIDDEN.filter(([pattern]) => pattern.test(code)).map(([, name]) => [i + 1, name]);
  });
}

function coreFiles(folder, top = true) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (entry.isDirectory()) {
      return top && SHELL_FOLDERS.has(entry.name) ? [] : coreFiles(join(folder, entry.name), false);
    }
    return entry.name.endsWith(".ts") ? [join(folder, entry.name)] : [];
  });
}

/** The app takes a folder of the core by its index alone; but its first load takes these without all of their folders. */
const APART = new Set(["logbook/migrate-event.js", "simulation/members.js"]);

/** Imports of the app that reach into a folder of the core, as [line number, path]. */
export function deepImports(file, text) {
  return text.split("\n").flatMap((line, i) => {
    const path = /(?:from|import\()\s*"(\.[^"?]*)"/.exec(line)?.[1];
    if (path === undefined) return [];
    const target = relative("src", join(dirname(file), path));
    const isOwn = target.startsWith("web/") || target.startsWith("..");
    return isOwn || /^[^/]+\/index\.js$/.test(target) || APART.has(target) ? [] : [[i + 1, target]];
  });
}

if (import.meta.url === `file://${process.argv[1]}`) {
  const found = coreFiles("src").flatMap((file) =>
    impureLines(readFileSync(file, "utf8")).map(
      ([line, name]) => `${file}:${line}: ${name} is not allowed in the core`,
    ),
  );
  const appFiles = readdirSync("src/web", { recursive: true })
    .map((name) => join("src/web", name))
    .filter((name) => /\.(ts|svelte)$/.test(name));
  for (const file of appFiles) {
    for (const [line, path] of deepImports(file, readFileSync(file, "utf8")))
      found.push(`${file}:${line}: ${path} is not for the app (expected an index.js)`);
  }
  if (found.length > 0) {
    console.error(found.join("\n"));
    process.exit(1);
  }
}
