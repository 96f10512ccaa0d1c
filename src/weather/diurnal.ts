import { finding } from "../findings/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { NIGHT_COOLING, nightCooling } from "./cautious.js";
import type { WeatherAssumption } from "./series.js";
import type { TempPoint } from "./taf-report.js";
import { utcText } from "./time.js";

/** What is known of the air temperature ahead. Lows and highs at or before the reading are past and not used. */
export interface TemperatureOutlook {
  readonly reading: TempPoint | undefined;
  readonly lows: readonly TempPoint[];
  readonly highs: readonly TempPoint[];
  /** [s since epoch]: the curve is wanted up to here. */
  readonly until: number;
  /** [0..1] clearest sky expected between two times, for nights nobody forecast. */
  readonly clearestSky: (from: number, to: number) => number;
}

export interface TemperatureCurve {
  /** [s since epoch] of the points the curve goes through, ascending. */
  readonly knots: readonly number[];
  /** [K] at a time from the first knot to `until`. */
  readonly at: (time: number) => number;
  readonly assumptions: readonly WeatherAssumption[];
  /** Whether any low or high lies ahead; without one the curve is the reading carried on. */
  readonly forecast: boolean;
}

/** [s] a low is taken to lie before a high when only the high is forecast (winter minimum about sunrise, maximum early afternoon; common practice, no published source). */
const LOW_BEFORE_HIGH = 6 * SECONDS_OF_HOUR;

interface Anchor extends TempPoint {
  readonly kind: "reading" | "low" | "high";
}

/**
 * Air temperature ahead, through the reading and the forecast lows and highs. Between two points a half cosine,
 * T = Ta + (Tb - Ta) (1 - cos(pi s)) / 2 with s from 0 to 1 (common practice for the daily course, no published
 * source). Where the sources leave a night open the air cools by `nightCooling`: before a high that no low
 * precedes, and after the last point if it is a reading or a high. After a last low the low is held, without the
 * warming of the day. Undefined where nothing is known to begin from: neither a reading nor a low before any high.
 */
export function temperatureCurve(outlook: TemperatureOutlook): TemperatureCurve | undefined {
  const assumptions: WeatherAssumption[] = [];
  const known = anchorsOf(outlook, assumptions);
  const first = known[0];
  if (first === undefined || first.kind === "high") return undefined;
  const anchors = withAssumedLows(known, outlook, assumptions);
  const last = anchors.at(-1)!;
  const tail = tailOf(last, outlook, assumptions);
  if (anchors.length > 1) assumptions.push(shapeAssumption(first.time, last.time));
  return {
    knots: anchors.map((anchor) => anchor.time),
    at: (time) => (time > last.time ? tail(time) : between(anchors, time)),
    assumptions,
    forecast: known.some((anchor) => anchor.kind !== "reading"),
  };
}

function anchorsOf(outlook: TemperatureOutlook, assumptions: WeatherAssumption[]): Anchor[] {
  const { reading, lows, highs } = outlook;
  const ahead = (points: readonly TempPoint[], kind: Anchor["kind"]): Anchor[] =>
    points
      .filter((point) => reading === undefined || point.time > reading.time)
      .map(({ time, tempAir }) => ({ time, tempAir, kind }));
  const sorted = [...ahead(lows, "low"), ...ahead(highs, "high")].sort(
    (a, b) => a.time - b.time || a.tempAir - b.tempAir,
  );
  // Of two points at one time the colder stands.
  const anchors = sorted.filter((anchor, i) => anchor.time !== sorted[i - 1]?.time);
  const low = anchors[0];
  if (reading === undefined) return anchors;
  if (low?.kind === "low" && low.tempAir > reading.tempAir) {
    anchors[0] = { ...low, tempAir: reading.tempAir };
    assumptions.push({
      quantity: "tempAir",
      from: reading.time,
      to: low.time,
      text: finding("air-held-at-reading", {
        colder_k: low.tempAir - reading.tempAir,
        low_at: utcText(low.time),
      }),
    });
  }
  return [{ ...reading, kind: "reading" }, ...anchors];
}

function withAssumedLows(
  anchors: readonly Anchor[],
  outlook: TemperatureOutlook,
  assumptions: WeatherAssumption[],
): Anchor[] {
  return anchors.flatMap((anchor, i) => {
    const before = anchors[i - 1];
    if (anchor.kind !== "high" || before === undefined || before.kind === "low") return [anchor];
    const time = anchor.time - LOW_BEFORE_HIGH;
    if (time - before.time < SECONDS_OF_HOUR) return [anchor];
    const fall = nightCooling(time - before.time, outlook.clearestSky(before.time, time));
    const tempAir = Math.min(before.tempAir - fall, anchor.tempAir);
    assumptions.push({
      quantity: "tempAir",
      from: before.time,
      to: time,
      text: finding("low-assumed", {
        fall_k: before.tempAir - tempAir,
        from: utcText(before.time),
        at: utcText(time),
      }),
    });
    return [{ time, tempAir, kind: "low" as const }, anchor];
  });
}

function tailOf(
  last: Anchor,
  outlook: TemperatureOutlook,
  assumptions: WeatherAssumption[],
): (time: number) => number {
  const { until, clearestSky } = outlook;
  const cover = until > last.time ? clearestSky(last.time, until) : 0;
  const cools = last.kind !== "low";
  if (until > last.time) {
    const fall_k = nightCooling(NIGHT_COOLING.duration, cover);
    assumptions.push({
      quantity: "tempAir",
      from: last.time,
      to: until,
      text: cools
        ? finding("air-taken-to-cool", { fall_k, hours: NIGHT_COOLING.duration / SECONDS_OF_HOUR })
        : finding("low-held", {}),
    });
  }
  return (time) => last.tempAir - (cools ? nightCooling(time - last.time, cover) : 0);
}

function shapeAssumption(from: number, to: number): WeatherAssumption {
  return {
    quantity: "tempAir",
    from,
    to,
    text: finding("air-by-cosines", {}),
  };
}

function between(anchors: readonly Anchor[], time: number): number {
  const next = anchors.findIndex((anchor) => anchor.time >= time);
  const b = anchors[next]!;
  const a = anchors[next - 1] ?? b;
  if (a === b || b.time === time) return b.tempAir;
  const s = (time - a.time) / (b.time - a.time);
  return a.tempAir + ((b.tempAir - a.tempAir) * (1 - Math.cos(Math.PI * s))) / 2;
}
