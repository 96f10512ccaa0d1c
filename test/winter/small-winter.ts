import { type ReadWinter, readWinterDocument } from "../../src/documents/index.js";

/** A month of three flights a week at an invented place, one aircraft with a pad and a cover; changed as a test needs. */
export function winterDocument(changes: Readonly<Record<string, unknown>> = {}): Record<string, unknown> {
  return {
    soakline: 2,
    kind: "winter",
    name: "a small winter",
    aircraft: "four-carburettor-160",
    start: "2026-01-05T00:00+01:00",
    zone: "CET",
    months: 1,
    place: "ramp",
    site: { roughness_m: 0.005 },
    weather: { place: "ravnholt", years: 1 },
    flying: { schedule: [{ days: ["tue", "thu", "sat"], at: "10:00" }], flight_h: 1.5 },
    kits: [
      {
        name: "pad",
        heaters: ["sump-pad-220"],
        covers: ["insulated-cover"],
        switching: "local_network",
        price: 500,
      },
    ],
    habits: [{ do: "always_on" }, { do: "clock", lead_h: 3 }, { do: "planned" }],
    prices: { currency: "EUR", electricity_per_kwh: 0.25, missed_departure: 40 },
    ensemble: { members: 3, seed: 2 },
    ...changes,
  };
}

export function readWinter(
  changes: Readonly<Record<string, unknown>> = {},
  files: Readonly<Record<string, string>> = {},
): ReadWinter {
  const reading = readWinterDocument(winterDocument(changes), {
    readFile: (name) => {
      const text = files[name];
      return text === undefined ? { ok: false, reason: "there is no such file" } : { ok: true, text };
    },
  });
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading;
}
