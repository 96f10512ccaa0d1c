import { describe, expect, test } from "vitest";
import { type LogOptions, readTemperatureLog } from "../../src/learning/index.js";
import { celsiusFromKelvin } from "../../src/units/index.js";

// Invented logs in the layouts that engine monitors and data loggers write: read without being told anything.

/** [s] 2026-01-18T12:00Z */
const NOON = Date.UTC(2026, 0, 18, 12) / 1000;
const MINUTE = 60;

interface Row {
  /** [s] */
  readonly at: number;
  /** [°C] */
  readonly heads: readonly number[];
  readonly oil: number;
  readonly air: number;
  readonly exhaust: number;
  readonly rpm: number;
}

/** Half an hour of cruise, then the engine stopped at 12:30 and cooling for as long as the logger runs. */
function flight(minutes: number, step = 1): Row[] {
  return Array.from({ length: Math.floor(minutes / step) + 1 }, (_, k) => {
    const minute = k * step;
    const stopped = minute - 30;
    const cool = (hot: number, hours: number) =>
      stopped <= 0 ? hot : -12 + (hot + 12) * Math.exp(-stopped / 60 / hours);
    return {
      at: NOON + minute * MINUTE,
      heads: [172, 168, 181, 175].map((hot) => cool(hot, 1.1)),
      oil: cool(84, 2.6),
      air: -12 + 2 * Math.sin(minute / 9),
      exhaust: stopped <= 0 ? 720 : cool(720, 0.05),
      rpm: stopped <= 0 ? 2350 : 0,
    };
  });
}

const fahrenheit = (celsius: number) => String(Math.round(celsius * 1.8 + 32));
const comma = (celsius: number) => celsius.toFixed(1).replace(".", ",");
const iso = (at: number) => new Date(at * 1000).toISOString();
const local = (at: number) => iso(at + 3600);

const LAYOUTS: Readonly<Record<string, string>> = {
  "settings above in quotes, units in a commented line, an offset of its own, engine numbered": [
    '#airframe_info,system="3",serial="0042"',
    '#oil "limit"="118"',
    "#yyyy-mm-dd, hh:mm:ss,   hh:mm, deg F, deg F, deg F, deg F, deg F, deg F, deg F, rpm, gph, psi",
    "  Lcl Date, Lcl Time, UTCOfst, E1 CHT1, E1 CHT2, E1 CHT3, E1 CHT4, E1 OilT, OAT, E1 EGT1, E1 RPM, E1 FFlow, E1 OilP",
    ...flight(240).map(({ at, heads, oil, air, exhaust, rpm }) =>
      [
        local(at).slice(0, 10),
        local(at).slice(11, 19),
        "+01:00",
        ...[...heads, oil, air, exhaust].map(fahrenheit),
        rpm,
        rpm > 0 ? 8.5 : 0,
        rpm > 0 ? 61 : 0,
      ].join(", "),
    ),
  ].join("\r\n"),
  "semicolons, decimal commas, no unit anywhere, another language": [
    "Gerät: 7",
    "Datum;Uhrzeit;CHT1;CHT2;CHT3;CHT4;Öltemp;Aussentemp;EGT1;Drehzahl",
    ...flight(240).map(({ at, heads, oil, air, exhaust, rpm }) =>
      [
        local(at).slice(0, 10).split("-").reverse().join("."),
        local(at).slice(11, 19),
        ...[...heads, oil, air, exhaust].map(comma),
        rpm,
      ].join(";"),
    ),
  ].join("\n"),
  "two engines by side, tabs, a row of units below": [
    ["time utc", "L CHT", "L OIL TEMP", "L RPM", "R CHT", "R OIL TEMP", "R RPM", "OAT"].join("\t"),
    ["", "°C", "°C", "", "°C", "°C", "", "°C"].join("\t"),
    ...flight(240).map(({ at, heads, oil, air, rpm }) =>
      [iso(at).slice(0, 19), heads[3], oil, rpm, heads[3] + 3, oil - 2, rpm, air]
        .map((v) => (typeof v === "number" ? v.toFixed(1) : v))
        .join("\t"),
    ),
  ].join("\n"),
  "a clock alone with the date above, °F by the values, every two minutes": [
    "# Start: 2026-01-18",
    "TIME,EGT1,EGT2,CHT1,CHT2,CHT3,CHT4,OIL TEMP,OAT,VOLT",
    ...flight(240, 2).map(({ at, heads, oil, air, exhaust }) =>
      [local(at).slice(11, 19), ...[exhaust, exhaust - 15, ...heads, oil, air].map(fahrenheit), 13.9].join(
        ",",
      ),
    ),
  ].join("\n"),
  "a header that is a comment, seconds since 1970, two places named as words": [
    "# invented",
    "# timestamp, cylinder head 1 (°C), cylinder head 2 (°C), cylinder head 3 (°C), cylinder head 4 (°C), oil (°C), outside (°C), fuel flow (l/h)",
    ...flight(240).map(({ at, heads, oil, air, rpm }) =>
      [at, ...[...heads, oil, air].map((v) => v.toFixed(1)), rpm > 0 ? 31 : 0].join(","),
    ),
  ].join("\n"),
};

/** What the documents beside a log tell of it: the base's zone. */
const ZONE: LogOptions = { zone: "Europe/Oslo" };

function read(text: string, options: LogOptions = ZONE) {
  const reading = readTemperatureLog(text, options);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading;
}

