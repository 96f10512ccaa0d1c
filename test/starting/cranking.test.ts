import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { INSTALLATIONS, type Installation, installationById, oilById } from "../../src/aircraft/index.js";
import { quantile } from "../../src/numerics/index.js";
import { dynamicViscosityOil } from "../../src/properties/index.js";
import { batterySource, crankingCharge } from "../../src/starting/battery-source.js";
import { crankingTry } from "../../src/starting/cranking.js";
import { crankingDrag, crankingTorque, FILM_EXPONENT } from "../../src/starting/cranking-drag.js";
import { crankingModel, crankingSpread, USUAL_CRANKING } from "../../src/starting/index.js";
import { starterOf } from "../../src/starting/starter.js";
import { kelvinFromCelsius, RADIANS_PER_SECOND_OF_RPM } from "../../src/units/index.js";
import { english } from "../../src/words/index.js";

const all = INSTALLATIONS.map((i): [string, Installation] => [i.id, i]);
const reference = installationById("four-carburettor-160");
const soaked = (celsius: number, battery = celsius) => {
  const temp = kelvinFromCelsius(celsius);
  return { barrels: temp, crankshaft: temp, oil: temp, battery: kelvinFromCelsius(battery) };
};
/** Speeds of 200 members and the share that is fast enough, as the criteria count them. */
const outlook = (installation: Installation, temps: ReturnType<typeof soaked>, charge?: number) => {
  const model = crankingModel(installation, charge);
  const { barrels, crankshaft, oil, battery } = temps;
  const speeds = Float64Array.from({ length: 200 }, (_, m) =>
    model.speed(barrels, crankshaft, oil, battery, crankingSpread(m)),
  );
  return { speeds, chance: speeds.filter((speed) => speed >= model.speedMin).length / speeds.length };
};
const rpm = (speed: number) => speed / RADIANS_PER_SECOND_OF_RPM;

describe("a try", () => {
  test("balances: what the starter gives is what the drag takes, and Ohm's law holds", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -18, max: 30, noNaN: true }),
        fc.constantFrom(...INSTALLATIONS),
        (celsius, installation) => {
          const { speed, current, voltage } = crankingTry(installation, soaked(celsius));
          const oil = oilById(installation.oil.oil_id);
          const viscosity = dynamicViscosityOil(oil, kelvinFromCelsius(celsius));
          const starter = starterOf(installation.cranking);
          const torque = current * starter.torquePerCurrent;
          expect(torque / crankingTorque(crankingDrag(installation), viscosity, speed)).toBeCloseTo(1, 3);
          const back = starter.voltagePerSpeed * speed + starter.resistance * current;
          expect(voltage / back).toBeCloseTo(1, 2);
        },
      ),
      { numRuns: 60 },
    );
  });

  test.each(all)("%s: turns on a mild day and does not in deep cold", (_, installation) => {
    expect(crankingTry(installation, soaked(10)).status).toBe("turns");
    expect(crankingTry(installation, soaked(0)).status).toBe("turns");
    expect(crankingTry(installation, soaked(-30)).status).not.toBe("turns");
  });

  test.each(all)("%s: colder parts, a colder battery and less charge all slow it down", (_, installation) => {
    const speed = (temps: ReturnType<typeof soaked>, charge = 1) =>
      crankingTry(installation, temps, charge).speed;
    const base = speed(soaked(0));
    for (const part of ["barrels", "crankshaft", "oil", "battery"] as const) {
      expect(speed({ ...soaked(0), [part]: kelvinFromCelsius(-10) }), part).toBeLessThan(base);
    }
    expect(speed(soaked(0), 0.6)).toBeLessThan(base);
    expect(rpm(speed(soaked(30)))).toBeLessThan(installation.cranking.no_load_rpm);
  });

  test("cold cylinders weigh more than cold oil in the sump", () => {
    const cold = kelvinFromCelsius(-15);
    const { speed: barrels } = crankingTry(reference, { ...soaked(10), barrels: cold });
    const { speed: oil } = crankingTry(reference, { ...soaked(10), oil: cold });
    expect(barrels).toBeLessThan(0.95 * oil);
  });

  test("straight grade 100 oil stops what a multigrade lets turn", () => {
    const straight = { ...reference, oil: { ...reference.oil, oil_id: "sae-50" } };
    expect(crankingTry(reference, soaked(-15)).status).toBe("turns");
    const slow = crankingTry(straight, soaked(-15));
    expect(slow.status).toBe("too-slow");
    expect(slow.cautions.map(english).join()).toMatch(/kick back/);
    expect(crankingTry(reference, soaked(0)).cautions.map(english).join()).toMatch(/^Crank 5 s at a time/);
    expect(outlook(straight, soaked(-15)).chance).toBeLessThan(0.05);
  });

  test("a warm engine on a -25 °C battery is marginal on a six-cylinder, and a dead lithium pack gives nothing", () => {
    for (const id of ["six-carburettor-230", "six-injected-300"]) {
      const { chance } = outlook(installationById(id), soaked(5, -25), 1);
      expect(chance, id).toBeGreaterThan(0.6);
      expect(chance, id).toBeLessThan(0.95);
    }
    const dead = crankingTry(installationById("two-light-60"), soaked(10, -21));
    expect(dead).toMatchObject({ status: "stalls", speed: 0, current: 0, voltage: 0 });
  });

  test("a part hotter or colder than the tables counts as their end", () => {
    const hot = { ...soaked(20), barrels: 600 };
    expect(crankingTry(reference, hot).speed).toBe(crankingTry(reference, { ...hot, barrels: 473.15 }).speed);
    expect(Number.isFinite(crankingTry(reference, soaked(-80)).speed)).toBe(true);
  });
});

