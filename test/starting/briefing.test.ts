import { describe, expect, test } from "vitest";
import { INSTALLATIONS, type Installation, installationById } from "../../src/aircraft/index.js";
import { START_CAUTIONS, type StartBriefing, startBriefing } from "../../src/starting/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { plain } from "./plain.js";

const PARTS = ["oil", "barrels", "crankshaft", "battery", "heads_front", "heads_rear"] as const;
type Celsius = Partial<Record<(typeof PARTS)[number], number>>;

const all = INSTALLATIONS.map((i): [string, Installation] => [i.id, i]);
const reference = installationById("four-carburettor-160");
const straight = { ...reference, oil: { ...reference.oil, oil_id: "sae-50" } };
const lithium = installationById("two-light-60");

/** Everything at `celsius`, air too, but for what is named. */
function briefed(
  celsius: number,
  others: Celsius = {},
  { installation = reference, air = celsius }: { installation?: Installation; air?: number } = {},
) {
  const temps = new Map(PARTS.map((part) => [part, kelvinFromCelsius(others[part] ?? celsius)]));
  const { notes } = startBriefing(installation, temps, kelvinFromCelsius(air));
  const cautions = notes.flatMap((n) => n.cautions);
  const note = (topic: StartBriefing["notes"][number]["topic"]) => {
    const found = notes.find((n) => n.topic === topic);
    return found && plain(found.text);
  };
  return { notes, cautions, note };
}

describe("oil", () => {
  test("flows to the pump and lets itself be cranked, is too stiff, or is below its pour point", () => {
    expect(briefed(0).note("oil")).toMatch(/at 0 °C can be pumped and cranked by SAE J300/);
    expect(briefed(-25).note("oil")).toMatch(/at -25 °C is too stiff to crank by SAE J300: limit -20 °C$/);
    expect(briefed(-45).note("oil")).toMatch(/at -45 °C is below its pour point \(-39 °C\)/);
    expect(briefed(-45, { oil: 10 }).note("oil")).toMatch(/at 10 °C can be pumped/);
  });

  test("congealed oil is warned of where it is, and only there", () => {
    expect(briefed(-25).cautions).toContain(START_CAUTIONS.congealedOil);
    expect(briefed(-15).cautions).not.toContain(START_CAUTIONS.congealedOil);
    expect(briefed(-25, { oil: 0 }).cautions).not.toContain(START_CAUTIONS.congealedOil);
  });

  test("pressure takes seconds that grow with the cold, and may not come at all", () => {
    expect(briefed(20).note("oil-pressure")).toBe(
      "oil pressure may take 3 to 14 s; stop the engine after 10 s without",
    );
    expect(briefed(-25).note("oil-pressure")).toBe(
      "oil pressure may take 21 to 84 s, and the engine is to be stopped after 10 s: heat it first",
    );
    expect(briefed(-45).note("oil-pressure")).toMatch(/^oil pressure may not come at all/);
    for (const celsius of [20, -45]) {
      expect(briefed(celsius).cautions).toContain(START_CAUTIONS.noOilPressure);
    }
  });

  test("an engine without oil pressure is stopped after 10 s, and nobody is told to wait longer", () => {
    expect(plain(START_CAUTIONS.noOilPressure)).toContain("within 10 s");
    const texts = [
      plain(START_CAUTIONS.noOilPressure),
      ...[20, 0, -10].map((c) => briefed(c).note("oil-pressure")),
    ];
    for (const text of texts) expect(text).not.toMatch(/\b(30|60) s/);
    expect(briefed(-25).note("oil-pressure")).toMatch(/heat it first$/);
  });

  test("its grade is spoken of only where the published table does not list it, by the air and not the oil", () => {
    const listed = briefed(-20, { oil: 20 });
    expect(listed.note("oil-grade")).toBeUndefined();
    const unlisted = briefed(20, {}, { installation: straight, air: -20 });
    expect(unlisted.note("oil-grade")).toMatch(
      /^SAE 50 is not listed for -20 °C: SAE 15W-50, .* \(Lycoming Service Instruction 1014M .*decides\)$/,
    );
    expect(briefed(-20, {}, { installation: straight, air: 25 }).note("oil-grade")).toBeUndefined();
  });
});

