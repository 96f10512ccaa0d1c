import type { BaseAircraft, BaseSetUp, HeaterSwitch } from "../logbook/index.js";
import type { Guard } from "../switching/index.js";
import { heatersOf } from "./heaters.js";

/** A switch with the probes that watch over what it heats. */
export interface GuardedSwitch {
  readonly aircraft: string;
  readonly switch: HeaterSwitch;
  readonly guards: readonly Guard[];
}

export function guardedSwitches({ aircraft }: BaseSetUp): GuardedSwitch[] {
  return aircraft.flatMap((one) =>
    one.switches.map((each) => ({ aircraft: one.id, switch: each, guards: guardsOf(one, each) })),
  );
}

/**
 * Every probe on a part of the aircraft guards its heaters. Where it names no limit of its own, that of the heaters'
 * surfaces and of what a duct blows holds for any part.
 */
function guardsOf(aircraft: BaseAircraft, one: HeaterSwitch): Guard[] {
  const limits = heatersOf(aircraft, one).flatMap(({ elements, duct }) => [
    ...elements.map(({ surface_max_c }) => surface_max_c),
    ...(duct === undefined ? [] : [duct.supply_max_c]),
  ]);
  return aircraft.probes
    .filter(({ at, via }) => via !== undefined && at !== "outside_air" && at !== "hangar_air")
    .map(({ id, at_most_c, silent_after_s }) => ({
      probe: id,
      atMostC: at_most_c ?? Math.min(...limits),
      ...(silent_after_s === undefined ? {} : { silentAfterS: silent_after_s }),
    }));
}
