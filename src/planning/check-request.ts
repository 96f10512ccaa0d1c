import type { PlanRequest } from "./request.js";

/** Throws a RangeError that names what makes no sense in a request. */
export function checkRequest({ wish, scenario, heaters, criteria }: PlanRequest): void {
  const { departure, chance, unplugBefore, coverOffBefore } = wish;
  if (!(departure > 0 && departure <= scenario.duration)) {
    throw new RangeError(
      `invalid departure: ${departure} s (expected 0 to ${scenario.duration} s after the start)`,
    );
  }
  if (!(chance > 0 && chance < 1))
    throw new RangeError(`invalid chance: ${chance} (expected between 0 and 1)`);
  if (!(unplugBefore >= 0 && unplugBefore < departure)) {
    throw new RangeError(`invalid unplugBefore: ${unplugBefore} s (expected 0 to less than ${departure} s)`);
  }
  if (!(coverOffBefore >= 0 && coverOffBefore <= unplugBefore)) {
    throw new RangeError(
      `invalid coverOffBefore: ${coverOffBefore} s (expected 0 to ${unplugBefore} s: covers come off after unplugging)`,
    );
  }
  if (criteria.length === 0) throw new RangeError("missing criteria: none given");
  for (const id of heaters) {
    if (!scenario.kit.heaters.some((h) => h.id === id)) throw new RangeError(`unknown heater: ${id}`);
  }
}
