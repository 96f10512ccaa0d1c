import { describe, expect, test } from "vitest";
import { fitting, styleFor } from "../../src/cli/style.js";
import { hourlyRows, mass, massValue, tenths, timeBandText } from "../../src/cli/text/airframe-text.js";
import { rollOutFacts } from "../../src/cli/text/roll-out-text.js";
import type { RollOutDocument } from "../../src/documents/index.js";
import { freezesAgain } from "../../src/first-screen/thaw.js";
import { speaker } from "../../src/words/index.js";

const UTF8 = styleFor({ env: { LANG: "C.UTF-8" }, isTty: false });
const FAHRENHEIT = { ...UTF8, units: "f" as const, say: speaker({ temp: "f", wind: "mps" }) };
const plain = (text: string) => fitting(text, UTF8);
const stamp = (at_h: number, time: string) => ({ at_h, time });
const EVENING = stamp(0, "2026-01-14T18:00+01:00");
const MORNING = stamp(12, "2026-01-15T06:00+01:00");

describe("words", () => {
  test("chances are no surer than the cases they were counted over", () => {
    const words = [
      [1, 20],
      [0, 20],
      [1, 100],
      [0, 1000],
      [0.35, 20],
      [0.05, 20],
    ].map(([share, members]) => plain(UTF8.values.counted({ share: share!, members: members! })));
    expect(words).toEqual([
      "over 19 in 20",
      "under 1 in 20",
      "over 99 in 100",
      "under 1 in 1000",
      "3 in 10",
      "1 in 20",
    ]);
  });

  test("a risk is rounded up, a chance down", () => {
    const risks = [0, 0.03, 0.18, 0.91, 0.97, 1].map((share) =>
      plain(UTF8.values.risk({ share, members: 100 })),
    );
    expect(risks).toEqual([
      "under 1 in 100",
      "3 in 100",
      "2 in 10",
      "over 9 in 10",
      "over 19 in 20",
      "over 99 in 100",
    ]);
    expect(plain(UTF8.values.counted({ share: 0.18, members: 100 }))).toBe("1 in 10");
  });

  test("masses have the figures that matter", () => {
    expect([0, 1e-7, 0.0042, 0.0938, 1.234, 12.34].map(massValue)).toEqual([
      "0",
      "0",
      "0.004",
      "0.09",
      "1.23",
      "12.3",
    ]);
    expect(plain(mass(0.5))).toBe("0.50 kg/m²");
  });

  test("temperatures to a tenth", () => {
    expect([-0.04, -12.34].map((c) => tenths(c, UTF8))).toEqual(["0.0", "-12.3"]);
    expect(tenths(-40, FAHRENHEIT)).toBe("-40.0");
  });

  test("a time that has not come for the middle, or for any, is told so", () => {
    const late = stamp(11, "2026-01-15T05:00+01:00");
    const never = "not by 06:00";
    const told = (p05: typeof late | null, p50: typeof late | null) =>
      plain(timeBandText({ p05, p50, p95: null }, MORNING, never));
    expect(told(EVENING, late)).toBe("05:00 (9 in 10 cases: Wed 18:00 to not by 06:00)");
    expect(told(late, null)).toBe("05:00 at the earliest, not by 06:00 in half of the cases");
    expect(told(null, null)).toBe("not by 06:00 in 19 in 20 cases");
  });
});

test("a table has whole hours under local times, fewer where there are many, also over a change of the clock", () => {
  const hours = Array.from({ length: 60 * 6 + 1 }, (_, i) => i / 6);
  const cells = hours.map((hour) => hour.toFixed(0));
  const start = stamp(0, "2026-03-28T18:00+01:00");
  const rows = hourlyRows(hours, start, "Europe/Oslo", [{ heading: "h", width: 4, cells }], UTF8);
  expect(rows.slice(0, 5)).toEqual(["time     h", "18:00    0", "21:00    3", "00:00    6", "04:00    9"]);
  expect(rows.length).toBe(1 + 21);
});

