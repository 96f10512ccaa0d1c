import { z } from "zod";

/** A whole number as it stands in an address. */
export function wholeNumber(low: number, high: number) {
  return z
    .string()
    .regex(/^\d{1,16}$/, "a whole number")
    .transform(Number)
    .pipe(z.int().min(low).max(high))
    .meta({ type: "integer", minimum: low, maximum: high });
}

/** A moment as it stands in an address, in [ms] since 1970 UTC. */
export const moment = z.iso
  .datetime({ offset: true, error: "a date and time with offset, such as 2026-01-14T18:00:00Z" })
  .transform((text) => Date.parse(text));