describe.each(Object.entries(LAYOUTS))("%s", (_, text) => {
  const { log, needed } = read(text);
  const probe = (part: string) =>
    log.probes.find(({ place }) => (typeof place === "object" ? place.part : place) === part)!;

  test("leaves nothing open", () => {
    expect(needed).toBeUndefined();
    expect(log.taken?.filter(({ why }) => why === "open")).toEqual([]);
  });

  test("has heads as one mean, oil and outside air, in °C and UTC", () => {
    expect(log.time[0]).toBe(NOON);
    const at = (minute: number) => log.time.indexOf(NOON + minute * MINUTE);
    const celsius = (part: string, minute: number) => celsiusFromKelvin(probe(part).temps[at(minute)]);
    const row = flight(240).find((one) => one.at === NOON + 120 * MINUTE)!;
    expect(Math.abs(celsius("heads", 120) - row.heads.reduce((a, b) => a + b) / 4)).toBeLessThan(2);
    expect(Math.abs(celsius("oil", 120) - row.oil)).toBeLessThan(0.5);
    expect(Math.abs(celsius("outside-air", 120) - row.air)).toBeLessThan(0.5);
    expect(log.probes).toHaveLength(3);
    // Readings of a running or just stopped engine are no faults of the probes.
    expect(log.findings).toEqual([]);
  });

  test("finds the shut-down and the cool-down after it", () => {
    expect(log.coolDowns).toHaveLength(1);
    const [{ shutDown, until }] = log.coolDowns!;
    expect(Math.abs(shutDown - (NOON + 31 * MINUTE))).toBeLessThanOrEqual(5 * MINUTE);
    expect(until).toBe(NOON + 240 * MINUTE);
    expect(log.ranFrom).toBe(NOON);
  });
});

test("of two engines the first is taken, and the other when it is asked for; nothing of one is mixed into the other", () => {
  const text = LAYOUTS["two engines by side, tabs, a row of units below"];
  const [left, right] = [read(text), read(text, { ...ZONE, engine: 2 })];
  expect(left.log.engine).toBe(1);
  expect(right.log.engine).toBe(2);
  const oilAt = ({ log }: typeof left) =>
    celsiusFromKelvin(log.probes.find(({ place }) => JSON.stringify(place).includes("oil"))!.temps[0]);
  expect(oilAt(left)).toBeCloseTo(84, 6);
  expect(oilAt(right)).toBeCloseTo(82, 6);
  expect(left.log.taken?.filter(({ why }) => why === "other-engine").map(({ column }) => column)).toEqual([
    "R CHT",
    "R OIL TEMP",
    "R RPM",
  ]);
});

test("left and right heads of one engine are no two engines", () => {
  const { log } = read("time,CHT left (°C),CHT right (°C)\n2026-01-18T12:00Z,10,11\n");
  expect(log.engine).toBeUndefined();
  expect(log.probes.map(({ name }) => name)).toEqual(["CHT left (°C)", "CHT right (°C)"]);
});

test("a logger that is switched off with the aircraft: the next flight's first readings end the cool-down", () => {
  const header = "time,CHT (°C),oil (°C),rpm";
  const before = flight(32).map(({ at, heads, oil, rpm }) => [iso(at), heads[0], oil, rpm].join(","));
  const next = NOON + 5 * 3600;
  const after = [
    [iso(next), -3.1, 11.2, 0],
    [iso(next + 60), -3.2, 11.1, 0],
    [iso(next + 120), 20, 11.4, 1000],
  ].map((row) => row.join(","));
  const { log } = read([header, ...before, ...after].join("\n"));
  expect(log.coolDowns).toEqual([{ shutDown: NOON + 31 * MINUTE, until: next + 60 }]);
});

test("a log that could be in °C or °F is asked about, and not guessed", () => {
  const { needed } = read("time,oil,CHT\n2026-01-18T12:00Z,20,25\n2026-01-18T12:01Z,20,25\n");
  expect(needed?.map(({ column, ask }) => [column, ask])).toEqual([
    ["oil", "unit"],
    ["CHT", "unit"],
  ]);
});

test("air in °C shows that an engine colder than it was read in °F as °C", () => {
  const rows = ["12:00Z,14,5,-12", "12:10Z,13,5,-12"].map((row) => `2026-01-18T${row}`);
  const { needed } = read(["time,oil,CHT,OAT (°C)", ...rows].join("\n"));
  expect(needed).toHaveLength(2);
  const cold = ["12:00Z,0,-6,-12", "12:10Z,0,-6,-12"].map((row) => `2026-01-18T${row}`);
  const told = read(["time,oil,CHT,OAT (°C)", ...cold].join("\n"));
  expect(told.needed).toBeUndefined();
  expect(told.log.taken?.filter(({ unitBy }) => unitBy === "values").map(({ unit }) => unit)).toEqual([
    "c",
    "c",
  ]);
});

test("a date that can be read both ways is read as the one near the log's document", () => {
  const text = "time,oil_c\n03/01/2026 12:00,1\n03/01/2026 12:10,1\n";
  const near = Date.UTC(2026, 0, 4) / 1000;
  expect(read(text, { ...ZONE, near }).log.time[0]).toBe(Date.UTC(2026, 0, 3, 11) / 1000);
  const march = Date.UTC(2026, 2, 2) / 1000;
  expect(read(text, { ...ZONE, near: march }).log.time[0]).toBe(Date.UTC(2026, 2, 1, 11) / 1000);
});
