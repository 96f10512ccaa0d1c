import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer, connect as dial, type Server, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Aedes } from "aedes";

/** A broker of the test's own, on a port that stays the same over a restart. */
export interface TestBroker {
  readonly port: number;
  /** As after a power cut: connections break, nothing is said. */
  crash(): Promise<void>;
  start(): Promise<void>;
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  if (address === null || typeof address === "string") throw new Error("no port");
  return address.port;
}

export async function startEmbedded(): Promise<TestBroker> {
  const port = await freePort();
  let server: Server | undefined;
  let sockets = new Set<Socket>();
  let broker: Aedes | undefined;
  const it: TestBroker = {
    port,
    async start() {
      broker = await Aedes.createBroker();
      const { handle } = broker;
      sockets = new Set();
      server = createServer((socket) => {
        sockets.add(socket);
        handle(socket);
      });
      await new Promise<void>((resolve) => server?.listen(port, "127.0.0.1", resolve));
    },
    async crash() {
      for (const socket of sockets) socket.destroy();
      await new Promise((resolve) => server?.close(resolve));
      await new Promise<void>((resolve) => broker?.close(() => resolve()));
    },
  };
  await it.start();
  return it;
}

export async function startMosquitto(): Promise<TestBroker> {
  if (spawnSync("mosquitto", ["-h"], { stdio: "ignore" }).error !== undefined)
    throw new Error("Mosquitto is not installed (Debian: mosquitto)");
  const port = await freePort();
  const folder = mkdtempSync(join(tmpdir(), "soakline-broker-"));
  const config = join(folder, "mosquitto.conf");
  writeFileSync(
    config,
    `listener ${port} 127.0.0.1\nallow_anonymous true\npersistence false\nlog_type none\n`,
  );
  let child: ChildProcess | undefined;
  const it: TestBroker = {
    port,
    async start() {
      child = spawn("mosquitto", ["-c", config], { stdio: "ignore" });
      for (let i = 0; !(await answers(port)); i++) {
        if (i > 200) throw new Error("Mosquitto does not answer");
        await new Promise((resolve) => setTimeout(resolve, 25));
      }
    },
    async crash() {
      const ended = new Promise((resolve) => child?.once("exit", resolve));
      child?.kill("SIGKILL");
      await ended;
    },
  };
  await it.start();
  process.once("exit", () => {
    child?.kill("SIGKILL");
    rmSync(folder, { recursive: true, force: true });
  });
  return it;
}

function answers(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = dial(port, "127.0.0.1");
    socket.once("connect", () => {
      socket.destroy();
      resolve(true);
    });
    socket.once("error", () => resolve(false));
  });
}

/** The broker of this tier: one inside the process, or Mosquitto. */
export const [BROKER, startBroker] =
  process.env.TEST_TIER === "broker"
    ? (["Mosquitto", startMosquitto] as const)
    : (["an embedded broker", startEmbedded] as const);
