import type { Registry } from "prom-client";
import type { Store } from "../store/index.js";
import type { Live } from "./live.js";

export interface ServerOptions {
  readonly store: Store;
  /** [ms] since 1970 UTC. */
  readonly clock: () => number;
  readonly live: Live;
  /** Folder of the built web app; left out, only the API is served. */
  readonly webFolder?: string;
  readonly access: AccessOptions;
  /** Structured lines (JSON) to a stream, standard output where left out; false for none. */
  readonly log: false | { readonly level: LogLevel; readonly stream?: { write(line: string): void } };
  /** The server adds its metrics; whatever else is registered is shown with them. */
  readonly metrics: Registry;
  readonly limits?: Partial<Limits>;
}

export type LogLevel = "debug" | "info" | "warn" | "error";

export interface AccessOptions {
  /** Names it is reached by, without port, beside localhost and plain addresses: "base.lan". */
  readonly hosts: readonly string[];
  /** Whether browsers reach it over TLS: cookies are then Secure and HSTS is sent. */
  readonly https: boolean;
  /** Addresses of proxies whose X-Forwarded-For is believed. */
  readonly trustedProxies?: readonly string[];
  /** One-time code that lets somebody who is not on this computer set up the first owner; see `newSetUpCode`. */
  readonly setUpCode?: string;
  /** [min] a session may lie idle; 30 where left out. */
  readonly sessionIdleMin?: number;
  /** [h] a session lasts at the longest; 12 where left out. */
  readonly sessionLongestH?: number;
}

/** Origin of every default: project judgement, but where a source is named. */
export interface Limits {
  /** Requests of one address in a minute. */
  readonly requestsPerMinute: number;
  /** Requests of one device token in a minute. */
  readonly deviceRequestsPerMinute: number;
  /** Sign-in attempts in 15 min. OWASP ASVS 4.0.3 2.2.1: no more than 100 failed ones an hour on one account. */
  readonly signInsPerAccount: number;
  readonly signInsPerAddress: number;
  /** Open change streams, in all and of one address. */
  readonly streams: number;
  readonly streamsPerAddress: number;
  /** [B] of a request body, and of one that brings events or readings. */
  readonly bodyBytes: number;
  readonly batchBytes: number;
  readonly eventsPerBatch: number;
  readonly readingsPerBatch: number;
  /** [s] between signs of life on a change stream. */
  readonly heartbeatS: number;
  /** [s] a reading may be ahead of the clock here. */
  readonly aheadS: number;
}

export const LIMITS: Limits = {
  requestsPerMinute: 1200,
  deviceRequestsPerMinute: 6000,
  signInsPerAccount: 10,
  signInsPerAddress: 30,
  streams: 200,
  streamsPerAddress: 20,
  bodyBytes: 64 * 1024,
  batchBytes: 4 * 1024 * 1024,
  eventsPerBatch: 500,
  readingsPerBatch: 5000,
  heartbeatS: 20,
  aheadS: 300,
};