describe("cranking", () => {
  test("turns, is too slow to fire, or is not expected to turn", () => {
    expect(briefed(0).note("cranking")).toMatch(/^the starter turns about 12\d rpm at 24\d A and 9\.5 V$/);
    expect(briefed(-25).note("cranking")).toMatch(/^too slow to fire: about 1\d rpm at 28\d A and 4\.1 V$/);
    expect(briefed(-45).note("cranking")).toBe("the starter is not expected to turn the engine");
  });

  test("short tries always; kick-back and turning by hand only where it does not spin fast enough", () => {
    const { crankShort, kickBack, handTurning } = START_CAUTIONS;
    expect(briefed(0).cautions).toContain(crankShort);
    for (const caution of [kickBack, handTurning]) {
      expect(briefed(0).cautions, caution.code).not.toContain(caution);
      expect(briefed(-25).cautions, caution.code).toContain(caution);
    }
    expect(briefed(-25).cautions).toContain(crankShort);
  });

  test.each(["barrels", "crankshaft", "battery"] as const)("a cold %s alone slows it", (part) => {
    const rpm = (others: Celsius) =>
      Number(
        briefed(0, others)
          .note("cranking")
          ?.match(/(\d+) rpm/)?.[1],
      );
    expect(rpm({ [part]: -15 })).toBeLessThan(rpm({}) - 3);
  });
});

describe("battery", () => {
  test("gives less in the cold, and below 40 °F takes no charge", () => {
    expect(briefed(5).note("battery")).toMatch(
      /^the battery at 5 °C, taken as 90 % charged, gives \d\d % of its warm cranking power$/,
    );
    expect(briefed(5).cautions).not.toContain(START_CAUTIONS.coldCharging);
    expect(briefed(20, { battery: -15 }).note("battery")).toMatch(
      /at -15 °C, .* gives 44 % .* and takes no charge$/,
    );
    expect(briefed(20, { battery: -15 }).cautions).toContain(START_CAUTIONS.coldCharging);
  });

  test("may be frozen when discharged", () => {
    const discharged = { ...reference, battery: { ...reference.battery, assumed_charge: 0.2 } };
    const frozen = briefed(-16, {}, { installation: discharged });
    expect(frozen.note("battery")).toBe("the battery at -16 °C, taken as 20 % charged, may be frozen");
    expect(frozen.cautions).toContain(START_CAUTIONS.frozenBattery);
    const warm = briefed(-16, { battery: 5 }, { installation: discharged });
    expect(warm.note("battery")).toMatch(/gives \d+ % of its warm cranking power$/);
    expect(warm.cautions).not.toContain(START_CAUTIONS.frozenBattery);
  });

  test("is not to be charged frozen wherever an empty one would be frozen, for nobody measured its charge", () => {
    expect(briefed(-16).cautions).toContain(START_CAUTIONS.frozenBattery);
    expect(briefed(-2).cautions).not.toContain(START_CAUTIONS.frozenBattery);
    expect(briefed(-30, {}, { installation: lithium }).cautions).not.toContain(START_CAUTIONS.frozenBattery);
    const { notes } = briefed(-16);
    expect(notes.find((n) => n.topic === "battery")?.cautions).toContain(START_CAUTIONS.frozenBattery);
  });

  test("that is not there is said, and nothing is promised of the starter", () => {
    const temps = new Map(PARTS.map((part) => [part, 260]));
    const { notes } = startBriefing(reference, temps, 260, false);
    expect(notes.find((n) => n.topic === "battery")?.text.code).toBe("battery-absent");
    expect(notes.some((n) => n.topic === "cranking")).toBe(false);
  });

  test("a lithium pack gives nothing below its cut-off", () => {
    expect(briefed(-21, {}, { installation: lithium }).note("battery")).toMatch(/gives nothing this cold$/);
    expect(briefed(-19, {}, { installation: lithium }).note("battery")).toMatch(/gives \d+ % .* no charge$/);
  });

  test("is taken out when the air, not the battery, is colder than -34 °C", () => {
    expect(briefed(0, {}, { air: -35 }).cautions).toContain(START_CAUTIONS.removeBattery);
    expect(briefed(-36, {}, { air: -33 }).cautions).not.toContain(START_CAUTIONS.removeBattery);
  });
});

