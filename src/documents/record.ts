import { z } from "zod";

/** An object without unknown keys; a wrong key is answered with the right ones. */
export function record<T extends z.ZodRawShape>(shape: T): z.ZodObject<T, z.core.$strict> {
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === "unrecognized_keys" ? `known: ${Object.keys(shape).join(", ")}` : undefined,
  });
}
