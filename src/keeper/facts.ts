import type { LogbookEvent } from "../logbook/index.js";

/** Events of the keeper's own that must not be lost while nothing can be written: they wait, in order. */
export interface Facts {
  add(event: LogbookEvent): void;
  readonly waiting: number;
  /** Tries to write what waits; true when nothing waits any more. */
  flush(): Promise<boolean>;
}

const MOST = 200;

export function createFacts(
  record: (events: readonly LogbookEvent[]) => Promise<unknown>,
  onTrouble: (error: unknown) => void,
): Facts {
  const waiting: LogbookEvent[] = [];
  let underWay: Promise<boolean> | undefined;

  async function write(): Promise<boolean> {
    while (waiting.length > 0) {
      const batch = waiting.slice(0, MOST);
      try {
        await record(batch);
      } catch (error) {
        onTrouble(error);
        return false;
      }
      waiting.splice(0, batch.length);
    }
    return true;
  }

  function flush(): Promise<boolean> {
    underWay ??= write().then((done) => {
      underWay = undefined;
      // What came in between the last look and now.
      return done && waiting.length > 0 ? flush() : done;
    });
    return underWay;
  }

  return {
    add(event) {
      waiting.push(event);
      void flush();
    },
    get waiting() {
      return waiting.length;
    },
    flush,
  };
}
