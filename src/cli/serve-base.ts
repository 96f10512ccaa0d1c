import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { createPlanner, type Keeper, startKeeper } from "../keeper/index.js";
import { checkBinding, type LogLevel, newSetUpCode } from "../server/index.js";
import { openStore } from "../store/index.js";
import { told } from "./base-store.js";
import { BadInput, EXIT } from "./exit.js";
import type { Shell } from "./shell.js";
import { isPostgres, shown } from "./store-flags.js";
import { type Looks, styleFor } from "./style.js";
import { liveTonightText } from "./text/live-tonight-text.js";
import { switchNotes } from "./text/switch-notes.js";

export interface ServeFlags extends Looks {
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

/** Keeps a base until it is interrupted. */
export async function serve(data: string, flags: ServeFlags, shell: Shell): Promise<void> {
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
  for (const note of switchNotes(keeper.live.state())) say(note);
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
  if (flags.demo) void tellTonight(keeper, shell, flags, () => asked > 0);
  await ended;
  say("Stopped.");
}

/** [ms] until the first plans are told even when some are still being worked out. */
const PATIENCE = 90_000;

/** The night as `tonight` tells it, as soon as every aircraft that is wanted has a plan. */
async function tellTonight(
  { live, url }: Keeper,
  shell: Shell,
  looks: Looks,
  isOver: () => boolean,
): Promise<void> {
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
  const style = styleFor({ env: shell.env, isTty: shell.stdout.isTTY === true }, looks);
  const plans = [...live.plans().values()].map(({ document }) => document);
  shell.stdout.write(`\n${liveTonightText(state, plans, style).join("\n")}\n\nOpen ${url}\n`);
}

function worldFile(data: string): { readonly worldFile?: string } {
  return isPostgres(data) ? {} : { worldFile: `${data.replace(/^file:/, "")}.world.json` };
}
