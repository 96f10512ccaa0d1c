import {
  type Broker,
  connectBroker,
  type Log,
  type ProbeIssue,
  type ProbeReader,
  probeReader,
} from "../devices/index.js";
import type { BaseSetUp } from "../logbook/index.js";
import type { ProbeReading } from "../store/index.js";

export interface ProbeListener {
  /** Listens to the probes of a set-up, and no longer to others. */
  setUp(base: BaseSetUp): void;
  /** Why there is trouble, in sentences. */
  troubles(): readonly string[];
  close(): Promise<void>;
}

export interface ProbeListenerOptions {
  readonly brokerUrl: string;
  readonly clientId: string;
  /** [ms] since 1970 UTC. */
  readonly clock: () => number;
  readonly onReading: (reading: ProbeReading) => void;
  readonly onRefused: (issue: ProbeIssue) => void;
  readonly onLog: Log;
}

/** One connection that hears every probe of the base. */
export function listenToProbes(options: ProbeListenerOptions): ProbeListener {
  const { brokerUrl, clientId, clock, onReading, onRefused, onLog } = options;
  let reader: ProbeReader | undefined;
  let broker: Broker | undefined;
  let topics = "";
  let linked = false;

  function connected(to: readonly string[]): Broker {
    const link = connectBroker({ url: brokerUrl, clientId, onLog });
    link.onLink((online) => {
      if (link === broker) linked = online;
    });
    link.subscribe(to, (message) => {
      if (link !== broker || reader === undefined) return;
      const { readings, issues } = reader.read(message, clock());
      for (const reading of readings) onReading({ ...reading, time: Math.round(reading.time) });
      for (const issue of issues) onRefused(issue);
    });
    return link;
  }

  return {
    setUp(base) {
      reader = probeReader(base);
      const wanted = [...reader.topics].sort();
      // What stays is not interrupted.
      if (wanted.join("\n") === topics) return;
      topics = wanted.join("\n");
      const old = broker;
      linked = false;
      broker = wanted.length === 0 ? undefined : connected(wanted);
      void old?.close();
    },
    troubles: () =>
      broker !== undefined && !linked ? ["The broker cannot be reached: no probe is heard."] : [],
    async close() {
      const last = broker;
      broker = undefined;
      await last?.close();
    },
  };
}
