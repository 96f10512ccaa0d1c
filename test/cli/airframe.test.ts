import { readFileSync } from "node:fs";
import { describe, expect, test, vi } from "vitest";
import { frostOutlookSchema, thawOutlookSchema } from "../../src/documents/index.js";
import { plainWords } from "../plain-words.js";
import { PLAIN, soakline } from "./run.js";

// A thaw and all its trials are some seconds of one core.
vi.setConfig({ testTimeout: 300_000 });

const NIGHT = "examples/frost-clear-night.json";
const STAY = "examples/thaw-snow-hangar.json";
const FEW = ["--members", "20"];

/** [characters] longest line. */
const longest = (text: string) => Math.max(...text.split("\n").map((line) => [...line].length));

/** Labels of the facts of a first screen, and how many cautions stand below them. */
const labels = (text: string) =>
  text
    .split("\n\n")[1]!
    .split("\n")
    .filter((line) => /^[^ !]/.test(line))
    .map((line) => line.slice(0, 14).trim());
const cautions = (text: string) => text.split("\n").filter((line) => line.startsWith("! ")).length;

function expectOneScreen(text: string): void {
  expect(text.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
  expect(longest(text)).toBeLessThanOrEqual(80);
  expect(text).toMatch(/More: --all/);
}

describe("frost", () => {
  test("answers on one screen: from when, how thick, with a cover, the last look", async () => {
    const { code, stdout, stderr } = await soakline(["frost", NIGHT, ...FEW]);
    expect(stdout.split("\n")[0]).toBe("Frost likely on the wing by 08:00: over 19 in 20 cases.");
    expect(labels(stdout)).toEqual([
      ...["Frost from", "How thick", "Weakest point", "Under wing"],
      ...["With cover", "Weather", "Last look", "Somebody must"],
    ]);
    expect(stdout).toMatch(/^Frost from +Wed \d\d:\d\d \(9 in 10 cases: Wed 18:\d\d to (Wed|Thu|\d\d)/m);
    expect(stdout).toMatch(/^Last look +just before take-off at 08:00, in light, with the bare hand/m);
    expect(stdout).toMatch(/no take-off until it is all off/);
    expect(cautions(stdout)).toBeLessThanOrEqual(3);
    expect(stdout).not.toMatch(/burner|hinges/);
    expectOneScreen(stdout);
    expect(stderr).toBe("");
    expect(code).toBe(0);
  });

  test("keeps the rest behind --all", async () => {
    const { stdout } = await soakline(["frost", NIGHT, "--all", ...FEW]);
    expect(stdout).toMatch(/^Upper skin +likely, over 19 in 20; still there at 08:00/m);
    expect(stdout).toMatch(/at 08:00 +\w+.*0\.\d\d kg\/m² or mm of/);
    expect(stdout).toMatch(/^ {2}coldest +\d\.\d K below the air/m);
    expect(stdout).toMatch(/^Wing cover +with \(coated, tried\): upper skin .*; without: likely/ms);
    expect(stdout).toMatch(/^time +air +frost pt +sky +wind +upper +lower/m);
    expect(stdout).toMatch(/^08:00 /m);
    expect(stdout).toMatch(/no take-off until it is all off.*\(14 CFR 91\.527\(a\)/s);
    expect(stdout).toMatch(/A forecast is no inspection/);
    expect(stdout).toMatch(/The aircraft's handbook .*decide/);
    expect(longest(stdout)).toBeLessThanOrEqual(80);
  });

  test("writes JSON of its schema", async () => {
    const { code, stdout } = await soakline(["frost", NIGHT, "--json", "--depart", "05:30", ...FEW]);
    const outlook = frostOutlookSchema.parse(JSON.parse(stdout));
    expect(outlook.departure.time).toBe("2026-01-15T05:30+01:00");
    expect(outlook.members).toBe(20);
    expect(code).toBe(0);
  });

  test("none expected is not a clearance; plain ASCII and °F where asked for", async () => {
    const document = JSON.parse(readFileSync(NIGHT, "utf8"));
    const points = document.weather.points.map((point: object) => ({
      ...point,
      dew_point_c: -28,
      cloud_fraction: 1,
      wind_mps: 7,
    }));
    const { code, stdout } = await soakline(["frost", "-", "--units", "f", "--all", ...FEW], {
      input: JSON.stringify({ ...document, cover: "mesh", weather: { points } }),
      env: { PATH: PLAIN.PATH, LANG: "C" },
    });
    expect(stdout).toMatch(
      /^No frost expected \w+ the wing by 08:00 \(under 1 in 20 cases\): look all the same\.$/m,
    );
    expect(stdout).toMatch(/Medians in F,/);
    expect(stdout).toMatch(/^18:00 +24\.8 /m); // -4 °C
    expect(stdout).toMatch(/A forecast is no inspection/);
    expect(stdout).toMatch(/^[\n -~]+$/);
    expect(code).toBe(0);
  });

  test("takes a real forecast in place of the document's weather", async () => {
    const document = JSON.parse(readFileSync(NIGHT, "utf8"));
    const { code, stdout, stderr } = await soakline(
      [
        ...["frost", "-", "--json", "--taf", "examples/weather/xxrv-taf.txt"],
        ...["--metar", "examples/weather/xxrv-metars.txt", ...FEW],
      ],
      { input: JSON.stringify({ ...document, start: "2026-01-09T18:00+01:00" }) },
    );
    expect(stderr).toBe("");
    expect(plainWords(frostOutlookSchema.parse(JSON.parse(stdout)).assumptions)).toMatch(
      /Weather.*dew point/,
    );
    expect(code).toBe(0);
  });
});

describe("thaw", () => {
  test("answers on one screen: may it leave, what decides, what to do first, what freezes again", async () => {
    const { code, stdout, stderr } = await soakline(["thaw", STAY, ...FEW]);
    expect(stdout.split("\n")[0]).toMatch(/^(Not to|May) leave at Thu 07:30: (dry|clear) .*cases/);
    expect(labels(stdout)).toEqual([
      ...["May leave", "Weakest point", "Brush first", "Would help"],
      ...["Skin clear", "Gaps thawed", "Freezes again", "Somebody must"],
    ]);
    // The controls stand beside the leaving time, whatever else is said.
    expect(stdout.replace(/\n +/g, " ")).toMatch(
      /^May leave .*move every control and the trim to their stops/m,
    );
    expect(stdout).toMatch(/static ports freezes and blocks them/);
    expect(stdout).toMatch(/^Freezes again .*outside .*in the climb/m);
    expect(stdout).not.toMatch(/nothing that was tried/);
    expectOneScreen(stdout);
    expect(stderr).toBe("");
    expect(code).toBe(0);
  });

  test("lists all that was tried with its chance, times, heat and the roll-out behind --all", async () => {
    const { stdout } = await soakline(["thaw", STAY, "--all", "--wind-units", "kt", ...FEW]);
    for (const row of ["skin clear", "skin dry", "gaps thawed", "gaps dry"])
      expect(stdout).toMatch(new RegExp(`^${row} +(\\w{3} )?\\d\\d:\\d\\d .* in \\d+$`, "m"));
    expect(stdout).toMatch(/^Tried: chance of being dry by Thu 07:30, over 20 cases$/m);
    expect(stdout).toMatch(/^- a fan, 6 kt over it: \d+ in \d+; dry after/m);
    expect(stdout).toMatch(/^- skin wiped with cloths and gaps blown out once thawed: /m);
    expect(stdout).toMatch(/^- everything together: /m);
    expect(stdout).toMatch(/^Humidity +at most \d+ %/m);
    expect(stdout).toMatch(/^Heat +\d+ kWh \(\d+ to \d+\) within 24 h/m);
    expect(stdout).toMatch(/^Water +\d+ kg \(\d+ to \d+\) on the floor/m);
    expect(stdout).toMatch(/^To freezing {3}skin after \d/m);
    expect(stdout).toMatch(/^Gaps freeze +middle case: /m);
    expect(stdout).toMatch(/^Climb +freezing level at the ground; -10\.\d °C at 1524 m \(5000 ft\)/m);
    expect(stdout).toMatch(/^What falls +melts on a skin of .*: open the doors/ms);
    expect(longest(stdout)).toBeLessThanOrEqual(80);
  });

  test("writes JSON of its schema, whatever the locale", async () => {
    const { code, stdout } = await soakline(["thaw", STAY, "--json", ...FEW], {
      env: { PATH: PLAIN.PATH, LANG: "C" },
    });
    const outlook = thawOutlookSchema.parse(JSON.parse(stdout));
    expect(outlook.roll_out?.at.time).toBe("2026-01-15T07:30+01:00");
    expect(outlook.members).toBe(20);
    expect(code).toBe(0);
  });

  test("what has not come is told so, and without a roll-out nothing is said of one", async () => {
    const { roll_out: _, ...document } = JSON.parse(readFileSync(STAY, "utf8"));
    const { code, stdout } = await soakline(["thaw", "-", "--all", ...FEW], {
      input: JSON.stringify({ ...document, hours: 2 }),
    });
    expect(stdout).toMatch(/^May not be dry in 2 h: dry by then in under 1 in 20 cases\./);
    expect(stdout).toMatch(/^gaps dry +not yet +not yet +not yet +under 1 in 20$/m);
    expect(stdout).toMatch(/^- a stay of \d+ h/m);
    expect(stdout).not.toMatch(/Out at|Freezes again/);
    expect(code).toBe(0);
  });
});

describe("bad input ends with 2, every fault on a line of its own", () => {
  test.each([
    [["thaw", "examples/bad/thaw-many-faults.json"], 11],
    [["frost", "examples/bad/frost-many-faults.json"], 6],
    [["frost", "examples/lynx-tonight.json"], 1],
    [["frost", NIGHT, "--members", "5"], 1],
  ])("%j", async (args, faults) => {
    const { code, stdout, stderr } = await soakline(args);
    const lines = stderr.trimEnd().split("\n");
    expect(lines.length).toBe(faults);
    for (const line of lines) expect(line).toMatch(/^[\w.[\] ]+: expected .+, received .+$/);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
  });
});
