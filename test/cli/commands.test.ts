import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { explanationSchema, planSchema, simulationSchema } from "../../src/documents/index.js";
import { PLAIN, soakline } from "./run.js";

const TONIGHT = "examples/lynx-tonight.json";
const FEW = ["--members", "60"];

describe("plan", () => {
  test("answers in the first line, then tells what it hangs on", async () => {
    const { code, stdout, stderr } = await soakline(["plan", TONIGHT, ...FEW]);
    const [answer] = stdout.split("\n");
    expect(answer).toMatch(/^Plug in at \d\d:\d\d, unplug 09:50, start 10:00: ready with \d+ % chance\.$/);
    for (const word of [
      "Binds",
      "Ready window",
      "Stays ready",
      "Energy",
      "By habit",
      "Must hold",
      "Assumed",
      "Care",
    ]) {
      expect(stdout).toContain(word);
    }
    expect(stdout).toMatch(/handbook and the engine maker's instructions decide/);
    expect(stderr).toBe("");
    expect(code).toBe(0);
  });

  test("keeps to 80 columns", async () => {
    const { stdout } = await soakline(["plan", TONIGHT, ...FEW]);
    const long = stdout.split("\n").filter((line) => [...line].length > 80);
    expect(long).toEqual([]);
  });

  test("writes JSON of its schema, whatever the locale", async () => {
    const { code, stdout } = await soakline(["plan", TONIGHT, "--json", ...FEW], {
      env: { PATH: PLAIN.PATH, LANG: "C" },
    });
    const plan = planSchema.parse(JSON.parse(stdout));
    expect(code).toBe(0);
    expect(plan.status).toBe("ready");
    expect(plan.members).toBe(60);
    expect(stdout).toContain("°C");
  });

  test("a departure that cannot be met: exit 1, what is missing, and what was tried", async () => {
    const { code, stdout } = await soakline(["plan", "examples/lynx-impossible.json", ...FEW]);
    expect(code).toBe(1);
    expect(stdout).toMatch(/^Not ready at 21:00: at best 0 % chance \(90 % wanted\)/);
    expect(stdout).toMatch(/Missing +\S.*short of -6 °C/);
    expect(stdout).toMatch(/Would help +\S/);
  });

  test("a smaller heater is not enough for the same night, and the cover matters", async () => {
    const small = await soakline(["plan", "examples/lynx-small-heater.json", "--json", ...FEW]);
    const bare = await soakline(["plan", "examples/lynx-cover-off.json", "--json", ...FEW]);
    const covered = await soakline(["plan", TONIGHT, "--json", ...FEW]);
    const plans = [small, bare, covered].map(({ stdout }) => planSchema.parse(JSON.parse(stdout)));
    expect(small.code).toBe(1);
    expect(plans[0].status).toBe("not-reachable");
    const lead = ({ status, plug_in, departure }: (typeof plans)[number]) =>
      status === "ready" && plug_in !== null ? departure.at_h - plug_in.at_h : Number.POSITIVE_INFINITY;
    expect(lead(plans[1])).toBeGreaterThan(lead(plans[2]));
  });

  test("what-ifs on the command line give what the edited document gives", async () => {
    const flagged = await soakline(["plan", TONIGHT, "--json", "--without-cover", ...FEW]);
    const edited = await soakline(["plan", "examples/lynx-cover-off.json", "--json", ...FEW]);
    expect(JSON.parse(flagged.stdout)).toEqual(JSON.parse(edited.stdout));
    const small = await soakline(["plan", TONIGHT, "--json", "--heater", "sump-pad-220", ...FEW]);
    expect(planSchema.parse(JSON.parse(small.stdout)).heaters.map((h) => h.id)).toEqual(["sump-pad-220"]);
  });

  test("another time and another chance", async () => {
    const { stdout } = await soakline([
      "plan",
      TONIGHT,
      "--json",
      "--depart",
      "9:15",
      "--chance",
      "0.5",
      ...FEW,
    ]);
    const plan = planSchema.parse(JSON.parse(stdout));
    expect(plan.departure.time).toBe("2026-01-15T09:15+01:00");
    expect(plan.wanted_chance).toBe(0.5);
  });

  test.each([["--engine_c", "-31.5"], ["--engine_c=-31.5"]])(
    "a negative temperature is a value: %s",
    async (...flag) => {
      const { stdout } = await soakline(["plan", TONIGHT, "--json", ...flag, ...FEW]);
      const { parts } = planSchema.parse(JSON.parse(stdout)).course;
      expect(parts.oil.p50_c[0]).toBeCloseTo(-31.5, 0);
    },
  );

  test("a real forecast from files takes the place of the document's weather", async () => {
    const { code, stdout } = await soakline([
      ...["plan", "examples/heron-log.json", "--json", "--depart", "2026-01-10T10:00+01:00", ...FEW],
      ...["--taf", "examples/weather/zzrv-taf.txt", "--metar", "examples/weather/zzrv-metars.txt"],
    ]);
    const plan = planSchema.parse(JSON.parse(stdout));
    expect([0, 1]).toContain(code);
    expect(plan.assumptions.join("\n")).toMatch(/TEMPO|PROB30|half cosines/);
  });

  test("reads a document from standard input", async () => {
    const { code, stdout } = await soakline(["plan", "-", "--json", ...FEW], {
      input: readFileSync(TONIGHT, "utf8"),
    });
    expect(code).toBe(0);
    expect(planSchema.parse(JSON.parse(stdout)).name).toBe("Lynx");
  });
});

describe("simulate", () => {
  test("shows every part by the hour", async () => {
    const { code, stdout } = await soakline(["simulate", "examples/heron-log.json", ...FEW]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/after +oil +sump +case +crank +barrel +heads/);
    expect(stdout).toMatch(/3 Sat 00:00 plug in: own-pads/);
  });

  test("writes JSON of its schema, in hours and with 5/50/95 % values of every part", async () => {
    const { code, stdout } = await soakline(["simulate", "examples/heron-log.json", "--json", ...FEW]);
    const { course } = simulationSchema.parse(JSON.parse(stdout));
    expect(code).toBe(0);
    expect(course.time_h[0]).toBe(0);
    expect(course.time_h.at(-1)).toBe(20);
    for (const part of [
      "oil",
      "sump",
      "crankcase",
      "crankshaft",
      "cylinders",
      "heads",
      "battery",
      "heater_surface",
      "cowl_air",
    ]) {
      expect(course.parts[part].p50_c.length).toBe(course.time_h.length);
    }
  });

  test("reads weather out of an EPW file beside the document", async () => {
    const { code, stdout } = await soakline([
      "simulate",
      "examples/marten-pulled-out.json",
      "--json",
      ...FEW,
    ]);
    expect(code).toBe(0);
    expect(simulationSchema.parse(JSON.parse(stdout)).course.parts.oil.p50_c[0]).toBeCloseTo(7, 0);
  });
});

describe("explain", () => {
  test("gives each criterion its value, limit, margin, reason and source, and the heat flows", async () => {
    const { code, stdout } = await soakline(["explain", TONIGHT, ...FEW]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/\(binds\)/);
    expect(stdout).toMatch(/at least -6 °C: margin -?\d+ K .*holds in/s);
    expect(stdout).toMatch(/Why: .*\n(.*\n)?.*Source: /);
    expect(stdout).toMatch(/Where the heat goes just before unplugging/);
    expect(stdout).toMatch(/\d+ W {2}oil sump → oil/);
  });

  test("writes JSON of its schema", async () => {
    const { stdout } = await soakline(["explain", TONIGHT, "--json", ...FEW]);
    expect(explanationSchema.parse(JSON.parse(stdout)).heating?.heaters_w).toBeGreaterThan(400);
  });
});

describe("catalogue", () => {
  test("lists all, a section, and one entry with the origin of its numbers", async () => {
    const all = await soakline(["catalogue"]);
    for (const id of ["four-carburettor-160", "sump-pad-220", "insulated-cover"])
      expect(all.stdout).toContain(id);
    const covers = await soakline(["catalogue", "covers"]);
    expect(covers.stdout).not.toContain("sump-pad-220");
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

test("tonight: weather, a line for each invented aircraft, and one in full", async () => {
  const { code, stdout } = await soakline(["tonight", "--members", "20"]);
  expect(code).toBe(0);
  expect(stdout).toMatch(/^Ravnholt Strip, night to Thu 15 Jan 2026/);
  expect(stdout).toMatch(/Invented: strip, aircraft and weather do not exist/);
  for (const name of ["Lynx", "Heron", "Marten", "Wren"])
    expect(stdout).toMatch(new RegExp(`^(ok|!!) ${name} `, "m"));
  expect(stdout).toMatch(/^Lynx in full$/m);
});
