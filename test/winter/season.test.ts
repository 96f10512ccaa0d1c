import { expect, test } from "vitest";
import { winterStudySchema } from "../../src/documents/index.js";
import { quantile } from "../../src/numerics/index.js";
import { winterFromDocument } from "../../src/questions/index.js";
import { piecesOf, runPiece, winterStudy } from "../../src/winter/index.js";
import { leadTableOf } from "../../src/winter/piece.js";
import { english } from "../../src/words/index.js";
import { readWinter, winterDocument } from "./small-winter.js";

const HOUR = 3600;
const ALL = { kit: 0, year: 0 };

test("always on heats all hours but those from unplugging to return; the clock its lead; energy is power times hours", () => {
  const read = readWinter();
  const [always, clock] = runPiece(read, ALL)!.habits;
  const count = read.departures.length;
  expect(count).toBe(13);
  const out = count * (0.25 + 1.5) * HOUR;
  expect(always!.heaterTime).toBeCloseTo(read.end - read.start - out, 6);
  expect(clock!.heaterTime).toBeCloseTo(count * 2.75 * HOUR, 6);
  // The middle aircraft's pad has no thermostat: 220 W at every moment.
  expect(always!.energy[0]).toBeCloseTo(220 * always!.heaterTime, 0);
  expect(clock!.energy[0]).toBeCloseTo(220 * clock!.heaterTime, 0);
  expect(always!.switchOns).toBe(count + 1);
});

test("a plan spends a fraction of always on, and is ready about as often as asked", () => {
  const read = readWinter({
    kits: [
      {
        name: "set",
        heaters: ["whole-engine-4"],
        covers: ["insulated-cover"],
        switching: "local_network",
      },
    ],
    ensemble: { members: 12, seed: 3 },
  });
  const [always, , planned] = runPiece(read, ALL)!.habits;
  expect(planned!.energy[0]).toBeLessThan(0.2 * always!.energy[0]!);
  const rate = planned!.ready.slice(1).reduce((sum, n) => sum + n, 0) / (12 * read.departures.length);
  expect(rate).toBeGreaterThan(0.8);
  // Above 0 °C: parked hours are frosted whatever the habit.
  expect(always!.wetTime - always!.frostTime).toBeGreaterThan(planned!.wetTime - planned!.frostTime);
  expect(planned!.frostTime).toBeGreaterThan(always!.frostTime);
});

test("leads grow as it gets colder and windier, and never beyond what the heater's record allows", () => {
  const kits = [
    { name: "set", heaters: ["whole-engine-4"], covers: ["insulated-cover"], switching: "local_network" },
  ];
  const read = readWinter({ kits, weather: { place: "ravnholt", years: 2 } });
  const table = leadTableOf(read, 0, 0.9);
  // Each line by itself: where warm through is out of reach, the least takes less than warm through did in milder air.
  const ready = table.cases.filter(({ status }) => status === "ready");
  const pairs = ready.flatMap((mild) =>
    ready
      .filter((hard) => hard !== mild && hard.aim === mild.aim)
      .filter((hard) => hard.tempAir <= mild.tempAir && hard.windSpeed >= mild.windSpeed)
      .map((hard) => ({ mild, hard })),
  );
  expect(pairs.length).toBeGreaterThanOrEqual(3);
  for (const { mild, hard } of pairs) expect(hard.lead).toBeGreaterThan(mild.lead - 1);
  // Mild enough for no heat: not required, never a short plug-in.
  expect(table.at(273.15 + 3, 2)).toMatchObject({ lead: 0 });
  for (const celsius of [-5, -8, -12, -20]) {
    const { lead } = table.at(273.15 + celsius, 3);
    expect(lead === 0 || lead >= 0.75 * HOUR).toBe(true);
  }
  for (const { lead } of table.cases) expect(lead).toBeLessThanOrEqual(24.25 * HOUR);
});

test("somebody who plugs in by hand does so while they are there; a timer's dial has quarters of an hour", () => {
  const kit = { heaters: ["sump-pad-220"], covers: ["insulated-cover"] };
  const read = readWinter({
    kits: [
      { ...kit, name: "hand", switching: "by_hand" },
      { ...kit, name: "network", switching: "local_network" },
    ],
    by_hand: { from: "08:00", until: "20:00" },
    habits: [{ do: "clock", lead_h: 3 }],
  });
  const [hand] = runPiece(read, { kit: 0, year: 0 })!.habits;
  const [network] = runPiece(read, { kit: 1, year: 0 })!.habits;
  expect(network!.heaterTime).toBeCloseTo(read.departures.length * 2.75 * HOUR, 6);
  // 07:00 is too early for them: at 20:00 the evening before, 13.75 h of heat.
  expect(hand!.heaterTime).toBeCloseTo(read.departures.length * 13.75 * HOUR, 6);
  const told = winterStudy(
    read,
    [0, 1].map((one) => runPiece(read, { kit: one, year: 0 })!),
  ).assumptions;
  expect(told.filter((text) => english(text).startsWith("By hand (hand)"))).toHaveLength(1);
});

