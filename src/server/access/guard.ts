import type { FastifyInstance, FastifyRequest } from "fastify";
import { ApiError } from "../errors.js";
import type { AccessOptions } from "../options.js";
import { hostName, isNameOfBase } from "./address.js";
import { type Caller, isLocal } from "./caller.js";
import { ruleOf } from "./rules.js";

declare module "fastify" {
  interface FastifyRequest {
    caller: Caller;
  }
}

/** Sent by the web app with everything that changes something; a form or link of another page cannot send it. */
export const REQUEST_HEADER = "soakline-request";

/** Stands before every route: is it meant for this base, who asks, may they, and was it really them. */
export function guard(
  app: FastifyInstance,
  access: AccessOptions,
  identify: (request: FastifyRequest) => Promise<Caller>,
): void {
  app.decorateRequest("caller");

  app.addHook("onRoute", ({ method, url }) => {
    for (const each of [method].flat()) {
      if (ruleOf(each, url) === undefined)
        throw new Error(`missing rule: ${each} ${url} (expected in rules.ts)`);
    }
  });

  app.addHook("onRequest", async (request) => {
    const name = hostName(request.host);
    if (name === undefined || !isNameOfBase(name, access.hosts)) {
      throw new ApiError("wrong-host", "This base is not known by the name in the address.");
    }
    request.caller = await identify(request);
    if (request.is404) return;
    const { caller } = request;
    const rule = ruleOf(request.method, request.routeOptions.url ?? "");
    if (rule === undefined) throw new Error(`missing rule: ${request.method} ${request.routeOptions.url}`);
    // No page can make a browser send this header to another site unasked.
    const keyed = request.headers.authorization !== undefined;
    if (!SAFE.has(request.method) && !keyed) requireOwnPage(request, access);
    if (rule.who === "anyone" || (rule.orLocal && isLocal(request))) return;
    if (caller.by === "nobody") throw new ApiError("not-signed-in", "Sign in first.");
    if (!rule.who.includes(caller.role)) {
      throw new ApiError("not-allowed", `A ${caller.role} may not do this.`);
    }
  });
}

const SAFE = new Set(["GET", "HEAD", "OPTIONS"]);

/** Against requests that another page makes in the visitor's name (CSRF), beside the cookie's SameSite. */
function requireOwnPage(request: FastifyRequest, access: AccessOptions): void {
  const { origin, "sec-fetch-site": site } = request.headers;
  const foreign =
    (origin !== undefined && !isOwnOrigin(origin, request.host, access.https)) ||
    (site !== undefined && site !== "same-origin" && site !== "none");
  if (foreign) throw new ApiError("foreign-origin", "This request comes from another page.");
  if (request.headers[REQUEST_HEADER] === undefined) {
    throw new ApiError("foreign-origin", `This request needs the header ${REQUEST_HEADER}.`);
  }
}

function isOwnOrigin(origin: string, host: string, https: boolean): boolean {
  return origin.toLowerCase() === `${https ? "https" : "http"}://${host.toLowerCase()}`;
}
