#!/usr/bin/env node
import { CommanderError } from "commander";
import { BadInput, EXIT, type ExitCode } from "./exit.js";
import { createProgram, type Shell } from "./program.js";

const shell: Shell = {
  env: process.env,
  stdout: process.stdout,
  stderr: process.stderr,
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
};

// A reader that has seen enough (head, less) closes the pipe; that is no failure.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
  process.exit();
});

try {
  await createProgram(shell).parseAsync(process.argv);
} catch (error) {
  process.exitCode = codeOf(error);
}

function codeOf(error: unknown): ExitCode {
  // The parser has already said what is wrong, or shown its help.
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.ok : EXIT.badInput;
  if (error instanceof BadInput) {
    process.stderr.write(`${error.message}\n`);
    return EXIT.badInput;
  }
  process.stderr.write(
    `internal error, a mistake in the program: ${error instanceof Error ? error.stack : error}\n`,
  );
  return EXIT.internalError;
}
