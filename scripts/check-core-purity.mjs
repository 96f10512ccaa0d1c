// The core must give the same numbers everywhere: it may not read the clock or draw unseeded randomness.
// The compiler already keeps DOM and Node out (tsconfig lib/types); these two globals it cannot see.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

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

if (import.meta.url === `file://${process.argv[1]}`) {
  const found = coreFiles("src").flatMap((file) =>
    impureLines(readFileSync(file, "utf8")).map(
      ([line, name]) => `${file}:${line}: ${name} is not allowed in the core`,
    ),
  );
  if (found.length > 0) {
    console.error(found.join("\n"));
    process.exit(1);
  }
}
