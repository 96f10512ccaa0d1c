import type { DurableState } from "../switching/index.js";

export interface Saver {
  /** Only the newest counts: one that waits is replaced. */
  save(id: number, saved: DurableState): void;
  /** Resolves when nothing waits any more. */
  settled(): Promise<void>;
  close(): void;
}

export interface SaverOptions {
  readonly saveState: (saved: DurableState) => Promise<void>;
  readonly onSaved: (id: number) => void;
  readonly onFailed: (error: unknown) => void;
  /** [ms] after a failure until the newest is tried again. */
  readonly againMs?: number;
}

/** Saves one after the other, never two at once, so that an older state cannot overwrite a newer one. */
export function createSaver({ saveState, onSaved, onFailed, againMs = 5000 }: SaverOptions): Saver {
  let waiting: { readonly id: number; readonly saved: DurableState } | undefined;
  let running: Promise<void> | undefined;
  let again: NodeJS.Timeout | undefined;
  let closed = false;

  const run = async () => {
    while (waiting !== undefined && !closed) {
      const { id, saved } = waiting;
      waiting = undefined;
      try {
        await saveState(saved);
        onSaved(id);
      } catch (error) {
        waiting ??= { id, saved };
        onFailed(error);
        if (!closed) again = setTimeout(start, againMs);
        return;
      }
    }
  };
  const start = () => {
    clearTimeout(again);
    again = undefined;
    running ??= run().finally(() => {
      running = undefined;
      if (waiting !== undefined && again === undefined && !closed) start();
    });
  };
  return {
    save(id, saved) {
      waiting = { id, saved };
      // While the store fails it is tried in its own time, not with every change.
      if (again === undefined) start();
    },
    settled: () => running ?? Promise.resolve(),
    close() {
      closed = true;
      clearTimeout(again);
    },
  };
}
