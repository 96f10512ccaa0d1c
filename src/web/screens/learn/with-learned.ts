import type { BaseAircraft, BaseSetUp } from "../../../logbook/index.js";

/** The base with what was learned of one aircraft; without it, the aircraft is as the catalogue has it. */
export function withLearned(
  base: BaseSetUp,
  id: string,
  learned: NonNullable<BaseAircraft["learned"]> | undefined,
): BaseSetUp {
  return {
    ...base,
    aircraft: base.aircraft.map((aircraft) => {
      if (aircraft.id !== id) return aircraft;
      const { learned: _, ...rest } = aircraft;
      return learned === undefined ? rest : { ...rest, learned };
    }),
  };
}
