import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { planSchema, simulationSchema } from "../../src/documents/index.js";
import { english } from "../../src/words/index.js";
import { plainWords } from "../plain-words.js";
import { PLAIN, soakline } from "./run.js";

const TONIGHT = "examples/lynx-tonight.json";
const FEW = ["--members", "40"];
const planOf = ({ stdout }: { readonly stdout: string }) => planSchema.parse(JSON.parse(stdout));

describe("plan", () => {
  test.each(["lynx-tonight", "lynx-cover-off", "lynx-small-heater", "lynx-impossible", "marten-pulled-out"])(
    "%s: one screen of 24 lines, verdict first, eight facts and three cautions at most",
    async (name) => {
      const { stdout } = await soakline(["plan", `examples/${name}.json`, ...FEW]);
      const lines = stdout.trimEnd().split("\n");
      expect(lines.length).toBeLessThanOrEqual(24);
      expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
      expect(lines[0]).toMatch(/^(Plug in at|Not ready at|Preheat not required|Heat is on|Look first)/);
      expect(lines.filter((line) => /^[A-Z1]/.test(line)).length).toBeLessThanOrEqual(2 + 8 + 1);
      expect(lines.filter((line) => line.startsWith("! ")).length).toBeLessThanOrEqual(3);
      expect(lines.at(-1)).toMatch(/handbook and the engine maker decide\. More: --all$/);
    },
  );

  test("answers in the first line, then tells what it hangs on", async () => {
    const { code, stdout, stderr } = await soakline(["plan", TONIGHT, "--all", ...FEW]);
    const [answer] = stdout.split("\n");
    expect(answer).toMatch(/^Plug in at \d\d:\d\d, unplug at 09:50, start at 10:00\. Chance \d+ in \d+\.$/);
    for (const word of [
      "Weakest point",
      "Stay with it",
      "Your choice",
      "15 min more",
      "Ready",
      "only if covers stay on",
      "Energy",
      "If you always",
      "If left on",
      "How to heat with hot air",
      "Needed to start",
      "OK of 100",
      "Warm through",
      "At the start",
      "Assumed",
      "Care",
    ]) {
      expect(stdout).toContain(word);
    }
    expect(stdout).toMatch(/handbook and the engine maker's instructions decide/);
    expect(stdout.split("\n").filter((line) => [...line].length > 80)).toEqual([]);
    expect(stderr).toBe("");
    expect(code).toBe(0);
  });

  test("writes JSON of its schema, whatever the locale", async () => {
    const { code, stdout } = await soakline(["plan", TONIGHT, "--json", ...FEW], {
      env: { PATH: PLAIN.PATH, LANG: "C" },
    });
    const plan = planOf({ stdout });
    expect(code).toBe(0);
    expect(plan.status).toBe("ready");
    expect(plan.members).toBe(40);
    expect(stdout).toContain("°C");
  });

  test("a departure that cannot be met: exit 1, what is missing, and what was tried", async () => {
    const { code, stdout } = await soakline(["plan", "examples/lynx-impossible.json", "--all", ...FEW]);
    expect(code).toBe(1);
    expect(stdout).toMatch(/^Not ready at 21:00: under 1 in 100 at best, 9 in 10 wanted\./);
    expect(stdout).toMatch(/Too cold +\S.*short of -6 °C/);
    expect(stdout).toMatch(/Would help +\S/);
  });

  test("why it cannot be met is told in the user's unit, in JSON in kelvins", async () => {
    const cold = JSON.parse(readFileSync("examples/lynx-impossible.json", "utf8"));
    const input = JSON.stringify({
      ...cold,
      initial: { all_c: 0, uncertainty_k: 1 },
      weather: { metar: "METAR XXRV 141650Z 24004KT OVC020 M01/M03 Q1013" },
      limits: { engine_at_least_c: 25 },
    });
    const [text, json] = await Promise.all(
      [["--units", "f"], ["--json"]].map((flags) =>
        soakline(["plan", "-", "--all", ...flags, ...FEW], { input }),
      ),
    );
    const message = english(planOf(json).message ?? "");
    const kelvins = Number(/, (\d+\.\d).K short/.exec(message)?.[1]);
    const why = text.stdout
      .slice(text.stdout.indexOf("Why"), text.stdout.indexOf("Too cold"))
      .replace(/\s+/g, " ");
    expect(why).toContain(`, ${(1.8 * kelvins).toFixed(1)} F° short`);
    expect(why).not.toMatch(/\d K\b/);
  });

  test("what-ifs on the command line take the place of what the document, here from standard input, says", async () => {
    const flags = [
      "--without-cover",
      "--heater",
      "ducted-fuel-12000",
      "--heater",
      "sump-pad-220",
      "--depart",
      "9:15",
      "--chance",
      "0.5",
    ];
    const plan = planOf(
      await soakline(["plan", "-", "--json", ...flags, "--engine-c", "-31.5", ...FEW], {
        input: readFileSync(TONIGHT, "utf8"),
      }),
    );
    expect(plan.heaters.map((h) => h.id)).toEqual(["ducted-fuel-12000", "sump-pad-220"]);
    expect(plan.happenings.map((h) => h.do)).not.toContain("cover_off");
    expect(plan.departure.time).toBe("2026-01-15T09:15+01:00");
    expect(plan.wanted_chance).toBe(0.5);
    expect(plan.course.parts.oil.p50_c[0]).toBeCloseTo(-31.5, 0);
  });

  test("a real forecast from files takes the place of the document's weather", async () => {
    const { code, stdout } = await soakline([
      ...["plan", "examples/heron-log.json", "--json", "--depart", "2026-01-10T10:00+01:00", ...FEW],
      ...["--taf", "examples/weather/xxrv-taf.txt", "--metar", "examples/weather/xxrv-metars.txt"],
    ]);
    const plan = planOf({ stdout });
    expect([0, 1]).toContain(code);
    expect(plainWords(plan.assumptions)).toMatch(/TEMPO|PROB30|half cosines/);
  });
});

describe("simulate", () => {
  test("shows every part by the hour", async () => {
    const { code, stdout } = await soakline(["simulate", "examples/heron-log.json", "--all", ...FEW]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/after +oil +sump +case +crank +barrel +heads/);
    expect(stdout).toMatch(/3 Sat 00:00 plug in: own-pads/);
  });

  test("reads weather out of an EPW file beside the document, and a negative temperature after an equals sign", async () => {
    const { code, stdout } = await soakline([
      "simulate",
      "examples/marten-pulled-out.json",
      "--json",
      "--engine-c=-31.5",
      ...FEW,
    ]);
    expect(code).toBe(0);
    expect(simulationSchema.parse(JSON.parse(stdout)).course.parts.oil.p50_c[0]).toBeCloseTo(-31.5, 0);
  });
});

describe("explain", () => {
  test("gives each criterion its value, limit, margin, reason and source, and the heat flows", async () => {
    const { code, stdout } = await soakline(["explain", TONIGHT, "--all", ...FEW]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^Lynx: ready at 10:00 in .+ cases\. Weakest point: /);
    expect(stdout).toMatch(/^Weakest point: /m);
    expect(stdout).toMatch(/at least -6 °C: [\d.]+ K (to spare|short); OK in (over )?\d+ of\s+100/);
    expect(stdout).toMatch(/Why: .*\n(.*\n)?.*Source: /);
    expect(stdout).toMatch(/Where the heat goes just before unplugging/);
    expect(stdout).toMatch(/\d+ W {2}oil sump → oil/);
  });
});

test.each([
  ["explain", TONIGHT],
  ["simulate", "examples/lynx-cover-off.json"],
])("the first screen of %s is one screen", async (command, file) => {
  const { stdout } = await soakline([command, file, ...FEW]);
  const lines = stdout.trimEnd().split("\n");
  expect(lines.length).toBeLessThanOrEqual(24);
  expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
  expect(stdout).toMatch(command === "explain" ? /^Weakest {7}\S/m : /^Crankshaft {4}-?\d+ at the start/m);
  expect(stdout).not.toMatch(/Source:/);
});

describe("catalogue", () => {
  test("lists all, a section, and one entry with the origin of its numbers", async () => {
    const all = await soakline(["catalogue"]);
    for (const id of ["four-carburettor-160", "sump-pad-220", "insulated-cover"])
      expect(all.stdout).toContain(id);
    const entry = await soakline(["catalogue", "heaters", "sump-pad-220"]);
    expect(entry.stdout).toMatch(/elements\.0\.power_w +220/);
    expect(entry.stdout).toMatch(/Origin of the numbers/);
    const json = await soakline(["catalogue", "heaters", "sump-pad-220", "--json"]);
    expect(JSON.parse(json.stdout).elements[0].power_w).toBe(220);
  });

  test("an unknown entry or section is bad input that names the known ones", async () => {
    const entry = await soakline(["catalogue", "covers", "sump-pad-220"]);
    expect(entry.code).toBe(2);
    expect(entry.stderr).toMatch(/^id: expected one of .*insulated-cover.*, received sump-pad-220/);
    const section = await soakline(["catalogue", "engines"]);
    expect(section.code).toBe(2);
    expect(section.stderr).toMatch(/installations, heaters, covers/);
  });
});

test("tonight: a verdict, weather and what each invented aircraft needs on one screen, the rest behind it", async () => {
  const { code, stdout } = await soakline(["tonight", "--members", "20"]);
  expect(code).toBe(0);
  const lines = stdout.trimEnd().split("\n");
  expect(lines[0]).toMatch(/^(All 4|\d of 4) ready in time/);
  expect(lines[1]).toMatch(/^Ravnholt Strip, night to Thu 15 Jan 2026/);
  expect(lines.length).toBeLessThanOrEqual(24);
  for (const name of ["Lynx", "Heron", "Marten", "Wren"])
    expect(stdout).toMatch(new RegExp(`^(ok|!!) ${name} +\\d\\d:\\d\\d `, "m"));
  const all = await soakline(["tonight", "--members", "20", "--all"]);
  expect(all.stdout).toMatch(/Invented: strip, aircraft and weather do not exist/);
  expect(all.stdout).toMatch(/^Wren in full$/m);
});
