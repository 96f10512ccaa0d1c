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

/** Ids as they stand in an address, with commas between them. */
export function listOf<T extends z.ZodType<string, string>>(entry: T) {
  return z
    .string()
    .max(2000)
    .transform((text) => text.split(","))
    .pipe(z.array(entry).min(1).max(100))
    .meta({ type: "string", minLength: 1, maxLength: 2000 });
}

/** A moment as it stands in an address, in [ms] since 1970 UTC. */
export const moment = z.iso
  .datetime({ offset: true, error: "a date and time with offset, such as 2026-01-14T18:00:00Z" })
  .transform((text) => Date.parse(text));
