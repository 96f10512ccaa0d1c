import cookie from "@fastify/cookie";
import helmet from "@fastify/helmet";
import rateLimit from "@fastify/rate-limit";
import fastify, { LogController } from "fastify";
import { serializerCompiler, type ZodTypeProvider } from "fastify-type-provider-zod";
import { createAccounts } from "./access/accounts.js";
import { callerOf } from "./access/caller.js";
import { guard } from "./access/guard.js";
import { createSessions } from "./access/sessions.js";
import type { App, Context } from "./context.js";
import { ApiError, answer, BAD_ADDRESS, mapErrors } from "./errors.js";
import { loggerOf, logRequests } from "./log.js";
import { measure } from "./metrics.js";
import { describe } from "./openapi.js";
import { type AccessOptions, LIMITS, type ServerOptions } from "./options.js";
import { accessRoutes } from "./routes/access.js";
import { accountRoutes } from "./routes/accounts.js";
import { baseRoutes } from "./routes/base.js";
import { calendarRoutes } from "./routes/calendar.js";
import { changeRoutes } from "./routes/changes.js";
import { eventRoutes } from "./routes/events.js";
import { exportRoutes } from "./routes/export.js";
import { operationRoutes } from "./routes/operations.js";
import { readingRoutes } from "./routes/readings.js";
import { tokenRoutes } from "./routes/tokens.js";
import { createStreams } from "./streams.js";
import { validatorCompiler } from "./validation.js";
import { serveWebApp } from "./web-app.js";

/** The HTTP side of a base, ready to listen. `close()` ends open streams and lets answers finish. */
export async function createServer(options: ServerOptions): Promise<App> {
  const { store, clock, live, access, webFolder } = options;
  const limits = { ...LIMITS, ...options.limits };
  const app = fastify({
    logger: loggerOf(options.log),
    logController: new LogController({ disableRequestLogging: true }),
    trustProxy: access.trustedProxies === undefined ? false : [...access.trustedProxies],
    bodyLimit: limits.bodyBytes,
    exposeHeadRoutes: false,
    requestTimeout: 30_000,
    keepAliveTimeout: 10_000,
    forceCloseConnections: "idle",
    routerOptions: { maxParamLength: 200, ignoreTrailingSlash: false },
    frameworkErrors: (_, __, reply) => {
      answer(reply, BAD_ADDRESS);
    },
  }).withTypeProvider<ZodTypeProvider>() as App;
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  // Nothing but JSON comes in: a form of another page cannot post it without asking first.
  app.removeContentTypeParser("text/plain");
  mapErrors(app);

  const metrics = measure(app, options.metrics);
  const streams = createStreams(live, limits, metrics.streams);
  const sessions = createSessions(store, clock, access);
  const cookieName = access.https ? "__Host-soakline_session" : "soakline_session";
  const context: Context = {
    store,
    clock,
    live,
    access,
    limits,
    sessions,
    cookieName,
    streams,
    metrics,
    accounts: createAccounts(store),
  };

  await app.register(helmet, securityHeaders(access));
  await app.register(cookie);
  guard(app, access, (request) => callerOf(request, { store, sessions, cookieName }));
  await app.register(rateLimit, {
    max: limits.requestsPerMinute,
    timeWindow: 60_000,
    cache: 20_000,
    keyGenerator: ({ caller, ip }) => (caller?.by === "token" ? `token ${caller.id}` : ip),
    errorResponseBuilder: (_, { after }) =>
      new ApiError("rate-limited", `Too many requests. Try again in ${after}.`),
  });
  app.addHook("onSend", async (request, reply) => {
    if (!request.url.startsWith("/api/")) return;
    if (!reply.hasHeader("cache-control")) reply.header("cache-control", "no-store");
    // An answer opened as a page is a file to keep, not a page to show.
    if (/json/.test(String(reply.getHeader("content-type"))) && !reply.hasHeader("content-disposition")) {
      reply.header("content-disposition", 'attachment; filename="answer.json"');
    }
  });
  logRequests(app);
  app.addHook("preClose", async () => streams.closeAll());

  await describe(app);
  operationRoutes(app, context, options.metrics);
  accessRoutes(app, context);
  accountRoutes(app, context);
  tokenRoutes(app, context);
  baseRoutes(app, context);
  eventRoutes(app, context);
  readingRoutes(app, context);
  changeRoutes(app, context);
  calendarRoutes(app, context);
  exportRoutes(app, context);
  await serveWebApp(app, webFolder);
  return app;
}

/** Own files only; no inline script or style; WebAssembly for the solver in its worker. */
function securityHeaders({ https }: AccessOptions) {
  const self = ["'self'"];
  return {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: self,
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        workerSrc: self,
        baseUri: ["'none'"],
        formAction: self,
        frameAncestors: ["'none'"],
        objectSrc: ["'none'"],
      },
    },
    strictTransportSecurity: https ? { maxAge: 31_536_000 } : false,
    referrerPolicy: { policy: "no-referrer" as const },
    xFrameOptions: { action: "deny" as const },
  };
}
