import { z } from "zod";
import { eventSchema } from "./events.js";
import { baseSetUpSchema } from "./set-up.js";

/** JSON Schema (draft 2020-12) of a base and of an event, by name. */
export function logbookSchemas(): Record<"base-set-up" | "event", object> {
  const options = { target: "draft-2020-12", reused: "ref" } as const;
  return {
    "base-set-up": z.toJSONSchema(baseSetUpSchema, options),
    event: z.toJSONSchema(eventSchema, options),
  };
}
