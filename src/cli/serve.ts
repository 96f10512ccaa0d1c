import { type Command, InvalidArgumentError, Option } from "commander";
import { BadInput } from "./exit.js";
import { FLAG } from "./flags.js";
import type { ServeFlags } from "./serve-base.js";
import type { Shell } from "./shell.js";
import { dataOption, USUAL_DATA } from "./store-flags.js";

const DEMO_DATA = "./soakline-data/demo.sqlite";

export function addServe(program: Command, shell: Shell): void {
  program
    .command("serve")
    .description("Run a base: read its probes, plan, switch its heaters, serve the web app")
    .addOption(dataOption())
    .option("--host <address>", "address to listen on", "127.0.0.1")
    .option("--port <n>", "port to listen on, 0 for any free one", portOf, 8420)
    .option(
      "--broker <url>",
      "MQTT broker, such as mqtt://192.168.1.5; without it, one runs inside, for this computer only",
    )
    .option("--demo", "run the invented base, with simulated aircraft on the broker")
    .option("--name <name>", "another host name of this base, such as base.lan; may be repeated", added)
    .option("--https", "browsers reach it over TLS, through a proxy")
    .option("--proxy <address>", "address of a trusted proxy; may be repeated", added)
    .addOption(FLAG.units())
    .addOption(FLAG.wind())
    .addOption(
      new Option("--log <level>", "log level, on standard error")
        .choices(["none", "debug", "info", "warn", "error"])
        .default("warn"),
    )
    .addOption(
      new Option("--speed <n>", "with --demo: run its clock this many times faster")
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
      // Only who serves waits for what serving needs.
      const { serve } = await import("./serve-base.js");
      await serve(data, flags, shell);
    });
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
