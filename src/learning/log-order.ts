import type { CsvRow } from "../weather/index.js";
import { type FindingList, range, runsOf } from "./log-findings.js";
import { GAP, GAP_INTERVALS } from "./log-rules.js";
import { readingsOf } from "./log-series.js";

/**
 * Rows in strictly ascending time, as places in the file's rows. Rows out of order are moved to their place and rows of
 * a time that there is already are left out, all of them listed; so are the gaps.
 */
export function orderOf(rows: readonly CsvRow[], epochs: Float64Array, findings: FindingList): Int32Array {
  const timed = readingsOf(epochs);
  const moved = listMoved(timed, epochs, findings);
  // Sorting is stable: of rows of one time the first in the file stays in front.
  const sorted = moved ? Int32Array.from(timed).sort((a, b) => epochs[a] - epochs[b] || a - b) : timed;
  const order = withoutDuplicates(sorted, rows, epochs, findings);
  listGaps(order, epochs, findings);
  return order;
}

/** [s] median of the steps between ascending times; infinite where there are none. */
export function usualInterval(times: Float64Array): number {
  const steps = times
    .subarray(1)
    .map((time, i) => time - times[i])
    .filter((step) => step > 0)
    .sort();
  return steps.length > 0 ? steps[Math.floor((steps.length - 1) / 2)] : Number.POSITIVE_INFINITY;
}

/** Whether any row is out of order. */
function listMoved(timed: Int32Array, epochs: Float64Array, findings: FindingList): boolean {
  let newest = Number.NEGATIVE_INFINITY;
  const moved: number[] = [];
  for (const r of timed) {
    if (epochs[r] < newest) moved.push(r);
    else newest = epochs[r];
  }
  if (moved.length > 0 && moved.length === timed.length - 1) {
    const [first, last] = [timed[0], timed[timed.length - 1]];
    findings.add([first, last], {
      kind: "out-of-order",
      ...{ from: epochs[last], to: epochs[first] },
      expected: "the oldest row first",
      received: "the newest first, all rows between turned round",
      rejected: false,
    });
    return true;
  }
  for (const [first, last] of runsOf(moved)) {
    findings.add(range(first, last), {
      kind: "out-of-order",
      ...{ from: epochs[first], to: epochs[last] },
      expected: "a time after those of the rows above",
      received: "an earlier one, moved to its place",
      rejected: false,
    });
  }
  return moved.length > 0;
}

function withoutDuplicates(
  sorted: Int32Array,
  rows: readonly CsvRow[],
  epochs: Float64Array,
  findings: FindingList,
): Int32Array {
  const isSecond = (k: number) => k > 0 && epochs[sorted[k]] === epochs[sorted[k - 1]];
  const seconds: number[] = [];
  let kept = 0;
  const order = sorted.filter((r, k) => {
    if (!isSecond(k)) {
      kept = r;
      return true;
    }
    const same = rows[r].cells.every((cell, i) => cell.trim() === rows[kept].cells[i].trim());
    seconds.push(same ? r : -1 - r);
    return false;
  });
  for (const same of [true, false]) {
    const left = seconds.flatMap((r) => (r >= 0 === same ? [same ? r : -1 - r] : [])).sort((a, b) => a - b);
    for (const [first, last] of runsOf(left)) {
      findings.add(range(first, last), {
        kind: "duplicate",
        ...{ from: epochs[first], to: epochs[last] },
        expected: "one row for each time",
        received: same
          ? "the same row again, left out"
          : "the same time with other values, the first row kept",
        rejected: true,
      });
    }
  }
  return order;
}

function listGaps(order: Int32Array, epochs: Float64Array, findings: FindingList): void {
  const limit = Math.max(GAP, GAP_INTERVALS * usualInterval(Float64Array.from(order, (r) => epochs[r])));
  for (let k = 1; k < order.length; k++) {
    const [from, to] = [epochs[order[k - 1]], epochs[order[k]]];
    if (!(to - from > limit)) continue;
    findings.add(
      [order[k - 1], order[k]].sort((a, b) => a - b),
      {
        kind: "gap",
        from,
        to,
        expected: `a row at least every ${Math.round(limit / 60)} min`,
        received: `none for ${Math.round((to - from) / 60)} min`,
        rejected: false,
      },
    );
  }
}
