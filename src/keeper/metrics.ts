import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from "prom-client";

export interface KeeperMetrics {
  readonly registry: Registry;
  received(): void;
  /** A message of a probe that could not be taken. */
  refused(): void;
  kept(kept: number, known: number): void;
  /** [s] from arrival to commit. */
  ingested(seconds: number): void;
  waiting(readings: number, aircraft: number): void;
}

export function createKeeperMetrics(): KeeperMetrics {
  const registry = new Registry();
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  const received = new Counter({
    name: "soakline_probe_readings_received_total",
    help: "Readings that came over MQTT",
    registers,
  });
  const refused = new Counter({
    name: "soakline_probe_messages_refused_total",
    help: "Messages of probes that could not be taken",
    registers,
  });
  const rows = new Counter({
    name: "soakline_probe_readings_total",
    help: "Readings given to the store, by what became of them",
    labelNames: ["outcome"],
    registers,
  });
  const ingest = new Histogram({
    name: "soakline_ingest_seconds",
    help: "Time from a reading's arrival until it is committed [s]",
    buckets: [0.002, 0.005, 0.01, 0.015, 0.02, 0.03, 0.05, 0.1, 0.25, 1, 5],
    registers,
  });
  const readings = new Gauge({
    name: "soakline_readings_waiting",
    help: "Readings not yet committed",
    registers,
  });
  const aircraft = new Gauge({
    name: "soakline_planning_waiting",
    help: "Aircraft waiting to be planned",
    registers,
  });
  return {
    registry,
    received: () => received.inc(),
    refused: () => refused.inc(),
    kept(kept, known) {
      if (kept > 0) rows.inc({ outcome: "kept" }, kept);
      if (known > 0) rows.inc({ outcome: "known" }, known);
    },
    ingested: (seconds) => ingest.observe(seconds),
    waiting(waitingReadings, waitingAircraft) {
      readings.set(waitingReadings);
      aircraft.set(waitingAircraft);
    },
  };
}
