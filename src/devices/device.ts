import type { OnOff } from "../switching/index.js";

/** A switch in the world, however it is reached. */
export interface SwitchDevice {
  /** Resolves when the command was handed over, which proves nothing yet; rejects when it was not. */
  command(to: OnOff, options?: { readonly onTimeS?: number }): Promise<void>;
  /** What the device says of itself, after the last command and not from memory. */
  onState(hear: (is: OnOff) => void): void;
  /** Whether the device, or the broker before it, can be reached. */
  onLink(hear: (online: boolean) => void): void;
  /** `abrupt`: as if the process had died, so that the broker says off. */
  close(options?: { readonly abrupt?: boolean }): Promise<void>;
}

/** Says what happened, in words; never a secret. */
export type Log = (level: "info" | "warning" | "error", text: string) => void;

export interface Clock {
  /** [s] never steps. */
  monotonicS(): number;
  /** [ms] since 1970 UTC. */
  wallMs(): number;
  /** Calls again and again until the function returned is called. */
  every(ms: number, run: () => void): () => void;
}

export function errorText(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
