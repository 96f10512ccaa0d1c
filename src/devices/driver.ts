import type { Finding } from "../findings/index.js";
import type { BaseProbe, HeaterSwitch, ProbeReading } from "../logbook/index.js";
import type { Log, SwitchDevice } from "./device.js";

// What talks to switches and probes of one kind. Every kind is a file and a line in drivers.ts.

export interface SwitchDriver {
  readonly kind: HeaterSwitch["via"]["kind"];
  connect(of: HeaterSwitch, link: SwitchLink): SwitchDevice;
}

export interface SwitchLink {
  readonly brokerUrl: string;
  /** By which the broker knows this switch. */
  readonly clientId: string;
  /** Where secrets are looked up. */
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly onLog: Log;
}

export interface ProbeDriver {
  readonly kind: NonNullable<BaseProbe["via"]>["kind"];
  listen(link: ProbeLink): ProbeListener;
}

/** A probe and whose it is: an aircraft's id, or "base" for the base's own. */
export interface ProbeSource {
  readonly aircraft: string;
  readonly probe: BaseProbe;
}

export interface ProbeLink {
  readonly brokerUrl: string;
  readonly clientId: string;
  /** [ms] since 1970 UTC. */
  readonly clock: () => number;
  readonly onReading: (reading: ProbeReading) => void;
  readonly onRefused: (issue: ProbeIssue) => void;
  readonly onLog: Log;
}

export interface ProbeListener {
  /** Listens to these probes, and no longer to others. */
  listenTo(sources: readonly ProbeSource[]): void;
  troubles(): readonly Finding[];
  close(): Promise<void>;
}

export interface ProbeIssue {
  readonly aircraft: string;
  readonly probe: string;
  /** Where the probe speaks, and the place in its message. */
  readonly path: string;
  readonly expected: string;
  readonly received: string;
}
