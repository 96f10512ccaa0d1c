import { once } from "node:events";
import { type ClientRequest, type IncomingMessage, request } from "node:http";
import type { AddressInfo } from "node:net";
import { connect } from "node:net";
import { afterEach, describe, expect, test } from "vitest";
import { event, openBase, post, SET_UP, setUpOwner, signedInAs, type TestBase } from "./base.js";

let base: TestBase;
let port: number;
const requests: ClientRequest[] = [];

async function listen(options: Parameters<typeof openBase>[0] = {}): Promise<void> {
  base = await openBase(options);
  await base.app.listen({ port: 0, host: "127.0.0.1" });
  port = (base.app.server.address() as AddressInfo).port;
}

afterEach(async () => {
  for (const each of requests.splice(0)) each.destroy();
  await base.app.close();
});

interface Listener {
  readonly status: number;
  readonly headers: IncomingMessage["headers"];
  /** Waits until the stream has sent something that matches. */
  until(pattern: RegExp): Promise<string>;
  readonly ended: Promise<void>;
  text(): string;
}

async function subscribe(headers: Record<string, string> = {}): Promise<Listener> {
  const asked = request({ port, host: "127.0.0.1", path: "/api/v1/changes", headers });
  requests.push(asked);
  asked.on("error", () => {});
  asked.end();
  const [response] = (await once(asked, "response")) as [IncomingMessage];
  response.on("error", () => {});
  let text = "";
  response.setEncoding("utf8").on("data", (piece) => {
    text += piece;
  });
  return {
    status: response.statusCode!,
    headers: response.headers,
    text: () => text,
    ended: new Promise((resolve) => response.once("close", resolve)),
    async until(pattern) {
      while (!pattern.test(text)) await once(response, "data");
      return text;
    },
  };
}

const waitFor = async (condition: () => boolean) => {
  while (!condition()) await new Promise((resolve) => setTimeout(resolve, 5));
};

