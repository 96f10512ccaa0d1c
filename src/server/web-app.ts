import { basename } from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyReply, FastifyRequest } from "fastify";
import type { App } from "./context.js";
import { notFound } from "./errors.js";

/** Serves the built web app: every page of it is the one index, whose script looks at the address. */
export async function serveWebApp(app: App, folder: string | undefined): Promise<void> {
  const limited = { preHandler: app.rateLimit() };
  if (folder === undefined) {
    app.setNotFoundHandler(limited, notFound);
    return;
  }
  // The same app also stands on servers without a base: this file tells it that here is one.
  app.get("/server.json", { schema: { hide: true } }, async (_request, reply) =>
    reply.header("cache-control", "no-cache").send({ api: "/api/v1" }),
  );
  await app.register(fastifyStatic, {
    root: folder,
    wildcard: true,
    cacheControl: false,
    dotfiles: "deny",
    setHeaders: (response, path) => response.setHeader("cache-control", cacheFor(path)),
  });
  app.setNotFoundHandler(limited, (request, reply) =>
    isNavigation(request) ? sendIndex(reply) : notFound(request, reply),
  );
}

/** A name with a hash in it stands for one content for ever; everything else is asked for again each time. */
function cacheFor(path: string): string {
  return /[-.][A-Za-z0-9_-]{8,}\.(js|css|wasm|woff2|svg|png|webp)$/.test(basename(path)) &&
    /[\\/]assets[\\/]/.test(path)
    ? "public, max-age=31536000, immutable"
    : "no-cache";
}

function isNavigation({ method, url, headers }: FastifyRequest): boolean {
  return method === "GET" && !url.startsWith("/api/") && (headers.accept ?? "").includes("text/html");
}

function sendIndex(reply: FastifyReply): FastifyReply {
  return reply.code(200).header("cache-control", "no-cache").sendFile("index.html");
}
