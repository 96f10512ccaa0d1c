import { svelte } from "@sveltejs/vite-plugin-svelte";
import { configDefaults, defineConfig } from "vitest/config";
import { BUILT_FILES, builtModules } from "./vitest.built.ts";

/** Talk over networks, disks and processes of their own; wait more than they work. */
const SERVICES = "test/{cli,devices,keeper,node,server,store}/**/*.test.ts";
/** Put something in the place of a module of the program, which needs its sources. */
const MOCKING = [
  "test/planning/wind-range.test.ts",
  "test/keeper/made-protocols.test.ts",
  "test/server/access-passwords.test.ts",
];
/** Needs what a machine may not have, or much time: in a tier of its own. */
const APART = "test/**/*.{browser,broker,postgres,soak}.test.ts";
/** The app's state without a browser: its runes are compiled, and a device is around it. */
const STATE = "test/web/state/*.test.ts";

const onSources = (name: string, test: object) => ({ extends: true as const, test: { name, ...test } });
const project = (name: string, test: object) => ({ ...onSources(name, test), plugins: [builtModules] });

export default defineConfig({
  test: {
    testTimeout: 60_000,
    pool: "threads",
    // On two cores: two work while one waits.
    maxWorkers: 3,
    setupFiles: ["test/seed.ts"],
    server: { deps: { external: [BUILT_FILES] } },
    globalSetup: ["./vitest.built.ts"],
    // `npm test` runs the first four, .ci/run all of them.
    projects: [
      project("pure", {
        include: ["test/**/*.test.ts"],
        exclude: [...configDefaults.exclude, SERVICES, ...MOCKING, APART, STATE],
        // The same modules serve all files: nothing of the core keeps a state.
        isolate: false,
      }),
      {
        ...project("state", { include: [STATE], setupFiles: ["test/seed.ts", "test/web/state/device.ts"] }),
        plugins: [svelte(), builtModules],
      },
      project("integration", {
        include: [SERVICES],
        exclude: [...configDefaults.exclude, ...MOCKING, APART],
      }),
      onSources("mocking", { include: MOCKING }),
      project("browser", { include: ["test/**/*.browser.test.ts"] }),
      project("broker", {
        include: ["test/**/*.broker.test.ts", "test/devices/link.test.ts"],
        env: { TEST_TIER: "broker" },
      }),
      project("postgres", {
        include: ["test/**/*.postgres.test.ts", "test/store/!(crash).test.ts"],
        env: { TEST_TIER: "postgres" },
      }),
      project("soak", {
        include: ["test/**/*.soak.test.ts", "test/**/*.property.test.ts"],
        env: { TEST_TIER: "soak" },
        testTimeout: 600_000,
      }),
    ],
  },
});
