import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { type DocumentIssue, record } from "../documents/index.js";
import { allowedMethods } from "./access/rules.js";

// The one place where a failure becomes an answer.

export type ErrorCode =
  | "invalid"
  | "bad-json"
  | "bad-request"
  | "not-signed-in"
  | "sign-in-failed"
  | "not-allowed"
  | "foreign-origin"
  | "unknown"
  | "wrong-method"
  | "conflict"
  | "too-large"
  | "wrong-type"
  | "wrong-host"
  | "rate-limited"
  | "internal"
  | "stopping";

const STATUS: Readonly<Record<ErrorCode, number>> = {
  invalid: 400,
  "bad-json": 400,
  "bad-request": 400,
  "not-signed-in": 401,
  "sign-in-failed": 401,
  "not-allowed": 403,
  "foreign-origin": 403,
  unknown: 404,
  "wrong-method": 405,
  conflict: 409,
  "too-large": 413,
  "wrong-type": 415,
  "wrong-host": 421,
  "rate-limited": 429,
  internal: 500,
  stopping: 503,
};

export const issueSchema = record({ path: z.string(), expected: z.string(), received: z.string() });

export const errorSchema = record({
  error: record({
    code: z.enum(Object.keys(STATUS) as [ErrorCode, ...ErrorCode[]]),
    message: z.string(),
    issues: z.array(issueSchema).exactOptional(),
  }),
}).meta({ id: "Error", description: "Why a request was not done." });

/** A failure that the caller is told of. */
export class ApiError extends Error {
  readonly code: ErrorCode;
  readonly issues?: readonly DocumentIssue[];

  constructor(code: ErrorCode, message: string, issues?: readonly DocumentIssue[]) {
    super(message);
    this.code = code;
    if (issues !== undefined) this.issues = issues;
  }
}

const NOT_JSON = ["bad-json", "The request body is not JSON."] as const;

/** Codes of the HTTP framework, in the words of this project. */
const FRAMEWORK: Readonly<Record<string, readonly [ErrorCode, string]>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: ["too-large", "The request body is larger than this route takes."],
  FST_ERR_CTP_INVALID_MEDIA_TYPE: ["wrong-type", "The request body has to be application/json."],
  FST_ERR_CTP_EMPTY_JSON_BODY: ["bad-json", "The request body is empty where JSON was expected."],
  FST_ERR_CTP_INVALID_JSON_BODY: NOT_JSON,
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: ["bad-request", "The request body is not as long as its header says."],
};

export function mapErrors(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError | ApiError, request, reply) => {
    const known = knownError(error);
    if (known.code === "internal") {
      request.log.error({ err: error }, "request failed");
      return answer(reply, new ApiError("internal", `Something failed here; see the log for ${request.id}.`));
    }
    return answer(reply, known);
  });
}

/** Where no route answers: another method would, or nothing is there. */
export function notFound(request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const path = request.url.split("?", 1)[0] ?? "";
  const methods = allowedMethods(path);
  if (methods.length === 0 || methods.includes(request.method)) return answer(reply, NOTHING);
  reply.header("allow", methods.join(", "));
  return answer(reply, new ApiError("wrong-method", `This address answers to ${methods.join(", ")}.`));
}

export function answer(reply: FastifyReply, { code, message, issues }: ApiError): FastifyReply {
  return reply
    .code(STATUS[code])
    .type("application/json; charset=utf-8")
    .serializer(JSON.stringify)
    .send({ error: { code, message, ...(issues === undefined ? {} : { issues }) } });
}

/** Also of addresses that the router cannot take apart. */
export const BAD_ADDRESS = new ApiError(
  "bad-request",
  "The address cannot be read, or a part of it is too long.",
);
const NOTHING = new ApiError("unknown", "There is nothing at this address.");

function knownError(error: FastifyError | ApiError): ApiError {
  if (error instanceof ApiError) return error;
  const framework = FRAMEWORK[error.code];
  if (framework !== undefined) return new ApiError(...framework);
  if (error instanceof SyntaxError && error.statusCode === 400) return new ApiError(...NOT_JSON);
  if (error.statusCode === 429) return new ApiError("rate-limited", error.message);
  // What the file server does not give away looks like what is not there.
  if (error.statusCode === 403 || error.statusCode === 404) return NOTHING;
  if (error.statusCode === 400) return BAD_ADDRESS;
  return new ApiError("internal", "");
}
