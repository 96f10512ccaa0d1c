import type { LogbookEvent, ProbeReading, StoredEvent } from "../logbook/index.js";

export interface AppendResult {
  /** Events that are new, in the order given. */
  readonly kept: readonly StoredEvent[];
  /** Ids that were there already with the same content. */
  readonly known: readonly string[];
  /** Ids that were there already with other content: nothing was changed. */
  readonly conflicting: readonly string[];
}

export interface AppendReadingsResult {
  readonly kept: number;
  readonly known: number;
  /**
   * Of a time whose raw readings were dropped: not kept, because nobody could tell any more whether they are in the
   * rollups. Left out where there were none.
   */
  readonly tooOld?: number;
}

export type Resolution = "raw" | "minute" | "ten-minutes" | "hour";

export interface ReadingsRequest {
  readonly aircraft: string;
  /** All probes of the aircraft where left out. */
  readonly probes?: readonly string[];
  /** [ms] since 1970 UTC: from (inclusive) to (exclusive). */
  readonly from: number;
  readonly to: number;
  readonly resolution: Resolution;
  readonly limit: number;
}

/** One step of a rollup; for "raw" low, mean and high are the same and count is 1. */
export interface ReadingsRow {
  readonly probe: string;
  /** [ms] since 1970 UTC, start of the step. */
  readonly time: number;
  readonly low: number;
  readonly mean: number;
  readonly high: number;
  readonly count: number;
}

export type Role = "owner" | "pilot" | "viewer" | "device";

export interface UserRow {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  /** As the password library writes it; never leaves the server. */
  readonly passwordHash: string;
}

export interface SessionRow {
  /** SHA-256 of the token, hex: the token itself is not kept. */
  readonly tokenHash: string;
  readonly user: string;
  /** [ms] since 1970 UTC. */
  readonly expires: number;
  readonly lastSeen: number;
}

export interface DeviceTokenRow {
  readonly id: string;
  readonly name: string;
  readonly tokenHash: string;
  readonly role: Role;
  readonly created: number;
}

/** Everything that has to outlive the process. One store may hold several bases, each with a name of its own. */
export interface Store {
  append(events: readonly LogbookEvent[]): Promise<AppendResult>;
  /** Events after a sequence, oldest first. */
  eventsAfter(sequence: number, limit: number): Promise<readonly StoredEvent[]>;
  /** The newest events first, for the logbook's pages: before a sequence, of an aircraft, of kinds. */
  eventsBefore(request: {
    readonly before?: number;
    readonly aircraft?: string;
    readonly kinds?: readonly string[];
    readonly limit: number;
  }): Promise<readonly StoredEvent[]>;
  event(id: string): Promise<StoredEvent | undefined>;
  /** Readings are known by aircraft, probe and time; the same again is counted as known. */
  appendReadings(rows: readonly ProbeReading[]): Promise<AppendReadingsResult>;
  /** Oldest first. */
  readings(request: ReadingsRequest): Promise<readonly ReadingsRow[]>;
  /** The newest reading of each probe of each aircraft. */
  latestReadings(): Promise<readonly ProbeReading[]>;
  /**
   * Brings the rollups up to date with what was kept; cheap when there is nothing to do.
   * @param pauseMs [ms] others have for themselves between two short transactions; next to none where left out
   */
  rollUp(pauseMs?: number): Promise<void>;
  /**
   * Rolls up, then drops raw readings before a time [ms] (down to the full hour), but never the newest of a probe.
   * Rollups stay. Answers how many were dropped.
   */
  dropRawBefore(time: number): Promise<number>;
  /** Drops the rollups by the minute before a time, as far as the raw readings are gone too. Answers how many. */
  dropMinutesBefore(time: number): Promise<number>;
  /** Small states that are replaced whole: of switches, filters, the runner. */
  saveState(key: string, value: unknown): Promise<void>;
  loadState(key: string): Promise<unknown>;
  states(prefix: string): Promise<ReadonlyMap<string, unknown>>;
  users(): Promise<readonly UserRow[]>;
  saveUser(user: UserRow): Promise<void>;
  removeUser(id: string): Promise<void>;
  saveSession(session: SessionRow): Promise<void>;
  session(tokenHash: string): Promise<SessionRow | undefined>;
  removeSession(tokenHash: string): Promise<void>;
  removeSessionsOf(user: string): Promise<void>;
  removeExpiredSessions(now: number): Promise<void>;
  deviceTokens(): Promise<readonly DeviceTokenRow[]>;
  saveDeviceToken(token: DeviceTokenRow): Promise<void>;
  removeDeviceToken(id: string): Promise<void>;
  /** Writes and reads back a row; throws when the store cannot be written. */
  check(): Promise<void>;
  close(): Promise<void>;
}
