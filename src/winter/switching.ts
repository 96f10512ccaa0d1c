import type { Habit, HandHours, KitChoice, Switching } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import { SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import {
  barsOf,
  isAttended,
  type KitSetting,
  leastOn,
  longestOn,
  pauseOf,
  unplugBeforeOf,
} from "./heater-limits.js";

/** [s] pitch of a mains timer's dial, and of a switch on a network; common practice, no published source. */
const PITCH: Readonly<Record<Switching, number>> = {
  by_hand: SECONDS_OF_MINUTE,
  mains_timer: 15 * SECONDS_OF_MINUTE,
  local_network: SECONDS_OF_MINUTE,
  phone_network: SECONDS_OF_MINUTE,
};

/** [s] */
export const WIDEST_PITCH = Math.max(...Object.values(PITCH));

/** [s] how old the forecast is that a lead is set by: a timer is set the evening before, a network switch at the time. */
export function forecastAge(switching: Switching): number {
  return (switching === "mains_timer" ? 13 : 5) * SECONDS_OF_HOUR;
}

/**
 * When heat really comes on for a wanted plug-in: by hand somebody must be there, so at the last moment before it when they
 * are; a timer's dial has its pitch. Never later than wanted.
 * @param wanted [s] since epoch
 */
export function plugInTime(wanted: number, switching: Switching, { from, until }: HandHours): number {
  const pitched = PITCH[switching] * Math.floor(wanted / PITCH[switching]);
  if (switching !== "by_hand") return pitched;
  for (let day = from.length - 1; day >= 0; day--) {
    if (from[day]! <= pitched) return Math.min(pitched, until[day] ?? pitched);
  }
  return pitched;
}

/** [s] to plug in or unplug by hand, the look at cord and heater with it; project judgement. */
const VISIT = 5 * SECONDS_OF_MINUTE;

/** [s] that somebody is there for one time on: all of it and the pause after it, or to plug in and unplug. */
export function attendedTime({ kit, switching }: KitChoice, on: number): number {
  if (on <= 0) return 0;
  if (isAttended(kit)) return on + pauseOf(kit);
  return switching === "by_hand" ? 2 * VISIT : 0;
}

/** Why a habit cannot be had with a kit; empty when it can. */
export function habitRefused(
  { kit, switching }: KitChoice,
  habit: Habit,
  setting: KitSetting & { readonly unplugBefore: number },
): Finding | "" {
  const [bar] = barsOf(kit, setting);
  if (bar !== undefined) return bar.text;
  const attended = kit.heaters.find((heater) => heater.attended);
  if (kit.heaters.length === 0) return habit.do === "planned" ? "" : finding("no-heater-to-switch", {});
  if (attended !== undefined && (switching !== "by_hand" || habit.do !== "planned")) {
    return finding("heater-attended", { heater: attended.name });
  }
  if (habit.do === "daily" && switching === "by_hand") return finding("times-need-timer", {});
  if (leastOn(kit) > longestOn(kit)) return finding("least-over-longest", {});
  if (habit.do === "clock" && habit.lead - unplugBeforeOf(kit, setting.unplugBefore) < leastOn(kit)) {
    return finding("heats-too-short", { least_on_h: leastOn(kit) / SECONDS_OF_HOUR });
  }
  return "";
}