describe("spread", () => {
  test("is the same for a member however many there are, inside its ranges, and centred", () => {
    const many = Array.from({ length: 1000 }, (_, m) => crankingSpread(m));
    expect(crankingSpread(7)).toEqual(many[7]);
    for (const { exponent, drag, power } of many) {
      expect(exponent).toBeGreaterThanOrEqual(FILM_EXPONENT.low);
      expect(exponent).toBeLessThanOrEqual(FILM_EXPONENT.high);
      expect(drag).toBeGreaterThan(0.4);
      expect(power).toBeLessThan(2);
    }
    const logs = many.map(({ drag }) => Math.log(drag));
    const mean = logs.reduce((sum, x) => sum + x, 0) / logs.length;
    const sd = Math.sqrt(logs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / logs.length);
    expect(mean).toBeCloseTo(0, 2);
    expect(sd).toBeCloseTo(0.2, 2);
    const products = many.reduce(
      (sum, { drag, power }) => sum + (Math.log(drag) * Math.log(power)) / (0.2 * 0.15),
      0,
    );
    expect(Math.abs(products / many.length)).toBeLessThan(0.03);
  });

  test("brackets the middle estimate", () => {
    const { speeds } = outlook(reference, soaked(-5));
    const [low, mid, high] = [0.05, 0.5, 0.95].map((share) => quantile(speeds, share));
    const { speed } = crankingTry(reference, soaked(-5));
    expect(low).toBeLessThan(0.8 * speed);
    expect(high).toBeGreaterThan(1.15 * speed);
    expect(Math.abs(mid / speed - 1)).toBeLessThan(0.05);
  });
});

describe("the battery", () => {
  test("loses voltage and gains resistance with its charge and with cold", () => {
    const at = (celsius: number, charge: number) =>
      batterySource(reference.battery, reference.cranking, kelvinFromCelsius(celsius), charge);
    expect(at(0, 1).openVoltage).toBeCloseTo(12.63, 2);
    expect(at(0, 0.5).openVoltage).toBeLessThan(12.3);
    expect(at(0, 0.5).resistance).toBeCloseTo(2 * at(0, 1).resistance, 12);
    expect(at(-20, 1).resistance).toBeGreaterThan(at(0, 1).resistance);
    expect(at(-45, 1).resistance).toBe(Number.POSITIVE_INFINITY);
  });

  test("never gives more charge than its capacity", () => {
    const small = { ...reference.battery, capacity_ah: 1 };
    expect(crankingCharge(small, kelvinFromCelsius(27), 1)).toBeCloseTo(3600, -1);
  });
});

describe("what is refused", () => {
  test("a starter that gives out more than it takes in", () => {
    const cranking = { ...reference.cranking, stall_torque_nm: 900 };
    expect(() => starterOf(cranking)).toThrow(/^invalid stall_torque_nm: 900 \(expected at most 5\d\d/);
    for (const [id, { cranking: own }] of all) {
      const { torquePerCurrent, voltagePerSpeed } = starterOf(own);
      expect(torquePerCurrent / voltagePerSpeed, id).toBeGreaterThan(0.5);
      expect(torquePerCurrent / voltagePerSpeed, id).toBeLessThan(0.95);
    }
  });

  test("charge, displacement, compression, viscosity, speed and exponent out of range", () => {
    for (const charge of [-0.1, 1.01, 90, Number.NaN]) {
      expect(() => crankingModel(reference, charge)).toThrow(/^invalid charge: /);
    }
    expect(() => crankingDrag({ ...reference, displacement_l: 0 })).toThrow(/^invalid displacement_l: 0/);
    expect(() => crankingDrag({ ...reference, compression_ratio: 1 })).toThrow(
      /^invalid compression_ratio: 1/,
    );
    const drag = crankingDrag(reference);
    expect(() => crankingTorque(drag, -1, 10)).toThrow(/^invalid viscosity: -1/);
    expect(() => crankingTorque(drag, 1, 1000)).toThrow(/^invalid speed: 1000/);
    expect(() => crankingTorque(drag, 1, 10, 2)).toThrow(/^invalid exponent: 2/);
  });

  test("the middle estimate is the model's own", () => {
    const model = crankingModel(reference);
    const temp = kelvinFromCelsius(-5);
    expect(model.speed(temp, temp, temp, temp, USUAL_CRANKING)).toBe(
      crankingTry(reference, soaked(-5)).speed,
    );
  });
});
