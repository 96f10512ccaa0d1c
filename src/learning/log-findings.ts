import type { LogFinding } from "./log.js";

/** Collects findings and writes their places: "line 14, column oil", "lines 3-9, 12, column oil". */
export interface FindingList {
  readonly all: LogFinding[];
  /** `rows` are places in the file's rows, ascending; with a column only its cells are meant. */
  add(rows: ArrayLike<number>, finding: Omit<LogFinding, "place" | "probe">, column?: string): void;
}

/** `lines` gives the line in the file of each of its rows. */
export function createFindingList(lines: ArrayLike<number>): FindingList {
  const all: LogFinding[] = [];
  return {
    all,
    add(rows, finding, column) {
      const place = linesText(rows, lines);
      all.push({
        ...finding,
        place: column === undefined ? place : `${place}, column ${column}`,
        ...(column === undefined ? {} : { probe: column }),
      });
    },
  };
}

/** Rows that follow each other make one range, whatever comment lines stand between. */
function linesText(rows: ArrayLike<number>, lines: ArrayLike<number>): string {
  const ranges: string[] = [];
  for (let i = 0; i < rows.length; ) {
    let end = i;
    while (end + 1 < rows.length && rows[end + 1] === rows[end] + 1) end++;
    const [first, last] = [lines[rows[i]], lines[rows[end]]];
    ranges.push(first === last ? `${first}` : `${first}-${last}`);
    i = end + 1;
  }
  return `${rows.length === 1 ? "line" : "lines"} ${ranges.join(", ")}`;
}

/** Runs of consecutive numbers in an ascending list, as [first, last] of the list's values. */
export function runsOf(values: readonly number[]): readonly (readonly [number, number])[] {
  const runs: [number, number][] = [];
  for (const value of values) {
    const last = runs[runs.length - 1];
    if (last !== undefined && value === last[1] + 1) last[1] = value;
    else runs.push([value, value]);
  }
  return runs;
}

export function range(first: number, last: number): readonly number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}

/** Places in a list at which `isOne` holds. */
export function placesWhere<T>(list: ArrayLike<T>, isOne: (item: T) => boolean): number[] {
  const places: number[] = [];
  for (let i = 0; i < list.length; i++) if (isOne(list[i])) places.push(i);
  return places;
}
