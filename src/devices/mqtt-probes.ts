import { finding } from "../findings/index.js";
import type { BaseProbe, ProbeReading } from "../logbook/index.js";
import { probeProtocol } from "../switching/index.js";
import { type Broker, connectBroker } from "./broker.js";
import type { ProbeDriver, ProbeIssue, ProbeLink, ProbeListener, ProbeSource } from "./driver.js";
import { atPointer, parsedJson, short } from "./payload.js";
import { celsiusFrom, timeFrom, Unreadable } from "./probe-value.js";

type MqttVia = Extract<NonNullable<BaseProbe["via"]>, { kind: "mqtt" }>;

/** One connection that hears every probe of the base. */
export const mqttProbes: ProbeDriver = { kind: "mqtt", listen };

function listen({ brokerUrl, clientId, clock, onReading, onRefused, onLog }: ProbeLink): ProbeListener {
  let byTopic = new Map<string, ProbeSource[]>();
  let broker: Broker | undefined;
  let topics = "";
  let linked = false;

  function connected(to: readonly string[]): Broker {
    const link = connectBroker({ url: brokerUrl, clientId, onLog });
    link.onLink((online) => {
      if (link === broker) linked = online;
    });
    link.subscribe(to, ({ topic, ...message }) => {
      if (link !== broker) return;
      const { readings, issues } = readMessage(byTopic.get(topic) ?? [], message, clock());
      for (const reading of readings) onReading(reading);
      for (const issue of issues) onRefused(issue);
    });
    return link;
  }

  return {
    listenTo(sources) {
      byTopic = new Map();
      for (const source of sources) {
        const via = viaOf(source);
        // A set-up that is older than a rule may hold what could not be written today.
        if (probeProtocol(via).issues(via, []).length > 0) continue;
        byTopic.set(via.topic, [...(byTopic.get(via.topic) ?? []), source]);
      }
      const wanted = [...byTopic.keys()].sort();
      // What stays is not interrupted.
      if (wanted.join("\n") === topics) return;
      topics = wanted.join("\n");
      const old = broker;
      linked = false;
      broker = wanted.length === 0 ? undefined : connected(wanted);
      void old?.close();
    },
    troubles: () => (broker !== undefined && !linked ? [finding("broker-unreachable", {})] : []),
    async close() {
      const last = broker;
      broker = undefined;
      await last?.close();
    },
  };
}

interface Message {
  readonly payload: string;
  /** Kept by the broker from before: of unknown age. */
  readonly retained: boolean;
}

/** What a message says of the probes that its topic feeds. Never throws: what cannot be taken is told. @internal for tests */
export function readMessage(
  sources: readonly ProbeSource[],
  { payload, retained }: Message,
  arrived: number,
): { readonly readings: readonly ProbeReading[]; readonly issues: readonly ProbeIssue[] } {
  const readings: ProbeReading[] = [];
  const issues: ProbeIssue[] = [];
  let parsed: ReturnType<typeof parsedJson> | undefined;
  const json = () => {
    parsed ??= parsedJson(payload);
    if (!parsed.ok) throw new Unreadable("", "JSON", payload);
    return parsed.value;
  };
  for (const source of sources) {
    const { pointer, time_pointer: timePointer } = viaOf(source);
    try {
      const value = pointer === undefined ? payload.trim() : atPointer(json(), pointer);
      const tempC = celsiusFrom(source.probe, value, pointer ?? "");
      // What a broker kept may be days old: it must not pass for a fresh reading.
      if (timePointer === undefined && retained)
        throw new Unreadable("", "a message that says its time, or one not kept by the broker", "a kept one");
      const time =
        timePointer === undefined ? arrived : timeFrom(atPointer(json(), timePointer), timePointer, arrived);
      readings.push({ aircraft: source.aircraft, probe: source.probe.id, time: Math.round(time), tempC });
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      issues.push(issueOf(source, error));
    }
  }
  return { readings, issues };
}

function issueOf(source: ProbeSource, { at, expected, received }: Unreadable): ProbeIssue {
  const shown = typeof received === "string" ? received : (JSON.stringify(received) ?? "nothing");
  const path = [viaOf(source).topic, at].filter((part) => part !== "").join(" ");
  return { aircraft: source.aircraft, probe: source.probe.id, path, expected, received: short(shown) };
}

function viaOf({ probe }: ProbeSource): MqttVia {
  if (probe.via?.kind !== "mqtt")
    throw new Error(`invalid probe ${probe.id}: ${probe.via?.kind} (expected mqtt)`);
  return probe.via;
}
