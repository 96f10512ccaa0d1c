import { type CsvRow, numberOfCell } from "../weather/index.js";
import type { EngineSignal } from "./log-words.js";

/** A column that tells whether the engine runs. */
export interface SignalColumn {
  readonly index: number;
  readonly signal: EngineSignal;
}

/** A stretch after a flight in which the engine stood and cooled. */
export interface CoolDown {
  /** [s] since 1970-01-01T00:00Z of the first reading with the engine stopped. */
  readonly shutDown: number;
  /** [s] of the last reading before the engine ran again, or of the log. */
  readonly until: number;
}

/**
 * Above this the engine runs: turns per minute; fuel in whatever unit an hour, for none flows in a stopped engine; exhaust
 * in °C or °F alike, for a running one is hotter in either and a stopped one colder within minutes. Project judgement.
 */
const RUNNING: Readonly<Record<EngineSignal, number>> = { rpm: 300, "fuel-flow": 0.5, egt: 250 };
/** Asked in this order: the exhaust tells late. */
const SIGNALS: readonly EngineSignal[] = ["rpm", "fuel-flow", "egt"];
/** [s] A stop shorter than this teaches nothing; one longer than the other has forgotten its flight. Project judgement. */
const SHORTEST = 20 * 60;
const LONGEST = 48 * 3600;

/** Whether the engine ran at each row of `order`; undefined where no column tells. */
export function runningOf(
  rows: readonly CsvRow[],
  order: Int32Array,
  columns: readonly SignalColumn[],
): readonly (boolean | undefined)[] {
  return Array.from(order, (row) => {
    for (const signal of SIGNALS) {
      const values = columns
        .filter((column) => column.signal === signal)
        .flatMap(({ index }) => numberOfCell(rows[row].cells[index]) ?? []);
      if (values.length > 0) return Math.max(...values) > RUNNING[signal];
    }
    return undefined;
  });
}

/**
 * Stretches from each shut-down to the engine's next run or the log's end. Loggers are often switched off with the
 * aircraft: then the first readings of the next flight, before the engine runs, end the stretch.
 * @param isRead whether a probe on a part has a reading at a row
 */
export function coolDownsIn(
  time: Float64Array,
  running: readonly (boolean | undefined)[],
  isRead: (k: number) => boolean,
): readonly CoolDown[] {
  const found: CoolDown[] = [];
  let last: number | undefined;
  let shutDown: number | undefined;
  let until: number | undefined;
  const close = () => {
    if (shutDown !== undefined && until !== undefined && until - shutDown >= SHORTEST) {
      found.push({ shutDown, until });
    }
    shutDown = undefined;
    until = undefined;
  };
  running.forEach((runs, k) => {
    if (runs === true) {
      close();
      last = k;
    } else if (last !== undefined && isRead(k)) {
      // A stop that was not logged itself is taken from the last reading of the flight.
      shutDown ??= time[k] - time[last] > SHORTEST / 2 ? time[last] : time[k];
      if (time[k] - shutDown <= LONGEST) until = time[k];
    }
  });
  close();
  return found;
}
