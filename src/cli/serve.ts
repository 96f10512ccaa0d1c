import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Command, InvalidArgumentError, Option } from "commander";
import { createPlanner, type Keeper, startKeeper } from "../keeper/index.js";
import { checkBinding, type LogLevel, newSetUpCode } from "../server/index.js";
import { openStore } from "../store/index.js";
import { BadInput, EXIT } from "./exit.js";
import type { Shell } from "./program.js";
import { dataOption, isPostgres, shown, told, USUAL_DATA } from "./store-flags.js";
import { styleFor } from "./style.js";
import { liveTonightText } from "./text/live-tonight-text.js";

const DEMO_DATA = "./soakline-data/demo.sqlite";

interface ServeFlags {
  readonly data?: string;
  readonly host: string;
  readonly port: number;
  readonly broker?: string;
  readonly demo?: boolean;
  readonly name?: readonly string[];
  readonly https?: boolean;
  readonly proxy?: readonly string[];
  readonly log: LogLevel | "none";
  readonly speed: number;
}

export function addServe(program: Command, shell: Shell): void {
  program
    .command("serve")
    .description("keep a base: listen to its probes, plan, switch its heaters, answer the web app")
    .addOption(dataOption())
    .option("--host <address>", "address to listen on", "127.0.0.1")
    .option("--port <n>", "port to listen on, 0 for any free one", portOf, 8420)
    .option(
      "--broker <url>",
      "MQTT broker, such as mqtt://192.168.1.5; without it one runs inside, for this computer",
    )
    .option("--demo", "the invented base, with made aircraft whose probes and heaters are on the broker")
    .option(
      "--name <name>",
      "name it is reached by beside its address, such as base.lan; may be repeated",
      added,
    )
    .option("--https", "browsers reach it over TLS, through a proxy")
    .option(
      "--proxy <address>",
      "proxy whose word for the caller's address is believed; may be repeated",
      added,
    )
    .addOption(
      new Option("--log <level>", "structured lines on standard error")
        .choices(["none", "debug", "info", "warn", "error"])
        .default("warn"),
    )
    .addOption(
      new Option("--speed <n>", "with --demo: how many times faster its clock runs")
        .default(1)
        .argParser(speedOf),
    )
    .action(async (flags: ServeFlags) => {
      const data = flags.data ?? (flags.demo ? DEMO_DATA : USUAL_DATA);
      if (flags.speed !== 1 && !flags.demo) {
        throw new BadInput([
          {
            path: "--speed",
            expected: "--demo with it: real heaters have real time",
            received: `${flags.speed}`,
          },
        ]);
      }
      await serve(data, flags, shell);
    });
}

async function serve(data: string, flags: ServeFlags, shell: Shell): Promise<void> {
  const say = (text: string) => shell.stdout.write(`${text}\n`);
  const store = await told(() => openStore(data));
  const binding = await checkBinding(store, flags.host);
  if (!binding.allowed) {
    await store.close();
    throw new BadInput([
      { path: "--host", expected: "an address of this computer", received: binding.reason },
    ]);
  }
  // Through a proxy nobody sits at this computer: whoever sets up the owner shows by the code that they can see it.
  const hasOwner = (await store.users()).some(({ role }) => role === "owner");
  const setUpCode = hasOwner || flags.proxy === undefined ? undefined : newSetUpCode();
  const webFolder = join(dirname(fileURLToPath(import.meta.url)), "../web");
  const keeper = await startKeeper({
    store,
    planner: createPlanner(),
    ...(flags.broker === undefined ? {} : { brokerUrl: flags.broker }),
    http: { host: flags.host, port: flags.port },
    access: {
      hosts: flags.name ?? [],
      https: flags.https ?? false,
      ...(flags.proxy === undefined ? {} : { trustedProxies: flags.proxy }),
      ...(setUpCode === undefined ? {} : { setUpCode }),
    },
    ...(existsSync(join(webFolder, "index.html")) ? { webFolder } : {}),
    log: flags.log === "none" ? false : { level: flags.log, stream: shell.stderr },
    speed: flags.speed,
    environment: shell.env,
    ...(flags.demo ? { demo: { talks: true, ...worldFile(data) } } : {}),
  });
  say(`Open ${keeper.url}`);
  say(
    `Heaters and probes: ${flags.broker ?? `${keeper.brokerUrl} (a broker inside, for this computer only)`}`,
  );
  if (setUpCode !== undefined) say(`Code to set up the owner: ${setUpCode}`);
  say(`Kept in ${shown(data)}. Ctrl-C stops: heaters go off first.`);
  let asked = 0;
  const ended = new Promise<void>((resolve) => {
    const stop = () => {
      asked++;
      if (asked === 1) {
        say("Stopping: heaters go off …");
        void keeper.close().then(resolve);
      } else if (asked === 3) process.exit(EXIT.interrupted);
    };
    process.on("SIGINT", stop);
    process.on("SIGTERM", stop);
  });
  if (flags.demo) void tellTonight(keeper, shell, () => asked > 0);
  await ended;
  say("Stopped.");
}

/** [ms] until the first plans are told even when some are still being worked out. */
const PATIENCE = 90_000;

/** The night as `tonight` tells it, as soon as every aircraft that is wanted has a plan. */
async function tellTonight({ live, url }: Keeper, shell: Shell, isOver: () => boolean): Promise<void> {
  const until = performance.now() + PATIENCE;
  while (performance.now() < until) {
    if (isOver()) return;
    const wanted = [...(live.state()?.aircraft.values() ?? [])].filter(
      ({ departures }) => departures.length > 0,
    );
    if (wanted.length > 0 && wanted.every(({ setUp }) => live.plans().has(setUp.id))) break;
    await new Promise((resolve) => setTimeout(resolve, 300));
  }
  const state = live.state();
  if (state === undefined || live.plans().size === 0) return;
  const style = styleFor({ env: shell.env, isTty: shell.stdout.isTTY }, "c");
  const plans = [...live.plans().values()].map(({ document }) => document);
  shell.stdout.write(`\n${liveTonightText(state, plans, style).join("\n")}\n\nOpen ${url}\n`);
}

function worldFile(data: string): { readonly worldFile?: string } {
  return isPostgres(data) ? {} : { worldFile: `${data.replace(/^file:/, "")}.world.json` };
}

function portOf(text: string): number {
  const port = Number(text);
  if (!(Number.isInteger(port) && port >= 0 && port <= 65_535))
    throw new InvalidArgumentError("expected 0 to 65535");
  return port;
}

function speedOf(text: string): number {
  const speed = Number(text);
  if (!(speed >= 1 && speed <= 1000)) throw new InvalidArgumentError("expected 1 to 1000");
  return speed;
}

function added(value: string, before: readonly string[] = []): readonly string[] {
  return [...before, value];
}
