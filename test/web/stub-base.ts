import type { IncomingMessage, ServerResponse } from "node:http";

interface Posted {
  readonly id: string;
  readonly kind: string;
}

/** A base's server as far as the web app talks to it: a logbook in memory. */
export class StubBase {
  readonly events: Posted[] = [];
  /** Ids in the order they came, with those that came again. */
  readonly posted: string[] = [];
  /** While true nothing is answered, as when the base's computer is off. */
  isDown = false;
  readonly #streams = new Set<ServerResponse>();

  readonly answer = (request: IncomingMessage, response: ServerResponse): boolean => {
    const { pathname, searchParams } = new URL(request.url ?? "/", "http://x");
    if (pathname === "/server.json") return json(response, { api: "/api/v1" });
    if (!pathname.startsWith("/api/v1/")) return false;
    if (this.isDown) {
      response.destroy();
      return true;
    }
    if (pathname === "/api/v1/changes") {
      response.writeHead(200, { "content-type": "text/event-stream" });
      response.write(`retry: 200\n\nevent: logbook\ndata: {"sequence":${this.events.length}}\n\n`);
      this.#streams.add(response);
      response.on("close", () => this.#streams.delete(response));
      return true;
    }
    if (request.method === "POST" && pathname === "/api/v1/events") {
      void this.#take(request, response);
      return true;
    }
    if (pathname === "/api/v1/events") {
      const after = Number(searchParams.get("after"));
      const events = this.events
        .map((event, i) => ({ sequence: i + 1, received: "2026-01-01T00:00:00Z", event }))
        .slice(after);
      return json(response, { events, more: false });
    }
    response.writeHead(404).end();
    return true;
  };

  /** An event of somebody else comes in, and everybody is told. */
  tell(event: Posted): void {
    this.events.push(event);
    for (const stream of this.#streams) {
      stream.write(`event: logbook\ndata: {"sequence":${this.events.length}}\n\n`);
    }
  }

  async #take(request: IncomingMessage, response: ServerResponse): Promise<void> {
    let text = "";
    for await (const chunk of request) text += chunk;
    if (request.headers["soakline-request"] === undefined) {
      json(response, { error: { code: "foreign-origin", message: "no header" } }, 403);
      return;
    }
    const kept: { id: string; sequence: number }[] = [];
    const known: string[] = [];
    for (const event of (JSON.parse(text) as { events: Posted[] }).events) {
      this.posted.push(event.id);
      if (this.events.some(({ id }) => id === event.id)) {
        known.push(event.id);
        continue;
      }
      this.events.push(event);
      kept.push({ id: event.id, sequence: this.events.length });
    }
    json(response, { kept, known, conflicting: [], refused: [] });
  }
}

function json(response: ServerResponse, body: unknown, status = 200): true {
  response.writeHead(status, { "content-type": "application/json" });
  response.end(JSON.stringify(body));
  return true;
}
