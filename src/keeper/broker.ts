import { createServer, type Socket } from "node:net";
import { Aedes } from "aedes";

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
