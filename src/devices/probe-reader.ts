import type { BaseProbe, BaseSetUp } from "../logbook/index.js";
import { celsiusFromFahrenheit, celsiusFromKelvin } from "../units/index.js";
import { atPointer, parsedJson, short } from "./payload.js";

/** A temperature as a probe gave it: the row that the store keeps. */
export interface ReadTemperature {
  /** Aircraft id, or "base" for the base's own probes. */
  readonly aircraft: string;
  readonly probe: string;
  /** [ms] since 1970 UTC. */
  readonly time: number;
  /** [°C] */
  readonly tempC: number;
}

export interface ProbeIssue {
  readonly aircraft: string;
  readonly probe: string;
  /** Topic and pointer. */
  readonly path: string;
  readonly expected: string;
  readonly received: string;
}

export interface ProbeCount {
  readonly aircraft: string;
  readonly probe: string;
  readonly taken: number;
  readonly refused: number;
  readonly lastIssue?: ProbeIssue;
}

export interface ProbeReader {
  /** All topics that readings come on, each once. */
  readonly topics: readonly string[];
  /** Never throws: what cannot be taken is counted and told. `arrived`: [ms] since 1970 UTC. */
  read(
    message: { readonly topic: string; readonly payload: string; readonly retained: boolean },
    arrived: number,
  ): { readonly readings: readonly ReadTemperature[]; readonly issues: readonly ProbeIssue[] };
  counts(): readonly ProbeCount[];
}

/** [°C] Outside it no part of an aircraft can be; the logbook's own limits. */
const COLDEST_C = -90;
const HOTTEST_C = 400;
/** [ms] A reading from later than this after its arrival has a wrong clock. Project judgement. */
const FUTURE_MS = 120_000;
/** [ms] 2020-01-01: before it a device's clock was never set. */
const PAST_MS = Date.UTC(2020, 0, 1);

interface Source {
  readonly aircraft: string;
  readonly probe: BaseProbe;
  taken: number;
  refused: number;
  lastIssue?: ProbeIssue;
}

