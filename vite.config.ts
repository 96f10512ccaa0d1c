import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";
import { offlineFiles } from "./src/web/sw/offline-files.ts";

export default defineConfig({
  root: "src/web",
  base: "./",
  plugins: [svelte(), offlineFiles()],
  // The MILP solver asks for it where it runs in Node; in a browser nobody gets there.
  worker: { format: "es", rollupOptions: { external: ["node:module"] } },
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    // A strict content policy forbids the inline script that would preload modules.
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
  },
});
