import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readerBeside } from "../../src/node/index.js";
import { issuesOfAny } from "./read-any.js";

const FOLDER = "examples/bad";

/** What each file of examples/bad must be told: the path of its fault, what was expected, what was received. */
const FAULTS: Readonly<
  Record<string, readonly (readonly [path: string, expected: RegExp, received: string])[]>
> = {
  "chance-above-one.json": [["want.chance", /below 1/, "90"]],
  "cover-not-carried.json": [["fitted.covers[0]", /one of kit.covers: insulated-cover/, '"inlet-plugs"']],
  "cover-off-before-unplug.json": [
    ["want.cover_off_before_min", /10 or less: covers come off after unplugging/, "20"],
  ],
  "departure-after-end.json": [["want.departure", /within the scenario's 20 h/, '"2026-01-16T10:00+01:00"']],
  "departure-words.json": [["want.departure", /HH:MM/, '"at ten"']],
  "duplicate-heater.json": [["kit.heaters[1]", /stands once/, '"sump-pad-220"']],
  "event-outside.json": [["events[0]", /within the scenario's 20 h/, '"at_h 30"']],
  "event-two-times.json": [["events[0]", /either at_h or time/, '"both"']],
  "event-unknown-heater.json": [
    ["events[0].heaters[0]", /one of kit.heaters: sump-pad-220/, '"battery-blanket-60"'],
  ],
  "frost-beyond-cold.json": [["weather", /air of -60 to 50 °C/, '"-72.0 °C"']],
  "frost-departure-too-soon.json": [["departure", /0\.5 to 120 h after the start/, '"18:10"']],
  "frost-dew-point-above-air.json": [
    ["weather.points[1].dew_point_c", /-9 or less: a dew point is never above the air/, "-6"],
  ],
  "frost-many-faults.json": [
    ["weather.points[0].wind_mps", /0 or more/, "-2"],
    ["fuel.depth_mm", /5 or more/, "-120"],
    ["skin_c", /a number/, '"cold"'],
    ["site.open_sky_fraction", /1 or less/, "2"],
    ["ensemble.members", /1000 or less/, "5000"],
    ["glycol", /no such key \(known: .*cover, skin_c, site/, "true"],
  ],
  "frost-no-end.json": [["document", /either hours or departure/, '"neither"']],
  "frost-two-ends.json": [["document", /either hours or departure/, '"both"']],
  "frost-unknown-panel.json": [
    ["panel", /aluminium-painted, aluminium-bare, fabric-painted, composite-painted/, '"aluminum"'],
    ["cover", /mesh, coated, quilted/, '"duvet"'],
  ],
  "garbled-metar.json": [
    ["weather, METAR XXRV 141650Z, group M3/M33", /such as M27\/M30/, "M3/M33"],
    ["weather, reports", /a METAR with a temperature/, "neither"],
  ],
  "hangar-without-air.json": [["hangar", /air_c/, "nothing"]],
  "heater-target.json": [["kit.heaters[0].elements[0]", /a part that four-carburettor-160 has/, '"coolant"']],
  "heater-without-origin.json": [["kit.heaters[0].origins", /an origin for longest_on_h/, "nothing"]],
  "implausible-air.json": [["weather.points[1].air_c", /60 or less/, "244"]],
  "laxer-limit.json": [["limits.engine_at_least_c", /-6 or more.*named override/, "-15"]],
  "many-faults.json": [
    ["hours", /above 0/, "-3"],
    ["want.chance", /below 1/, "2"],
    ["limits.engine_at_least_c", /a number/, '"warm"'],
    ["colour", /no such key/, '"red"'],
    ["aircraft", /one of two-light-60/, '"four-carburettor-16"'],
  ],
  "missing-file.json": [["weather.csv_file", /there is no such file/, '"weather/no-such-log.csv"']],
  "missing-weather.json": [["weather", /an object/, "nothing"]],
  "newer-version.json": [["soakline", /2 or less/, "3"]],
  "no-version.json": [["soakline", /2/, "nothing"]],
  "no-weather-source.json": [
    ["weather", /one source: points, metar and taf, csv_file, epw_file/, '"none of them"'],
  ],
  "not-json.txt": [["line 4", /JSON/, '"hours": 20']],
  "repeated-hour.json": [["want.departure", /passes this time twice/, '"02:30"']],
  "same-time-twice.json": [
    [
      "weather.points, point 2, column time",
      /a time other than that of point 1/,
      "the same time with other values",
    ],
  ],
  "heater-other-cylinders.json": [["kit.heaters[0]", /a heater for 4 cylinders/, '"whole-engine-6 for 6"']],
  "second-duct.json": [["kit.heaters[1]", /no second ducted heater/, '"ducted-fuel-12000"']],
  "skipped-hour.json": [["want.departure", /a time that exists in Europe\/Oslo/, '"02:30"']],
  "start-without-offset.json": [["start", /with offset/, '"2026-01-14T18:00"']],
  "thaw-brushed-ice.json": [["snow.brushed", /ice does not come off with a broom/, "true"]],
  "thaw-climb-without-cruise.json": [["roll_out", /cruise_m or cruise_ft/, '"neither"']],
  "thaw-cruise-underground.json": [
    ["roll_out.sounding[0]", /altitude_m or altitude_ft/, '"neither"'],
    ["roll_out.cruise_ft", /the aerodrome's elevation, 310 m, or more/, "500"],
  ],
  "thaw-dew-point-above-air.json": [
    ["outside.dew_point_c", /-14 or less: a dew point is never above the air/, "-10"],
    ["roll_out.dew_point_c", /-9 or less: a dew point is never above the air/, "-5"],
  ],
  "thaw-many-faults.json": [
    ["hours", /336 or less/, "1000"],
    ["aircraft.area_m2", /0\.5 or more/, "0"],
    ["snow.depth_mm", /0 or more/, "-1"],
    ["film", /"dripping", "wiped"/, '"damp"'],
    ["gap.filled_fraction", /1 or less/, "1.2"],
    ["hangar.set_c", /a number/, "nothing"],
    ["hangar.heater_kw", /0 or more/, "-3"],
    ["hangar.heater_w", /no such key \(known: .*heater_kw/, "3000"],
    ["roll_out.falling", /"nothing", "snow", "rain"/, '"hail"'],
    ["antifreeze", /no such key \(known: .*roll_out/, "true"],
    ["outside.dew_point_c", /-14 or less/, "-2"],
  ],
  "thaw-negative-snow.json": [["snow.depth_mm", /0 or more/, "-40"]],
  "thaw-roll-out-late.json": [["roll_out", /a time within the document's hours/, '"2026-01-15T18:30+01:00"']],
  "thaw-roll-out-without-time.json": [["roll_out", /either at_h or time/, '"neither"']],
  "thaw-too-much-snow.json": [["snow.depth_mm", /at most 1290 of wet, 500 kg\/m2/, "1900"]],
  "thaw-two-cruises.json": [
    ["roll_out", /either cruise_m or cruise_ft/, '"both"'],
    [
      "roll_out.sounding[2]",
      /an altitude above that of the point before/,
      '{"altitude_ft":3000,"air_c":-17}',
    ],
  ],
  "thaw-unknown-snow.json": [["snow.kind", /"new", "settled", "wet", "ice"/, '"powder"']],
  "thaw-warm-under-snow.json": [["aircraft.temp_c", /0 or less: snow lies on it/, "4"]],
  "too-few-members.json": [["ensemble.members", /20 or more/, "3"]],
  "two-weather-sources.json": [["weather", /one source/, '"points and metar and taf"']],
  "unknown-aircraft.json": [["aircraft", /four-carburettor-160/, '"four-carburettor-16"']],
  "unknown-event.json": [["events[0].do", /"plug_in", "unplug"/, '"preheat"']],
  "unknown-heater.json": [["kit.heaters[1]", /sump-pad-300/, '"sump-pad-500"']],
  "unknown-key.json": [["heatr", /no such key \(known: soakline, name/, '"sump-pad-220"']],
  "unknown-point-key.json": [
    ["weather.points[0].air_c", /a number/, "nothing"],
    ["weather.points[0].air_f", /no such key \(known: at_h, time, air_c/, "-4"],
  ],
  "unknown-kind.json": [["kind", /"frost"/, '"rime"']],
  "unknown-zone.json": [["zone", /IANA time zone/, '"Europe/Ravnholt"']],
  "unplug-too-early.json": [["want.unplug_before_min", /less than the 16\.0 h until departure/, "1200"]],
  "weather-too-short.json": [
    [
      "weather.points, end of the weather (the points of the document)",
      /no later than 2026-01-15T05:00Z/,
      "2026-01-15T13:00Z",
    ],
  ],
  "wrong-type.json": [["hours", /a number/, '"20"']],
};

test("every file of examples/bad is looked at", () => {
  expect(readdirSync(FOLDER).sort()).toEqual(Object.keys(FAULTS).sort());
});

test.each(Object.entries(FAULTS))("%s is told its faults", (name, faults) => {
  const path = `${FOLDER}/${name}`;
  const issues = issuesOfAny(readFileSync(path, "utf8"), { readFile: readerBeside(path) });
  expect(issues.map(({ path, received }) => ({ path, received }))).toEqual(
    faults.map(([path, , received]) => ({ path, received })),
  );
  issues.forEach(({ expected }, i) => {
    expect(expected).toMatch(faults[i][1]);
  });
});
