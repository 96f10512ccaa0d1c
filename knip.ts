import type { KnipConfig } from "knip";

/** What runs for users, without tests. */
const isProduction = process.argv.includes("--production");

const config: KnipConfig = {
  entry: [
    "src/calibration/index.ts!",
    "src/cli/worker.ts!",
    "src/node/winter-thread.ts!",
    "src/keeper/planner-worker.ts!",
    "src/web/worker/worker.ts!",
    "src/web/sw/sw.ts!",
    "src/web/sw/offline-files.ts!",
    "benchmarks/**/*.mjs",
    "scripts/*.mjs",
    "test/**/*.test.ts",
  ],
  project: ["src/**/*.{ts,svelte}!", "!src/learning/made-aircraft.ts!", "test/**/*.ts"],
  ignoreDependencies: ["axe-core", "psychrolib"],
  ignoreBinaries: ["gcc", "mosquitto"],
  // The types of a public function are public, whoever names them.
  exclude: isProduction ? [] : ["types"],
  // For users, an export that only its own file uses is one that a test looks at; one that nothing uses is left over.
  ignoreExportsUsedInFile: isProduction,
};

export default config;