describe("fuel", () => {
  test("evaporates as on a warm day, wants more, wants too much, or gives no mixture", () => {
    expect(briefed(20).note("fuel")).toMatch(/^At 20 °C the fuel evaporates as on a warm day/);
    expect(briefed(-15).note("fuel")).toMatch(/^At -15 °C about 3\.8 times .* is the handbook's to say\.$/);
    expect(briefed(-25).note("fuel")).toMatch(
      /^At -25 °C about 6\.3 times .* more than primers are made for/,
    );
    expect(briefed(-45).note("fuel")).toMatch(/^At -45 °C no priming gives a mixture that burns/);
  });

  test("the colder head decides, whichever it is", () => {
    const mild = briefed(20, { heads_front: -15 }).note("fuel");
    expect(mild).toMatch(/^At -15 °C/);
    expect(briefed(20, { heads_rear: -15 }).note("fuel")).toBe(mild);
  });

  test("what can burn, flood or frost over is said at any temperature", () => {
    const { primeByHandbook, intakeFire, overPriming, frostedPlugs } = START_CAUTIONS;
    for (const celsius of [20, -25]) {
      expect(briefed(celsius).cautions).toEqual(
        expect.arrayContaining([primeByHandbook, intakeFire, overPriming, frostedPlugs]),
      );
    }
  });
});

test("frozen breather and short ground run are warned of below 0 °C outside, however warm the engine", () => {
  for (const caution of [START_CAUTIONS.frozenBreather, START_CAUTIONS.groundRun]) {
    expect(briefed(20, {}, { air: -1 }).cautions, caution.code).toContain(caution);
    expect(briefed(-20, {}, { air: 1 }).cautions, caution.code).not.toContain(caution);
  }
});

test.each(all)("%s: says each caution once, and all topics in the order of a start", (_, installation) => {
  for (const celsius of [30, 0, -20, -50]) {
    const { notes, cautions } = briefed(celsius, {}, { installation });
    expect(new Set(cautions).size).toBe(cautions.length);
    expect(notes.find((n) => n.topic === "propeller")?.cautions).toEqual([START_CAUTIONS.propeller]);
    expect(notes.map((n) => n.topic).filter((topic) => topic !== "oil-grade")).toEqual([
      "oil",
      "oil-pressure",
      "propeller",
      "cranking",
      "battery",
      "fuel",
      ...(celsius < 0 ? ["breather"] : []),
    ]);
    for (const { text } of notes) expect(plain(text)).not.toMatch(/NaN|Infinity|undefined/);
  }
});

test("the coldest and hottest air and parts that a document may name are briefed too", () => {
  expect(briefed(-90, {}, { air: -78 }).note("oil")).toMatch(/at -90 °C is below its pour point/);
  expect(briefed(250, {}, { air: 63 }).note("oil-pressure")).toMatch(/may take 0 to 1 s/);
});

test("a part without a temperature is named, not guessed", () => {
  const temps = new Map(PARTS.filter((part) => part !== "battery").map((part) => [part, 260]));
  expect(() => startBriefing(reference, temps, 260)).toThrow(/^missing temperature: battery$/);
  expect(() => startBriefing(reference, new Map(PARTS.map((part) => [part, 260])), Number.NaN)).toThrow(
    /^invalid tempAir: NaN/,
  );
});
