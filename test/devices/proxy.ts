import type { AddressInfo } from "node:net";
import { connect, createServer, type Socket } from "node:net";

/** A wire between a client and a broker that can be frozen and cut. */
export interface Wire {
  readonly port: number;
  /** Nothing passes in either direction, but no connection ends: as when a radio link fades. New ones hang, too. */
  freeze(): void;
  /** What was held back passes, late. */
  thaw(): void;
  /** Both sides see their connection end. */
  cut(): void;
  /** The client's side ends, while the broker still believes in its side: as when a router forgets. */
  cutClientSide(): void;
  close(): Promise<void>;
}

export async function startWire(toPort: number): Promise<Wire> {
  const pairs = new Set<[Socket, Socket]>();
  let frozen = false;
  const server = createServer({ pauseOnConnect: true }, (client) => {
    const broker = connect(toPort, "127.0.0.1");
    const pair: [Socket, Socket] = [client, broker];
    pairs.add(pair);
    for (const [from, to] of [pair, [broker, client] as [Socket, Socket]]) {
      from.on("data", (data) => void to.write(data));
      from.on("error", () => undefined);
      from.on("close", () => {
        if (lonely.has(to)) return;
        to.destroy();
        pairs.delete(pair);
      });
      if (frozen) from.pause();
      else from.resume();
    }
  });
  const lonely = new Set<Socket>();
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const each = (act: (client: Socket, broker: Socket) => void) => {
    for (const [client, broker] of [...pairs]) act(client, broker);
  };
  const cut = () => each((client, broker) => [client, broker].map((socket) => socket.destroy()));
  return {
    port: (server.address() as AddressInfo).port,
    freeze() {
      frozen = true;
      each((client, broker) => [client, broker].map((socket) => socket.pause()));
    },
    thaw() {
      frozen = false;
      each((client, broker) => [client, broker].map((socket) => socket.resume()));
    },
    cut,
    cutClientSide: () =>
      each((client, broker) => {
        lonely.add(broker);
        client.destroy();
      }),
    async close() {
      cut();
      for (const socket of lonely) socket.destroy();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