describe("the roll-out", () => {
  const none = { verdict: "none", at_take_off: 0, in_climb: 0 } as const;
  const likely = { verdict: "likely", at_take_off: 1, in_climb: 0.9 } as const;
  const minutes = { p05: 1, p50: 2, p95: 12.4, share: 1 };
  const DRY: RollOutDocument = {
    members: 20,
    at: MORNING,
    take_off: stamp(12.5, "2026-01-15T06:30+01:00"),
    clear_chance: 1,
    dry_chance: 1,
    state: {
      skin_c: 12,
      inside_c: 12,
      fittings_c: 12,
      snow_kg_per_m2: { p50: 0, p95: 0 },
      film_kg_per_m2: { p50: 0, p95: 0 },
      gap_water_kg_per_m2: { p50: 0, p95: 0.4 },
    },
    skin_freezing_min: minutes,
    fittings_freezing_min: { p05: null, p50: null, p95: null, share: 0 },
    middle: { film: none, gaps: none },
    wettest: { film: none, gaps: none },
    melts_what_falls: false,
    cool_indoors_min: null,
    wet_bulb_c: -9,
    climb: null,
  };
  const line = (changes: Partial<RollOutDocument>) => plain(UTF8.say(freezesAgain({ ...DRY, ...changes })));
  const facts = (changes: Partial<RollOutDocument>) =>
    plain(rollOutFacts({ ...DRY, ...changes }, EVENING, { ...UTF8, width: 500 }).join("\n"));

  test("says in one line what the middle case has to fear, else the wettest", () => {
    expect(line({})).toBe("not expected, even in the wettest cases: look and feel");
    expect(line({ wettest: { film: none, gaps: likely } })).toBe(
      "gaps in the wettest cases: outside over 19 in 20",
    );
    expect(line({ middle: { film: likely, gaps: likely }, melts_what_falls: true })).toBe(
      "gaps and skin: outside over 19 in 20; what falls melts on the warm skin and freezes on",
    );
  });

  test("an aircraft with snow on it may not fly, whatever else is dry", () => {
    const state = { ...DRY.state, snow_kg_per_m2: { p50: 0.3, p95: 1 } };
    expect(line({ state })).toBe("snow or ice is still on it: it may not fly");
    expect(facts({ state })).toMatch(/snow or ice on it 0\.30 kg\/m² \(wettest 1 in 20: 1\.00\)/);
  });

  test("tells minutes, dryness and chances apart", () => {
    const text = facts({ wettest: { film: none, gaps: likely } });
    expect(text).toMatch(/skin after 2\.0 min \(1\.0 to 12\), fittings not within 6 h of take-off/);
    expect(text).toMatch(/Film freezes +middle case: dry; wettest 1 in 20: dry/);
    expect(text).toMatch(
      /Gaps freeze +middle case: dry; wettest 1 in 20: likely \(by take-off over 19 in 20\)/,
    );
    expect(text).not.toMatch(/Climb|What falls/);
  });

  test("tells of the climb and of what falls on a cold skin", () => {
    const climb = {
      elevation_m: 310,
      freezing_level_m: 900,
      cruise_m: 1524,
      cruise_c: -3,
      coldest_c: -5,
      fittings_freezing_min: { p05: 0, p50: 4, p95: 9, share: 1 },
    };
    const text = facts({ climb, cool_indoors_min: minutes, wettest: { film: none, gaps: likely } });
    expect(text).toMatch(
      /freezing level 900 m \(3000 ft\); -3\.0 °C at 1524 m \(5000 ft\), coldest on the way -5\.0 °C; fittings below freezing after 4\.0 min/,
    );
    expect(text).toMatch(/by take-off over 19 in 20, after the climb 9 in 10/);
    expect(text).toMatch(/the skin is at or below freezing: snow does not melt on it/);
    const never = { ...climb, freezing_level_m: null, coldest_c: -3 };
    expect(facts({ climb: never })).toMatch(
      /freezing level above the cruise; -3\.0 °C at 1524 m \(5000 ft\); /,
    );
  });
});
