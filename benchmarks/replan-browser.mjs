// The same in a browser: from the question to the first answers of all four demo aircraft, through the page's planner and
// its worker. Needs Chromium (SOAKLINE_CHROMIUM, or /usr/bin/chromium). node benchmarks/replan-browser.mjs [trials]
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { build, preview } from "vite";

const trials = Number(process.argv[2] ?? 40);
const root = fileURLToPath(new URL("./replan-page/", import.meta.url));
const outDir = mkdtempSync(join(tmpdir(), "soakline-replan-"));
const shared = { root, configFile: false, logLevel: "warn", worker: { format: "es" } };
// Only an isolated page may ask how much memory it takes.
const headers = {
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Embedder-Policy": "require-corp",
};

try {
  await build({ ...shared, build: { outDir, emptyOutDir: true, target: "es2022" } });
  const server = await preview({
    ...shared,
    build: { outDir },
    preview: { port: 0, host: "127.0.0.1", headers },
  });
  const browser = await chromium.launch({
    executablePath: process.env.SOAKLINE_CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });
  try {
    const page = await browser.newPage();
    page.on("pageerror", (error) => console.error(error));
    page.on("console", (message) => console.error(message.text()));
    await page.goto(`http://127.0.0.1:${server.httpServer.address().port}/`);
    await page.waitForFunction(() => "measure" in window);
    print(await page.evaluate((count) => window.measure(count), trials));
  } finally {
    await browser.close();
    await server.close();
  }
} finally {
  rmSync(outDir, { recursive: true, force: true });
}

function print({ aircraft, opened, openingFirst, prepared, results, interrupting, memory }) {
  console.log(`${aircraft} aircraft, 200 members, one worker, ${trials} trials a row; wall clock`);
  console.log(
    `worker and logbook open: ${opened.toFixed(0)} ms; first answers of all after that: ${openingFirst.toFixed(0)} ms`,
  );
  console.log(`whole plans of all, and all that look-ups read: ${(prepared / 1000).toFixed(1)} s`);
  console.log("moved            first answers p50    p95 ms     decided p50    p95 ms   basis");
  for (const [kind, { first, decided, bases }] of Object.entries(results)) {
    console.log(
      `${kind.padEnd(17)}${pair(first).padStart(24)}${pair(decided).padStart(22)}     ${bases.join(", ")}`,
    );
  }
  console.log(`${"while planning".padEnd(17)}${pair(interrupting).padStart(24)}`);
  if (memory !== undefined) console.log(`memory of page and worker: ${(memory / 2 ** 20).toFixed(0)} MB`);
}

function pair(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (p) => sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))];
  return `${at(0.5).toFixed(0)}${at(0.95).toFixed(0).padStart(9)}`;
}
