import type { ProbeReading } from "../logbook/index.js";

export interface IngestOptions {
  /** Keeps rows; called with one batch at a time. */
  readonly keep: (rows: readonly ProbeReading[]) => Promise<void>;
  /** Told of every row [s] from its arrival until it was kept. */
  readonly onKept: (seconds: number) => void;
  /** Told when a batch could not be kept; it is tried again with the next one. */
  readonly onTrouble: (error: unknown, rows: number) => void;
  /** [ms] of a clock that never steps. */
  readonly mono: () => number;
}

/** [ms] rows wait for others to be kept with them; 500 are kept at once. */
const GATHER = 5;
const MOST = 500;
/** Rows held back while nothing can be kept, an hour of a base with a hundred probes; the oldest are let go beyond, and counted. */
const BACKLOG = 50_000;
/** [ms] until a batch that failed is tried again. */
const AGAIN = 1000;

/** Rows that came in, kept in batches: one commit serves all that came while the last one was under way. */
export interface Ingest {
  add(row: ProbeReading): void;
  readonly waiting: number;
  readonly letGo: number;
  /** Keeps what waits; tries once. */
  flush(): Promise<void>;
}

export function createIngest({ keep, onKept, onTrouble, mono }: IngestOptions): Ingest {
  let rows: ProbeReading[] = [];
  let arrived: number[] = [];
  let timer: NodeJS.Timeout | undefined;
  let underWay: Promise<void> | undefined;
  let letGo = 0;

  function schedule(ms: number): void {
    timer ??= setTimeout(() => {
      timer = undefined;
      void flush();
    }, ms);
  }

  function flush(): Promise<void> {
    underWay ??= commit().then((done) => {
      underWay = undefined;
      // What came in between the last look and now.
      return done && rows.length > 0 ? flush() : undefined;
    });
    return underWay;
  }

  /** False when something could not be kept. */
  async function commit(): Promise<boolean> {
    while (rows.length > 0) {
      const batch = rows.slice(0, MOST);
      const times = arrived.slice(0, MOST);
      try {
        await keep(batch);
      } catch (error) {
        onTrouble(error, rows.length);
        const over = rows.length - BACKLOG;
        if (over > 0) {
          rows = rows.slice(over);
          arrived = arrived.slice(over);
          letGo += over;
        }
        schedule(AGAIN);
        return false;
      }
      rows = rows.slice(batch.length);
      arrived = arrived.slice(batch.length);
      const now = mono();
      for (const time of times) onKept((now - time) / 1000);
    }
    return true;
  }

  return {
    add(row) {
      rows.push(row);
      arrived.push(mono());
      if (underWay !== undefined) return;
      if (rows.length >= MOST) void flush();
      else schedule(GATHER);
    },
    get waiting() {
      return rows.length;
    },
    get letGo() {
      return letGo;
    },
    async flush() {
      if (timer !== undefined) clearTimeout(timer);
      timer = undefined;
      await underWay;
      await flush();
    },
  };
}