export function probeReader(setUp: Pick<BaseSetUp, "aircraft" | "probes">): ProbeReader {
  const sources = [
    ...setUp.aircraft.flatMap(({ id, probes }) => probes.map((probe) => sourceOf(id, probe))),
    ...setUp.probes.map((probe) => sourceOf("base", probe)),
  ];
  const byTopic = new Map<string, Source[]>();
  for (const source of sources) {
    const { topic } = source.probe;
    if (topic === undefined) continue;
    if (/[+#]/.test(topic)) throw new Error(`invalid topic: ${topic} (expected one topic, without + or #)`);
    byTopic.set(topic, [...(byTopic.get(topic) ?? []), source]);
  }
  return {
    topics: [...byTopic.keys()],
    read({ topic, payload, retained }, arrived) {
      const readings: ReadTemperature[] = [];
      const issues: ProbeIssue[] = [];
      // One topic may feed several probes: the payload is parsed once for all of them.
      const message: Message = { payload, retained, arrived, json: undefined };
      for (const source of byTopic.get(topic) ?? []) {
        const taken = takenFrom(source, message);
        if ("issue" in taken) {
          const issue = issueOf(source, taken.issue);
          source.refused++;
          source.lastIssue = issue;
          issues.push(issue);
        } else {
          source.taken++;
          readings.push({ aircraft: source.aircraft, probe: source.probe.id, ...taken });
        }
      }
      return { readings, issues };
    },
    counts: () =>
      sources.map(({ aircraft, probe, taken, refused, lastIssue }) => ({
        aircraft,
        probe: probe.id,
        taken,
        refused,
        ...(lastIssue === undefined ? {} : { lastIssue }),
      })),
  };
}

interface Message {
  readonly payload: string;
  readonly retained: boolean;
  readonly arrived: number;
  json: ReturnType<typeof parsedJson> | undefined;
}

interface Fault {
  readonly at: string;
  readonly expected: string;
  readonly received: unknown;
}

type Found = { readonly time: number; readonly tempC: number } | { readonly issue: Fault };

function takenFrom({ probe }: Source, message: Message): Found {
  const { pointer, time_pointer: timePointer } = probe;
  const needsJson = pointer !== undefined || timePointer !== undefined;
  if (needsJson) {
    message.json ??= parsedJson(message.payload);
    if (!message.json.ok) return { issue: { at: "", expected: "JSON", received: message.payload } };
  }
  const document = message.json?.ok ? message.json.value : undefined;
  const raw = pointer === undefined ? message.payload.trim() : atPointer(document, pointer);
  const value = numberFrom(raw);
  const at = pointer ?? "";
  if (value === undefined) return { issue: { at, expected: "a number", received: raw } };
  const tempC = IN_CELSIUS[probe.unit](value) + (probe.offset_c ?? 0);
  if (!(tempC >= COLDEST_C && tempC <= HOTTEST_C)) {
    return {
      issue: { at, expected: `a temperature of ${COLDEST_C} to ${HOTTEST_C} °C`, received: `${tempC} °C` },
    };
  }
  const when = timeFrom(timePointer, document, message);
  return "issue" in when ? when : { time: when.time, tempC };
}

const IN_CELSIUS: Record<BaseProbe["unit"], (value: number) => number> = {
  c: (value) => value,
  f: celsiusFromFahrenheit,
  k: celsiusFromKelvin,
};

function timeFrom(
  pointer: string | undefined,
  document: unknown,
  { retained, arrived }: Message,
): { readonly time: number } | { readonly issue: Fault } {
  if (pointer === undefined) {
    if (!retained) return { time: arrived };
    // What a broker kept may be days old: it must not pass for a fresh reading.
    return {
      issue: {
        at: "",
        expected: "a message that says its time, or one not kept by the broker",
        received: "a kept one",
      },
    };
  }
  const raw = atPointer(document, pointer);
  const time = millisecondsFrom(raw);
  const expected = "ISO 8601 with offset, or seconds since 1970";
  if (time === undefined) return { issue: { at: pointer, expected, received: raw } };
  if (time > arrived + FUTURE_MS) {
    return {
      issue: {
        at: pointer,
        expected: `a time no later than ${FUTURE_MS / 1000} s after its arrival`,
        received: raw,
      },
    };
  }
  if (time < PAST_MS) return { issue: { at: pointer, expected: "a time since 2020", received: raw } };
  return { time };
}

/** Numbers only: an empty text, true or null would all pass as 0 or 1 otherwise. */
function numberFrom(raw: unknown): number | undefined {
  if (typeof raw === "number") return Number.isFinite(raw) ? raw : undefined;
  if (typeof raw !== "string" || !/^\s*[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?\s*$/i.test(raw)) return undefined;
  const value = Number(raw);
  return Number.isFinite(value) ? value : undefined;
}

const ISO = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:?\d{2})$/;

function millisecondsFrom(raw: unknown): number | undefined {
  const seconds = numberFrom(raw);
  if (seconds !== undefined) return seconds * 1000;
  if (typeof raw !== "string" || !ISO.test(raw)) return undefined;
  const time = Date.parse(raw);
  return Number.isFinite(time) ? time : undefined;
}

function sourceOf(aircraft: string, probe: BaseProbe): Source {
  return { aircraft, probe, taken: 0, refused: 0 };
}

function issueOf({ aircraft, probe }: Source, { at, expected, received }: Fault): ProbeIssue {
  const shown =
    received === undefined
      ? "nothing"
      : typeof received === "string"
        ? received
        : (JSON.stringify(received) ?? "nothing");
  const path = at === "" ? `${probe.topic}` : `${probe.topic} ${at}`;
  return { aircraft, probe: probe.id, path, expected, received: short(shown) };
}
