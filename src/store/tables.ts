import type { Generated } from "kysely";

/** Rows as both databases give them: whole numbers are numbers, times are [ms] since 1970 UTC. */
export interface Tables {
  soakline_schema: { version: number };
  events: {
    base: string;
    sequence: number;
    id: string;
    happened: number;
    received: number;
    kind: string;
    aircraft: string | null;
    /** JSON as it was given. */
    content: string;
    /** SHA-256 of the canonical JSON, hex. */
    hash: string;
  };
  /** A probe of an aircraft at a base, so that readings need not repeat the three names. */
  series: { id: Generated<number>; base: string; aircraft: string; probe: string };
  readings: { series: number; time: number; temp_c: number };
  /** By the minute and by ten minutes: `step` and `start` in [ms]; the mean is `total` over `count`. */
  rollups: {
    series: number;
    step: number;
    start: number;
    low: number;
    total: number;
    high: number;
    count: number;
  };
  /** By the hour, a day (UTC) of a series a row; see hours.ts. */
  hours: { series: number; day: number; content: Uint8Array };
  /** Ten minutes of a series in which readings came in since they were rolled up. */
  dirty: { series: number; start: number };
  /** Before `time`, a base's raw readings were dropped. */
  raw_from: { base: string; time: number };
  states: { base: string; key: string; value: string };
  users: { base: string; id: string; name: string; role: string; password_hash: string };
  sessions: { base: string; token_hash: string; user_id: string; expires: number; last_seen: number };
  device_tokens: {
    base: string;
    id: string;
    name: string;
    token_hash: string;
    role: string;
    created: number;
  };
  /** What was written last to see whether writing works. */
  write_checks: { base: string; written: string };
}
