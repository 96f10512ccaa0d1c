import type { Outcome, ReadFile } from "../index.js";
import type { ExitCode } from "./exit.js";
import type { Job, JobKind, Results } from "./job.js";

/** A stream that text is printed on. */
export type Output = Pick<NodeJS.WriteStream, "write"> & { readonly isTTY?: boolean };

/** What the commands need of the process around them. */
export interface Shell {
  readonly env: NodeJS.ProcessEnv;
  readonly stdin: NodeJS.ReadableStream & { readonly isTTY?: boolean };
  readonly stdout: Output;
  readonly stderr: Output;
  /** The text of a file, "-" for standard input. */
  readonly readText: ReadFile;
  /** Runs the pipeline; `onProgress` hears the share done [0..1], where it is known. */
  runJob<K extends JobKind>(
    job: Job<K>,
    onProgress: (done: number | undefined) => void,
  ): Promise<Outcome<Results[K]>>;
  /** Called with the code the process is to end with. */
  exitWith(code: ExitCode): void;
  /** Runs `clean` should the user interrupt while `work` is under way. */
  interruptible<T>(work: Promise<T>, clean: () => void): Promise<T>;
}
