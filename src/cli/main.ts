#!/usr/bin/env node
import { readTextFile } from "../node/index.js";
import { EXIT } from "./exit.js";
import { runJob } from "./job.js";
import { runCommandLine } from "./program.js";

// A reader that has seen enough (head, less) closes the pipe; that is no failure.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
  process.exit();
});

await runCommandLine(process.argv, {
  env: process.env,
  // Only who asks it for a line opens it: an opened pipe cannot be read at once any more.
  get stdin() {
    return process.stdin;
  },
  stdout: process.stdout,
  stderr: process.stderr,
  readText: readTextFile,
  runJob,
  exitWith(code) {
    process.exitCode = code;
  },
  async interruptible(work, clean) {
    const stop = () => {
      clean();
      process.exit(EXIT.interrupted);
    };
    process.once("SIGINT", stop);
    try {
      return await work;
    } finally {
      process.off("SIGINT", stop);
    }
  },
});
