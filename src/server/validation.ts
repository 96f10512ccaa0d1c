import type { FastifySchemaCompiler } from "fastify";
import type { z } from "zod";
import { issuesOfSchema } from "../documents/index.js";
import { ApiError } from "./errors.js";

/** Checks what came in by the route's schema, and says what is wrong in the words of this project. */
export const validatorCompiler: FastifySchemaCompiler<z.ZodType> =
  ({ schema, httpPart }) =>
  (data) => {
    const parsed = schema.safeParse(data);
    if (parsed.success) return { value: parsed.data };
    const where = WHERE[httpPart ?? ""] ?? "request";
    return {
      error: new ApiError("invalid", `The ${where} is not as expected.`, issuesOfSchema(parsed.error, data)),
    };
  };

const WHERE: Readonly<Record<string, string>> = {
  body: "body",
  querystring: "query",
  params: "address",
  headers: "header",
};