test("attended heaters are refused where nobody stands by, set times where there is no timer", () => {
  const read = readWinter({
    kits: [
      { name: "cart", heaters: ["ducted-fuel-12000"], covers: [], switching: "phone_network" },
      { name: "hand", heaters: ["sump-pad-100"], covers: [], switching: "by_hand" },
    ],
    habits: [{ do: "planned" }, { do: "clock", from: "05:00", until: "09:00" }],
  });
  const [cart, hand] = [0, 1].map((kit) => runPiece(read, { kit, year: 0 })!.habits);
  const told = (habits: typeof cart) =>
    habits!.map(({ refused }) => (refused === "" ? "" : english(refused)));
  expect(told(cart)).toEqual([
    "somebody must stand by ducted hot air, fuel-fired, 12 kW all the time it runs",
    "somebody must stand by ducted hot air, fuel-fired, 12 kW all the time it runs",
  ]);
  expect(told(hand)).toEqual(["", "set times need a timer"]);
});

test("the same study twice is the same to the last bit, piece by piece or whole", {
  timeout: 240_000,
}, () => {
  const read = readWinter({ weather: { place: "kvitrimvatn", years: 2 } });
  const pieces = piecesOf(read).map((piece) => runPiece(read, piece)!);
  const again = piecesOf(read)
    .reverse()
    .map((piece) =>
      JSON.parse(
        JSON.stringify(runPiece(readWinter({ weather: { place: "kvitrimvatn", years: 2 } }), piece)),
      ),
    );
  const study = winterStudy(read, pieces);
  expect(winterStudy(read, again)).toEqual(study);
  const whole = winterFromDocument(winterDocument({ weather: { place: "kvitrimvatn", years: 2 } }));
  if (whole.status !== "completed") throw new Error(JSON.stringify(whole));
  expect(whole.result).toEqual(study);
  expect(winterStudySchema.parse(JSON.parse(JSON.stringify(study)))).toEqual(study);
});

test("a study's bands and means are those of its pieces", () => {
  const read = readWinter({ weather: { place: "kvitrimvatn", years: 2 } });
  const pieces = piecesOf(read).map((piece) => runPiece(read, piece)!);
  const study = winterStudy(read, pieces);
  const [row] = study.rows;
  const kwh = pieces.flatMap(({ habits }) => habits[0]!.energy.slice(1).map((joules) => joules / 3.6e6));
  expect(row!.energy_kwh.p50).toBeCloseTo(quantile(kwh, 0.5), 1);
  expect(row!.energy_money!.p50).toBeCloseTo(0.25 * quantile(kwh, 0.5), 1);
  const rates = pieces.flatMap(({ habits }) =>
    habits[0]!.ready.slice(1).map((n) => n / read.departures.length),
  );
  expect(row!.ready_mean).toBeCloseTo(rates.reduce((sum, r) => sum + r, 0) / rates.length, 3);
  expect(row!.months.reduce((sum, { departures }) => sum + departures, 0)).toBeCloseTo(
    read.departures.length,
    1,
  );
  const sum = row!.months.reduce((total, { energy_kwh }) => total + energy_kwh, 0);
  const mean = kwh.reduce((total, value) => total + value, 0) / kwh.length;
  expect(sum).toBeCloseTo(mean, 0);
});

test("months are those of the base's clock, and hours of heat lie in the month they are in", () => {
  const read = readWinter({ start: "2026-02-01T00:00+01:00", months: 2, habits: [{ do: "always_on" }] });
  const [row] = winterStudy(read, [runPiece(read, ALL)!]).rows;
  // 23:00 UTC on 31 January is February at the base; February has 672 hours, March 744.
  expect(row!.months.map(({ month }) => month)).toEqual(["2026-02", "2026-03"]);
  expect(row!.months[0]!.heater_h).toBeLessThanOrEqual(672);
  expect(row!.months[1]!.heater_h).toBeLessThanOrEqual(744);
  expect(row!.months[0]!.heater_h + row!.months[1]!.heater_h).toBeCloseTo(row!.heater_h.p50, 0);
});

test("pieces missing or twice are an error, never a thinner study", () => {
  const read = readWinter();
  const piece = runPiece(read, ALL)!;
  expect(() => winterStudy(read, [])).toThrow(/missing piece: kit 0, winter 0/);
  expect(() => winterStudy(read, [piece, piece])).toThrow(/duplicate piece/);
});

test("a stopped study says so", () => {
  let calls = 0;
  const outcome = winterFromDocument(winterDocument(), { onProgress: () => ++calls < 3 });
  expect(outcome.status).toBe("cancelled");
});
