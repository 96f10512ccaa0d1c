import type { TafChange, TafConditions, TafReport } from "./taf-report.js";

type Quantity = keyof TafConditions;

/**
 * Wind and sky of a TAF at `time` [s since epoch] inside its validity, on the side that cools more. Prevailing
 * conditions: the base, replaced at each FM, passing over in a straight line through each BECMG. TEMPO and PROB,
 * while their period lasts, count where they bring more wind or less cloud; a value they leave out is unchanged.
 * Undefined where no part of the TAF has given the quantity yet.
 */
export function tafConditionsAt(taf: TafReport, time: number): TafConditions {
  const prevailing = prevailingAt(taf, time);
  let { windSpeed, cloudCover } = prevailing;
  for (const change of passingChanges(taf)) {
    if (time < change.from || time > change.to) continue;
    windSpeed = pick(Math.max, windSpeed, change.conditions.windSpeed);
    cloudCover = pick(Math.min, cloudCover, change.conditions.cloudCover);
  }
  return { windSpeed, cloudCover };
}

/** Prevailing wind and sky alone, without TEMPO and PROB. */
function prevailingAt(taf: TafReport, time: number): TafConditions {
  return { windSpeed: prevailing(taf, "windSpeed", time), cloudCover: prevailing(taf, "cloudCover", time) };
}

/** TEMPO and PROB groups that are somewhere windier or clearer than what prevails: those that alter the series. */
export function cautiousChanges(taf: TafReport): TafChange[] {
  return passingChanges(taf).filter((change) =>
    [change.from, (change.from + change.to) / 2, change.to].some((time) => {
      const { windSpeed, cloudCover } = prevailingAt(taf, time);
      return (
        (change.conditions.windSpeed ?? 0) > (windSpeed ?? 0) ||
        (change.conditions.cloudCover ?? 1) < (cloudCover ?? 1)
      );
    }),
  );
}

/** [s] width of the ramp that stands for a sudden change, since a series is continuous. */
const STEP_WIDTH = 60;

/** [s since epoch], unsorted: where the series needs a knot to follow the TAF. */
export function tafKnots(taf: TafReport): number[] {
  const lasting = taf.changes.flatMap(({ kind, from, to }) => {
    if (kind === "FM") return [from - STEP_WIDTH, from];
    return kind === "BECMG" ? [from, to] : [];
  });
  const passing = cautiousChanges(taf).flatMap(({ from, to }) => [
    from - STEP_WIDTH,
    from,
    to,
    to + STEP_WIDTH,
  ]);
  return [...lasting, ...passing];
}

function prevailing(taf: TafReport, quantity: Quantity, time: number): number | undefined {
  let value = taf.base[quantity];
  for (const change of taf.changes) {
    const next = change.conditions[quantity];
    if (next === undefined || time < change.from) continue;
    if (change.kind === "FM") value = next;
    if (change.kind === "BECMG") {
      const share = time >= change.to ? 1 : (time - change.from) / (change.to - change.from);
      value = value === undefined ? next : value + share * (next - value);
    }
  }
  return value;
}

function passingChanges(taf: TafReport): TafChange[] {
  return taf.changes.filter((change) => change.kind === "TEMPO" || change.kind === "PROB");
}

function pick(
  choose: (a: number, b: number) => number,
  a: number | undefined,
  b: number | undefined,
): number | undefined {
  if (a === undefined) return b;
  return b === undefined ? a : choose(a, b);
}
