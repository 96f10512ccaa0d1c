import { type SwitchVia, switchProtocol } from "./protocols/index.js";
import { ON_TIME_PLACE } from "./protocols/shared.js";

/** What the machine has to know of a switch: by shape, so that the logbook can call the checks of this folder. */
export interface SwitchDescription {
  readonly id: string;
  readonly longest_on_min: number;
  readonly rest_min?: number;
  readonly on_time_s?: number;
  readonly confirm_within_s?: number;
  readonly via: SwitchVia;
}

/** True when the on command itself carries the on-time, so that every command can shorten it. */
export function sendsOnTime(via: SwitchVia): boolean {
  return switchProtocol(via)
    .onTexts(via)
    .some((text) => text.includes(ON_TIME_PLACE));
}

/**
 * Whether a switch may be told off and asked for its state: false where one of both could put it on, so that it is best
 * left alone.
 */
export function canBeToldOff({ via }: SwitchDescription): boolean {
  return switchProtocol(via).canBeToldOff(via);
}

/** Names of the secrets that a switch needs, each the NAME of an environment variable SOAKLINE_SECRET_NAME. */
export function secretNamesOf({ via }: SwitchDescription): readonly string[] {
  return switchProtocol(via).secretNames(via);
}
