// The CVODE program as functions: compile it, and ask it for errors and times.
import { execFileSync, spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { problemFile } from "./problem-file.mjs";

/** What CVODE does at weather knots, its highest order, and how much less exactly it takes light parts; see main.c. */
export const WAYS = ["restart", "stop", "pass"].flatMap((knots) =>
  [3, 5].flatMap((order) => [1, 20].map((light) => ({ knots, order, light }))),
);

/** Path of the compiled program; ends the process with a plain word where it cannot be compiled. */
export function compileCvode(folder) {
  const program = join(folder, "cvode");
  const sources = ["main.c", "network.c", "network-file.c"].map((name) =>
    fileURLToPath(new URL(name, import.meta.url)),
  );
  const libraries = ["cvode", "nvecserial", "sunmatrixdense", "sunlinsoldense"].map(
    (name) => `-lsundials_${name}`,
  );
  const { error, status, stderr } = spawnSync("gcc", [
    "-O2",
    "-std=gnu11",
    "-o",
    program,
    ...sources,
    ...libraries,
    "-lm",
  ]);
  if (error === undefined && status === 0) return program;
  console.error(
    "This benchmark needs a C compiler and SUNDIALS 6 (Debian: apt-get install gcc libc6-dev libsundials-dev).",
  );
  console.error(String(error?.message ?? stderr));
  process.exit(1);
}

/** One described problem for CVODE. */
export function cvodeProblem(program, folder, description) {
  const problem = join(folder, `${description.name}.txt`);
  const reference = join(folder, `${description.name}.reference`);
  writeFileSync(problem, problemFile(description));
  run("reference", reference);
  return {
    /** Samples x parts [K] of a tight run. */
    reference: new Float64Array(new Uint8Array(readFileSync(reference)).buffer),
    /** [K] greatest difference from the tight run at each tolerance. */
    errors: ({ knots, order, light }, tolerances) =>
      run("errors", reference, knots, order, light, ...tolerances)
        .split("\n")
        .map(Number),
    /** Median CPU time [ms] and counts of one integration. */
    time({ knots, order, light, tolerance }, seconds) {
      const answer = run("time", seconds, knots, order, light, tolerance);
      const [ms, steps, derivatives, jacobians, factorisations] = answer.split(" ").map(Number);
      return { ms, steps, derivatives, jacobians, factorisations };
    },
  };

  function run(...task) {
    return execFileSync(program, [problem, ...task.map(String)])
      .toString()
      .trim();
  }
}
