import { describe, expect, test } from "vitest";
import {
  COVERS,
  type Configuration,
  HEATERS,
  INPUT_NAMES,
  INSTALLATIONS,
  installationById,
  installationNetwork,
  type Kit,
  writeInputs,
} from "../../src/aircraft/index.js";
import type { Surroundings } from "../../src/aircraft/inputs.js";

const EVERYTHING: Kit = { heaters: HEATERS, covers: COVERS };
const CALM: Surroundings = { tempAir: 253.15, windSpeed: 0, tempSky: 235 };

function configuration(heaters: string[], covers: string[]): Configuration {
  return { place: "ramp", heatersOn: new Set(heaters), coversOn: new Set(covers) };
}

function inputs(
  config: Configuration,
  surroundings = CALM,
  installation = installationById("four-injected-200"),
) {
  const out = new Float64Array(INPUT_NAMES.length);
  writeInputs(installation, EVERYTHING, config, surroundings, out);
  return Object.fromEntries(INPUT_NAMES.map((name, i) => [name, out[i]])) as Record<
    (typeof INPUT_NAMES)[number],
    number
  >;
}

function conductance(config: Configuration, link: string): number {
  const { network, valuesIn } = installationNetwork(installationById("four-injected-200"), EVERYTHING);
  const at = network.links.findIndex((l) => l.name === link);
  expect(at, link).toBeGreaterThanOrEqual(0);
  return valuesIn(config).conductance[at];
}

describe("installation networks", () => {
  test.each(INSTALLATIONS.map((i) => [i.id, i] as const))(
    "%s builds with every heater and cover",
    (_, installation) => {
      const { network, valuesIn } = installationNetwork(installation, EVERYTHING);
      const all = configuration(
        HEATERS.map((h) => h.id),
        COVERS.map((c) => c.id),
      );
      for (const config of [configuration([], []), all]) {
        const { conductance: g, power } = valuesIn(config);
        expect(g).toHaveLength(network.links.length);
        expect(g.every((v) => Number.isFinite(v) && v >= 0)).toBe(true);
        expect(power.every((v) => Number.isFinite(v) && v >= 0)).toBe(true);
      }
      expect(network.parts.some((p) => p.name === "coolant")).toBe(installation.cooling === "liquid");
      // Every part can lose heat: none is an island.
      for (const part of network.parts) {
        expect(
          network.links.some((l) => l.from === part.name || l.to === part.name),
          part.name,
        ).toBe(true);
      }
    },
  );

  test("power flows only into heaters that are switched on", () => {
    const { network, valuesIn } = installationNetwork(installationById("four-injected-200"), EVERYTHING);
    const { power } = valuesIn(configuration(["sump-pad-220"], []));
    network.sources.forEach((source, i) => {
      expect(power[i], source.name).toBe(source.name === "heater:sump-pad-220:pad" ? 220 : 0);
    });
  });

  test("covers and plugs close the cowl, and only with them on", () => {
    const open = conductance(configuration([], []), "cowl_air-outside_air");
    const plugged = conductance(configuration([], ["inlet-plugs"]), "cowl_air-outside_air");
    const covered = conductance(configuration([], ["insulated-cover"]), "cowl_air-outside_air");
    expect(plugged).toBeLessThan(0.3 * open);
    expect(covered).toBeLessThan(open);
    expect(inputs(configuration([], ["insulated-cover"])).skin_conductance).toBeLessThan(
      0.5 * inputs(configuration([], [])).skin_conductance,
    );
    expect(inputs(configuration([], ["propeller-cover"])).hub_conductance).toBeCloseTo(
      0.35 * inputs(configuration([], [])).hub_conductance,
      9,
    );
  });

  test("wind raises skin and hub losses and the draught; calm has no draught", () => {
    const calm = inputs(configuration([], []));
    const windy = inputs(configuration([], []), { ...CALM, windSpeed: 8 });
    expect(calm.wind_draught).toBe(0);
    expect(windy.wind_draught).toBeGreaterThan(10);
    expect(windy.skin_conductance).toBeGreaterThan(2 * calm.skin_conductance);
    expect(windy.hub_conductance).toBeGreaterThan(1.5 * calm.hub_conductance);
  });

  test("a cold sky pulls the cowl below the air, less so in wind", () => {
    const calm = inputs(configuration([], []));
    const windy = inputs(configuration([], []), { ...CALM, windSpeed: 8 });
    expect(calm.cowl_surroundings).toBeLessThan(CALM.tempAir - 2);
    expect(calm.cowl_surroundings).toBeGreaterThan(CALM.tempSky);
    expect(windy.cowl_surroundings).toBeGreaterThan(calm.cowl_surroundings);
  });

  test("ducted air is warmed by its power over its flow, up to its limit", () => {
    const electric = inputs(configuration(["ducted-electric-1500"], []));
    expect(electric.supply_air - CALM.tempAir).toBeCloseTo(1500 / (0.025 * 1.292 * 1006), 6);
    const fired = inputs(configuration(["ducted-fuel-12000"], []));
    expect(fired.supply_air).toBeLessThanOrEqual(273.15 + 100);
    expect(inputs(configuration([], [])).supply_air).toBe(CALM.tempAir);
  });
});
