import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readScenarioDocument } from "../../src/documents/index.js";
import { readerBeside } from "../../src/node/index.js";

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
  "garbled-metar.json": [
    ["weather, METAR ZZRV 141650Z, group M3/M33", /such as M27\/M30/, "M3/M33"],
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
  "newer-version.json": [["soakline", /1 or less/, "2"]],
  "no-version.json": [["soakline", /1/, "nothing"]],
  "no-weather-source.json": [
    ["weather", /one source: points, metar and taf, csv_file or epw_file/, '"none of them"'],
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
  "too-few-members.json": [["ensemble.members", /20 or more/, "3"]],
  "two-weather-sources.json": [["weather", /one source/, '"points and reports"']],
  "unknown-aircraft.json": [["aircraft", /four-carburettor-160/, '"four-carburettor-16"']],
  "unknown-event.json": [["events[0].do", /"plug_in", "unplug"/, '"preheat"']],
  "unknown-heater.json": [["kit.heaters[1]", /sump-pad-300/, '"sump-pad-500"']],
  "unknown-key.json": [["heatr", /no such key \(known: soakline, name/, '"sump-pad-220"']],
  "unknown-point-key.json": [
    ["weather.points[0].air_c", /a number/, "nothing"],
    ["weather.points[0].air_f", /no such key \(known: at_h, time, air_c/, "-4"],
  ],
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
  const reading = readScenarioDocument(readFileSync(path, "utf8"), { readFile: readerBeside(path) });
  if (reading.ok) throw new Error("the document was accepted");
  expect(reading.issues.map(({ path, received }) => ({ path, received }))).toEqual(
    faults.map(([path, , received]) => ({ path, received })),
  );
  reading.issues.forEach(({ expected }, i) => {
    expect(expected).toMatch(faults[i][1]);
  });
});
