// Serves the built web app from a free port, with the content policy the server of a base sends. For tests and pictures.
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".wasm": "application/wasm",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
};

const POLICY =
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; connect-src 'self'; " +
  "worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

/**
 * @param {string} folder of the built app
 * @param {(request: import("node:http").IncomingMessage, response: import("node:http").ServerResponse) => boolean} [answer]
 *   answers a request in place of the files when it returns true
 */
export async function serveWeb(folder, answer = () => false) {
  const server = createServer(async (request, response) => {
    if (answer(request, response)) return;
    const path = normalize(decodeURIComponent(new URL(request.url ?? "/", "http://x").pathname));
    const name = path.endsWith("/") ? `${path}index.html` : path;
    try {
      const body = await readFile(join(folder, name));
      response.writeHead(200, {
        "content-type": TYPES[extname(name)] ?? "application/octet-stream",
        "content-security-policy": POLICY,
        "x-content-type-options": "nosniff",
        "cache-control": "no-cache",
      });
      response.end(body);
    } catch {
      response.writeHead(404, { "content-type": "text/plain" });
      response.end("not found");
    }
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", () => resolve(undefined)));
  const { port } = /** @type {import("node:net").AddressInfo} */ (server.address());
  return {
    url: `http://127.0.0.1:${port}/`,
    async close() {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(() => resolve(undefined)));
    },
  };
}
