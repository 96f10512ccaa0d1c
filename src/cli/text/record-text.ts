import { finding } from "../../findings/index.js";
import type { BaseState } from "../../logbook/index.js";
import type { Style } from "../style.js";
import { wrapped } from "./words.js";

type TrackRecord = BaseState["record"];

/** How often a base's plans came true: what was said, what came, and what that asks of new plans. */
export function recordText(
  { plans, starts, curve, readings, correction }: TrackRecord,
  style: Style,
): string[] {
  if (plans === 0) {
    const text =
      "Nothing can be said yet: no plan that was followed has a start or a reading written down near its departure.";
    return wrapped(text, style.width);
  }
  const headline =
    starts.count === 0
      ? `${plans} plans can be checked by readings.`
      : `${starts.held} of ${starts.count} starts were easy; the plans said ${style.values.odds(starts.said)}.`;
  const bias =
    readings.bias === undefined
      ? ""
      : ` On average parts were ${style.values.difference(Math.abs(readings.bias))} ${readings.bias < 0 ? "colder" : "warmer"} than said.`;
  return [
    ...wrapped(headline, style.width).map((line) => style.colors.bold(line)),
    ...(readings.count === 0
      ? []
      : wrapped(
          `${readings.within} of ${readings.count} readings lay where 9 in 10 were to lie.${bias}`,
          style.width,
        )),
    ...(correction === undefined
      ? ["New plans are made as they were."]
      : wrapped(
          style.say(
            finding("corrected-by-record", {
              plans: correction.plans,
              colder_k: -correction.airShift,
              spread: correction.spread,
            }),
          ),
          style.width,
        )),
    ...(curve.length === 0
      ? []
      : [
          "",
          style.colors.bold(`${"said".padEnd(10)}${"easy starts".padEnd(16)}9 in 10 between`),
          ...curve.map(({ said, held, count, low, high }) => {
            const between = `${Math.round(100 * low)} and ${Math.round(100 * high)} %`;
            return `${`${Math.round(100 * said)} %`.padEnd(10)}${`${held} of ${count}`.padEnd(16)}${between}`;
          }),
        ]),
  ];
}
