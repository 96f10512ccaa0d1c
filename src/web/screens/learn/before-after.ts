import type { BaseAircraft } from "../../../logbook/index.js";
import type { Answer } from "../../worker/protocol.js";

type Multiplier = Answer<"learn">["multipliers"][number];

/** A multiplier and the range that 9 in 10 lie within. */
export interface Band {
  readonly mid: number;
  readonly low: number;
  readonly high: number;
}

/** Half width of the 90 % band of a normal distribution. */
const NINETY_PERCENT = 1.645;

export function after({ multiplier, within }: Multiplier): Band {
  return { mid: multiplier, low: multiplier / within, high: multiplier * within };
}

/** What was held of it before this log: what earlier logs taught, or else the general value and its own doubt. */
export function before({ name, within, left }: Multiplier, earlier: BaseAircraft["learned"]): Band {
  const i = (earlier?.multipliers.names as readonly string[] | undefined)?.indexOf(name) ?? -1;
  if (earlier === undefined || i < 0) {
    const factor = left > 0 ? within ** (1 / left) : within;
    return { mid: 1, low: 1 / factor, high: factor };
  }
  const mid = Math.exp(earlier.multipliers.mean_log[i]);
  const factor = Math.exp(NINETY_PERCENT * Math.hypot(...earlier.multipliers.factor_log[i]));
  return { mid, low: mid / factor, high: mid * factor };
}
