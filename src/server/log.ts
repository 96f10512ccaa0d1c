import type { FastifyInstance, FastifyServerOptions } from "fastify";
import { nameOf } from "./access/caller.js";
import type { ServerOptions } from "./options.js";

/** One JSON line for each thing. Secrets that a line might bring along are not written. */
export function loggerOf(log: ServerOptions["log"]): NonNullable<FastifyServerOptions["logger"]> {
  if (log === false) return false;
  return {
    level: log.level,
    ...(log.stream === undefined ? {} : { stream: log.stream }),
    redact: { paths: SECRETS.flatMap((name) => [name, `*.${name}`, `*.*.${name}`]), censor: "[hidden]" },
  };
}

const SECRETS = [
  "password",
  "passwordHash",
  "current",
  "next",
  "token",
  "tokenHash",
  "code",
  "cookie",
  "authorization",
];

/**
 * A line for every request that changes something or is refused; what is only looked at, and what devices bring, is
 * written at level debug. Addresses go without their query: a calendar token may stand there.
 */
export function logRequests(app: FastifyInstance): void {
  app.addHook("onResponse", async (request, reply) => {
    const { method, url, ip, caller, log } = request;
    const line = {
      method,
      path: url.split("?", 1)[0],
      status: reply.statusCode,
      ms: Math.round(reply.elapsedTime),
      address: ip,
      caller: caller === undefined ? "nobody" : `${caller.by} ${nameOf(caller)}`,
    };
    const refused = reply.statusCode >= 400;
    if (refused || (method !== "GET" && caller?.by !== "token")) log.info(line, "request");
    else log.debug(line, "request");
  });
}
