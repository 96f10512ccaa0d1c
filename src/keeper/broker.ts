import { randomUUID } from "node:crypto";
import { createServer, type Socket } from "node:net";
import { Aedes } from "aedes";
import type { Store } from "../store/index.js";

export interface EmbeddedBroker {
  readonly url: string;
  close(): Promise<void>;
}

/**
 * An MQTT broker inside this process, on this computer only: it needs no installation, and it ends with the process, so
 * that whoever hangs on it knows that nobody watches any more.
 * @param port 0 for any free one
 */
export async function startBroker(port = 0): Promise<EmbeddedBroker> {
  const aedes = await Aedes.createBroker();
  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.once("close", () => sockets.delete(socket));
    aedes.handle(socket);
  });
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", resolve);
  });
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("the broker has no port");
  return {
    url: `mqtt://127.0.0.1:${address.port}`,
    async close() {
      await new Promise<void>((resolve) => aedes.close(() => resolve()));
      for (const socket of sockets) socket.destroy();
      await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}

/** The name this base has for the broker, the same after every restart: the broker then drops the old connection at once. */
export async function clientIdOf(store: Pick<Store, "loadState" | "saveState">): Promise<string> {
  const known = await store.loadState("client");
  if (typeof known === "string") return known;
  const made = `soakline-${randomUUID().slice(0, 8)}`;
  await store.saveState("client", made);
  return made;
}
