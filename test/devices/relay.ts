import { createServer, type IncomingMessage, type Server } from "node:http";
import type { AddressInfo } from "node:net";

/** A relay with a heater behind it, and a real HTTP server before it. */
export class Relay {
  on = false;
  seen: { url: string; auth: string | undefined; body: string }[] = [];
  /** Answers are held back while set. */
  mute = false;
  status = 200;
  stateText: string | undefined;
  private server: Server | undefined;

  async start(): Promise<string> {
    this.server = createServer((request, response) => {
      void this.answer(request).then((text) => {
        if (text === undefined) return;
        response.statusCode = this.status;
        response.setHeader("location", "/elsewhere");
        response.end(text);
      });
    });
    await new Promise<void>((resolve) => this.server?.listen(0, "127.0.0.1", resolve));
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}`;
  }

  async stop(): Promise<void> {
    this.server?.closeAllConnections();
    await new Promise((resolve) => this.server?.close(resolve));
  }

  private async answer(request: IncomingMessage): Promise<string | undefined> {
    let body = "";
    for await (const chunk of request) body += chunk;
    this.seen.push({ url: request.url ?? "", auth: request.headers.authorization, body });
    if (this.mute) return undefined;
    if (request.url?.includes("turn=on")) this.on = true;
    if (request.url?.includes("turn=off")) this.on = false;
    return this.stateText ?? JSON.stringify({ ison: this.on });
  }
}
