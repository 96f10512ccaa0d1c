import type { SolveRequest } from "./system.js";

/** Throws a RangeError for a request that cannot be run. */
export function checkRequest(request: SolveRequest): void {
  const { system, initial, start, end, tolerance, jumps = [], sampleTimes = [] } = request;
  const total = system.size * system.members;
  positive("system.size", system.size);
  positive("system.members", system.members);
  if (system.pattern.rowStart.length !== system.size + 1)
    throw new RangeError(
      `invalid system.pattern: ${system.pattern.rowStart.length - 1} rows (expected ${system.size})`,
    );
  if (initial.length !== total)
    throw new RangeError(`invalid initial: ${initial.length} values (expected ${total})`);
  const fault = initial.findIndex((value) => !Number.isFinite(value));
  if (fault >= 0)
    throw new RangeError(`invalid initial: ${initial[fault]} at ${fault} (expected finite numbers)`);
  if (!Number.isFinite(start)) throw new RangeError(`invalid start: ${start} (expected a finite number)`);
  if (!(Number.isFinite(end) && end >= start))
    throw new RangeError(`invalid end: ${end} (expected ≥ start ${start})`);
  const { absolute } = tolerance;
  if (typeof absolute === "number") positive("tolerance.absolute", absolute);
  else {
    if (absolute.length !== system.size)
      throw new RangeError(`invalid tolerance.absolute: ${absolute.length} values (expected ${system.size})`);
    const wrong = absolute.findIndex((value) => !(value > 0));
    if (wrong >= 0) positive(`tolerance.absolute[${wrong}]`, absolute[wrong]);
  }
  positive("tolerance.relative", tolerance.relative);
  for (const name of ["maximumSteps", "firstStep", "maximumStep"] as const) {
    const value = request[name];
    if (value !== undefined) positive(name, value);
  }
  for (let j = 0; j < jumps.length; j++) {
    const after = j === 0 ? start : jumps[j - 1];
    if (!(jumps[j] > after && jumps[j] < end))
      throw new RangeError(`invalid jumps: ${jumps[j]} (expected ascending, between ${after} and ${end})`);
  }
  for (let s = 0; s < sampleTimes.length; s++) {
    const from = s === 0 ? start : sampleTimes[s - 1];
    if (!(sampleTimes[s] >= from && sampleTimes[s] <= end))
      throw new RangeError(
        `invalid sampleTimes: ${sampleTimes[s]} (expected ascending, in ${from} … ${end})`,
      );
  }
}

function positive(name: string, value: number): void {
  if (!(value > 0)) throw new RangeError(`invalid ${name}: ${value} (expected > 0)`);
}
