import type { Scenario } from "../simulation/index.js";

/** What is tried beside the departure; what is left out stays as it is. */
export interface WhatIf {
  /** Covers on from now, by id; each is of the kit. */
  readonly coversOn?: readonly string[];
  /** Every wind of the forecast times this. */
  readonly windFactor?: number;
}

/** The scenario with what is tried. Weather keeps its knots, so that the same draws hold. */
export function whatIfScenario(scenario: Scenario, { coversOn, windFactor }: WhatIf): Scenario {
  const unknown = coversOn?.find((id) => !scenario.kit.covers.some((cover) => cover.id === id));
  if (unknown !== undefined) throw new RangeError(`unknown cover: ${unknown}`);
  if (windFactor !== undefined && !(windFactor >= 0 && Number.isFinite(windFactor))) {
    throw new RangeError(`invalid windFactor: ${windFactor} (expected 0 or more)`);
  }
  const { initial, weather } = scenario;
  return {
    ...scenario,
    ...(coversOn === undefined
      ? {}
      : {
          initial: {
            ...initial,
            configuration: { ...initial.configuration, coversOn: new Set(coversOn) },
          },
        }),
    ...(windFactor === undefined
      ? {}
      : { weather: { ...weather, windSpeed: weather.windSpeed.map((speed) => speed * windFactor) } }),
  };
}
