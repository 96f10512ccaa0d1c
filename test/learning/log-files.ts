import { type LogOptions, readTemperatureLog } from "../../src/learning/index.js";
import { createRandom } from "../../src/numerics/index.js";

export const START = Date.UTC(2026, 0, 18, 18) / 1000;

/** A CSV of temperatures [°C] in columns by their header; times in UTC from START on, `step` seconds apart. */
export function csvOf(columns: Readonly<Record<string, readonly (number | string)[]>>, step = 60): string {
  const names = Object.keys(columns);
  const count = columns[names[0]].length;
  const rows = Array.from({ length: count }, (_, k) => {
    const cells = names.map((name) => {
      const value = columns[name][k];
      return typeof value === "number" ? value.toFixed(1) : value;
    });
    return [new Date((START + k * step) * 1000).toISOString(), ...cells].join(",");
  });
  return [["time", ...names].join(","), ...rows].join("\n");
}

/** `count` values of f at minutes 0, 1, … with noise of 0.15 K. */
export function noisy(count: number, f: (minute: number) => number, seed = 1, sd = 0.15): number[] {
  const random = createRandom(seed).stream("noise");
  return Array.from({ length: count }, (_, k) => f(k) + sd * random.normal());
}

/** Warms from `from` by `rise` with a time constant [min], from `at` on. */
export function warming(from: number, rise: number, constant: number, at = 60): (minute: number) => number {
  return (minute) => (minute < at ? from : from + rise * (1 - Math.exp(-(minute - at) / constant)));
}

export function findingsOf(text: string, options: LogOptions = {}) {
  const reading = readTemperatureLog(text, options);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading.log.findings.map(({ kind, place, rejected }) => [kind, place, rejected] as const);
}
