// The faults this machine raises: a part of the logbook's fault codes.

/** Until a person acknowledges them the switch stays off: what happened is not known to be over. */
export const LOCKING_FAULTS = [
  "over-temperature",
  "probe-stuck",
  "no-confirmation",
  "switched-by-other",
] as const;

/** Off as long as they last; the machine itself says when they are over. */
const PASSING_FAULTS = [
  "clock-jump",
  "store-unwritable",
  "device-offline",
  "probe-lost",
  "longest-on",
] as const;

export type LockingFault = (typeof LOCKING_FAULTS)[number];
export type PassingFault = (typeof PASSING_FAULTS)[number];
export type SwitchFault = LockingFault | PassingFault;

export const SWITCH_FAULTS: readonly SwitchFault[] = [...LOCKING_FAULTS, ...PASSING_FAULTS];

export function isLocking(fault: SwitchFault): fault is LockingFault {
  return (LOCKING_FAULTS as readonly string[]).includes(fault);
}