describe("the stream of changes", () => {
  test("begins with the newest sequence, then tells of events, plans and estimates", async () => {
    await listen();
    await post(base, [event({ kind: "set-up", base: SET_UP })]);
    const listener = await subscribe();
    expect([listener.status, listener.headers["content-type"], listener.headers["cache-control"]]).toEqual([
      200,
      "text/event-stream; charset=utf-8",
      "no-store",
    ]);
    expect(listener.headers["content-security-policy"]).toMatch(/default-src 'self'/);
    await listener.until(/event: logbook\nid: 1\ndata: \{"sequence":1\}\n\n/);
    await post(base, [event({ kind: "note", note: "Snow." })]);
    await listener.until(/event: logbook\nid: 2\ndata: \{"sequence":2\}\n\n/);
    base.live.tell({ what: "plan", aircraft: "lynx" });
    base.live.tell({ what: "now", aircraft: "lynx" });
    await listener.until(
      /event: plan\ndata: \{"aircraft":"lynx"\}\n\nevent: now\ndata: \{"aircraft":"lynx"\}\n\n/,
    );
  });

  test("taken up again tells at once of what was missed, and nothing when nothing was", async () => {
    await listen();
    await post(base, [event({ kind: "note" }), event({ kind: "note" })]);
    const missed = await subscribe({ "last-event-id": "1" });
    await missed.until(/id: 2\n/);
    const upToDate = await subscribe({ "last-event-id": "2" });
    await upToDate.until(/retry: 3000\n\n/);
    base.live.tell({ what: "plan", aircraft: "lynx" });
    expect(await upToDate.until(/event: plan/)).not.toContain("logbook");
    expect((await subscribe({ "last-event-id": "x" })).status).toBe(400);
  });

  test("gives a sign of life", async () => {
    await listen({ limits: { heartbeatS: 0.02 } });
    await (await subscribe()).until(/(: still here\n\n){2}/);
  });

  test("ends when its session ends, and its listener goes with it", async () => {
    await listen({ limits: { heartbeatS: 0.02 } });
    const owner = await setUpOwner(base);
    const cookie = await signedInAs(base, owner, "viewer", "Vilde");
    const listener = await subscribe({ cookie });
    await listener.until(/still here/);
    expect(base.live.listeners.size).toBe(1);
    await base.ask({ method: "DELETE", url: "/api/v1/access/session", cookie });
    await listener.ended;
    await waitFor(() => base.live.listeners.size === 0);
  });

  test("at the open door ends when an owner is set up", async () => {
    await listen({ limits: { heartbeatS: 0.02 } });
    const listener = await subscribe();
    await listener.until(/still here/);
    await setUpOwner(base);
    await listener.ended;
  });

  test("leaves nothing behind when the client goes", async () => {
    await listen();
    const listener = await subscribe();
    await listener.until(/retry/);
    expect([base.live.listeners.size, await openStreams()]).toEqual([1, 1]);
    requests.pop()!.destroy();
    await waitFor(() => base.live.listeners.size === 0);
    expect(await openStreams()).toBe(0);
  });

  test("is limited in number", async () => {
    await listen({ limits: { streams: 3, streamsPerAddress: 2 } });
    const open = [await subscribe(), await subscribe(), await subscribe()];
    expect(open.map(({ status }) => status)).toEqual([200, 200, 429]);
    requests.shift()!.destroy();
    await waitFor(() => base.live.listeners.size === 1);
    expect((await subscribe()).status).toBe(200);
  });

  test("lets go of a client that does not read", async () => {
    await listen();
    const socket = connect(port, "127.0.0.1");
    socket.on("error", () => {});
    socket.write("GET /api/v1/changes HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
    socket.pause();
    await waitFor(() => base.live.listeners.size === 1);
    const aircraft = "x".repeat(1000);
    for (let i = 0; i < 20_000 && base.live.listeners.size > 0; i += 1) {
      base.live.tell({ what: "plan", aircraft });
      if (i % 100 === 0) await new Promise((resolve) => setTimeout(resolve, 1));
    }
    socket.destroy();
    expect(base.live.listeners.size).toBe(0);
  });

  test("ends when the base stops, and the base does stop", async () => {
    await listen();
    const listener = await subscribe();
    await listener.until(/retry/);
    await base.app.close();
    await listener.ended;
    expect(base.live.listeners.size).toBe(0);
  });
});

async function openStreams(): Promise<number> {
  const { text } = await base.ask({ url: "/metrics" });
  return Number(/^soakline_change_streams (\d+)$/m.exec(text)![1]);
}

describe("over a real port", () => {
  test("the base answers, also to what is hardly HTTP", async () => {
    await listen();
    const answer = await fetch(`http://127.0.0.1:${port}/api/v1/access`);
    expect([answer.status, ((await answer.json()) as { you: { role: string } }).you.role]).toEqual([
      200,
      "owner",
    ]);
    const raw = async (text: string) => {
      const socket = connect(port, "127.0.0.1");
      socket.write(text);
      let got = "";
      socket.setEncoding("utf8").on("data", (piece) => {
        got += piece;
      });
      await once(socket, "close");
      return got;
    };
    expect(await raw("GET /api/v1/base HTTP/1.0\r\n\r\n"), "no Host").toMatch(/^HTTP\/1\.1 421 /);
    expect(await raw("GET /api/v1/base HTTP/1.1\r\nConnection: close\r\n\r\n"), "no Host").toMatch(
      /^HTTP\/1\.1 400 /,
    );
    expect(await raw("NONSENSE\r\n\r\n")).toMatch(/^HTTP\/1\.1 400 /);
    const twoLengths =
      "POST /api/v1/events HTTP/1.1\r\nHost: localhost\r\nContent-Length: 1\r\nTransfer-Encoding: chunked\r\n\r\n";
    expect(await raw(twoLengths), "request smuggling").toMatch(/^HTTP\/1\.1 400 /);
    const longHeader = `GET / HTTP/1.1\r\nHost: localhost\r\nX: ${"x".repeat(20_000)}\r\n\r\n`;
    expect(await raw(longHeader)).toMatch(/^HTTP\/1\.1 431 /);
  });
});
