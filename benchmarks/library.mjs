// The built package, and the output times that the benchmarks on single aircraft share.
import { existsSync } from "node:fs";

export const EVERY_TEN_MINUTES = Array.from({ length: 48 * 6 + 1 }, (_, k) => k * 600);

export async function loadLibrary() {
  const folder = new URL("../dist/", import.meta.url);
  if (!existsSync(folder)) {
    console.error("Build first: npm run build");
    process.exit(1);
  }
  const modules = ["aircraft", "simulation", "properties"].map(
    (name) => import(new URL(`${name}/index.js`, folder).href),
  );
  return Object.assign({}, ...(await Promise.all(modules)));
}
