import { type LocalTimeReading, localText } from "../weather/index.js";
import { type FindingList, placesWhere, range, runsOf } from "./log-findings.js";
import { usualInterval } from "./log-order.js";

type Pass = "earlier" | "later";

/**
 * [s] since 1970 of each reading, NaN where there is none. In the hour that the clock repeats, rows before the clock
 * text falls back are of the first pass and those after it of the second; where it does not fall back, the pass is the
 * one that joins the row before or the row after without a pause; else the option decides, or the rows are rejected.
 */
export function resolveOverlaps(
  readings: readonly LocalTimeReading[],
  texts: readonly string[],
  zone: string | undefined,
  option: Pass | undefined,
  findings: FindingList,
): Float64Array {
  const epochs = new Float64Array(readings.length).fill(Number.NaN);
  readings.forEach((reading, r) => {
    if (reading.ok) epochs[r] = reading.epoch;
  });
  const doubtful = placesWhere(readings, (reading) => !reading.ok && reading.reason === "overlap");
  if (doubtful.length === 0) return epochs;
  const usual = usualInterval(epochs.filter((epoch) => !Number.isNaN(epoch)).sort());
  for (const [first, last] of runsOf(doubtful)) {
    const back = fallsBackAt(readings, first, last, usual);
    const stretches: [number, number, Pass | undefined][] =
      back === undefined
        ? [[first, last, joining(readings, epochs, first, last, usual) ?? option]]
        : [
            [first, back - 1, "earlier"],
            [back, last, "later"],
          ];
    for (const [from, to, pass] of stretches) settle(from, to, pass);
  }
  return epochs;

  function settle(from: number, to: number, pass: Pass | undefined): void {
    const { expected } = readings[from] as { readonly expected: string };
    const rows = range(from, to);
    if (pass === undefined) {
      findings.add(rows, { kind: "ambiguous-time", expected, received: texts[from], rejected: true });
      return;
    }
    for (const r of rows) epochs[r] = candidate(readings[r], pass);
    findings.add(rows, {
      kind: "ambiguous-time",
      ...{ from: epochs[from], to: epochs[to] },
      expected,
      received: `${texts[from]}, taken as ${localText(epochs[from], zone ?? "UTC")}`,
      rejected: false,
    });
  }
}

/** The row at which the clock text goes back, once; equal texts go back only where readings are half an hour apart. */
function fallsBackAt(
  readings: readonly LocalTimeReading[],
  first: number,
  last: number,
  usual: number,
): number | undefined {
  const backs = range(first + 1, last).filter((r) => {
    const step = candidate(readings[r], "earlier") - candidate(readings[r - 1], "earlier");
    return step < 0 || (step === 0 && usual >= 1800);
  });
  return backs.length === 1 ? backs[0] : undefined;
}

/** The pass that continues the row before or leads to the row after within one and a half usual intervals. */
function joining(
  readings: readonly LocalTimeReading[],
  epochs: Float64Array,
  first: number,
  last: number,
  usual: number,
): Pass | undefined {
  const isNear = (pause: number) => pause > 0 && pause <= 1.5 * usual;
  const continues = first > 0 && isNear(candidate(readings[first], "earlier") - epochs[first - 1]);
  const leads = last + 1 < epochs.length && isNear(epochs[last + 1] - candidate(readings[last], "later"));
  if (continues === leads) return undefined;
  return continues ? "earlier" : "later";
}

function candidate(reading: LocalTimeReading, pass: Pass): number {
  return !reading.ok && reading.reason === "overlap" ? reading[pass] : Number.NaN;
}
