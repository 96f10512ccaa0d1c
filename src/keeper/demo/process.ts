import { readFileSync } from "node:fs";
import mqtt from "mqtt";
import { demoOpening, standingAt } from "../../base/index.js";
import { type BaseProbe, deriveBase } from "../../logbook/index.js";
import { writeTextFile } from "../../node/index.js";
import { type MadeLead, makeLead } from "./lead.js";
import type { DemoNews, DemoSettings } from "./start.js";
import { type Doing, type MadeAircraft, makeAircraft, type Resumed } from "./world.js";

// The invented aircraft, in a process of their own: they publish what their probes say, and their leads do as they are
// told over MQTT. When the base's process dies they are still there to show that the heaters go off.

const settings = JSON.parse(process.argv[2]) as DemoSettings;
const { url, seed, opened, speed, worldFile, from } = settings;
const began = performance.now();
/** [ms] since 1970 UTC, in the made world. */
const clock = () => from + (performance.now() - began) * speed;
/** [ms] between what a probe says, in the made world, and never more often than this in the real one. */
const EVERY = 10_000;
const LEAST_REAL = 250;

const { events } = demoOpening(opened, seed);
const opening = deriveBase(events);
if (opening === undefined) throw new Error("the demo has no set-up");

interface World {
  readonly [aircraft: string]: Resumed;
}
const resumed = readWorld();
const made = new Map<string, MadeAircraft>();
const doings = new Map<string, Doing>();
const leads = new Map<string, { readonly lead: MadeLead; readonly heaters: readonly string[] }[]>();
const said = new Map<string, "on" | "off">();
const commands = new Map<string, { readonly on: string; readonly lead: MadeLead }>();

const client = mqtt.connect(url, {
  protocolVersion: 4,
  clientId: `made-aircraft-${process.pid}`,
  reconnectPeriod: 500,
  connectTimeout: 3000,
  keepalive: 5,
  // States are said anew after a reconnection; old ones must not come late.
  queueQoSZero: false,
});

for (const [id, aircraft] of opening.aircraft) {
  const known = resumed[id];
  made.set(
    id,
    makeAircraft(opening, id, { now: opened, seed, ...(known === undefined ? {} : { resumed: known }) }),
  );
  doings.set(id, standingAt(aircraft, opened));
  leads.set(
    id,
    aircraft.setUp.switches.flatMap(({ via, heaters, on_time_s }) => {
      if (via.kind !== "mqtt") return [];
      const lead = makeLead({
        onTime: on_time_s === undefined ? undefined : (on_time_s * 1000) / speed,
        onState: (is, why) => {
          // A renewed on-time is no news.
          if (is !== said.get(id)) say(`${id}: heater ${is}, ${why}`);
          said.set(id, is);
          client.publish(via.hear.topic, via.hear[is], { qos: 1, retain: true });
        },
      });
      commands.set(via.say.topic, { on: via.say.on, lead });
      return [{ lead, heaters }];
    }),
  );
}

client.on("connect", () => {
  client.subscribe([...commands.keys()], { qos: 1 });
  for (const { lead } of commands.values()) if (!lead.isOn) lead.command("off");
});
client.on("message", (topic, payload) => {
  const command = commands.get(topic);
  command?.lead.command(payload.toString() === command.on ? "on" : "off");
});
client.on("close", () => {
  for (const { lead } of commands.values()) lead.lost();
});
client.on("error", () => undefined);

const timer = setInterval(tick, Math.max(LEAST_REAL, EVERY / speed));
let savedAt = 0;
tick();

function tick(): void {
  const now = clock();
  for (const [id, one] of made) {
    const doing = doings.get(id);
    const own = leads.get(id) ?? [];
    if (doing === undefined) continue;
    const fed = own.flatMap(({ heaters }) => heaters);
    const on = own.flatMap(({ lead, heaters }) => (lead.isOn ? heaters : []));
    one.advance(now, { ...doing, heatersOn: [...doing.heatersOn.filter((h) => !fed.includes(h)), ...on] });
    for (const probe of opening?.aircraft.get(id)?.setUp.probes ?? []) publish(probe, one, now);
  }
  const [first] = made.values();
  for (const probe of opening?.setUp.probes ?? []) publish(probe, first, now);
  if (worldFile !== undefined && performance.now() - savedAt > 10_000) saveWorld(worldFile);
}

function publish({ at, id, via }: BaseProbe, one: MadeAircraft, now: number): void {
  if (via?.kind !== "mqtt" || !client.connected) return;
  const temp = Math.round(one.probed(at, id) * 100) / 100;
  client.publish(via.topic, JSON.stringify({ temp_c: temp, time: new Date(now).toISOString() }), { qos: 0 });
}

function saveWorld(file: string): void {
  savedAt = performance.now();
  const world = Object.fromEntries([...made].map(([id, { time, temps }]) => [id, { time, temps }]));
  writeTextFile(file, JSON.stringify(world));
}

function readWorld(): World {
  if (worldFile === undefined) return {};
  try {
    return JSON.parse(readFileSync(worldFile, "utf8")) as World;
  } catch {
    return {};
  }
}

function say(text: string): void {
  if (settings.talks) process.stdout.write(`${text}\n`);
}

process.on("message", (news: DemoNews) => {
  for (const [id, doing] of Object.entries(news.standing)) if (doings.has(id)) doings.set(id, doing);
});
// The base's process is gone, in whatever way: a real lead would live on, so wait for it to go off before leaving.
process.on("disconnect", () => {
  const leave = () => {
    if ([...commands.values()].some(({ lead }) => lead.isOn)) return;
    clearInterval(waiting);
    clearInterval(timer);
    if (worldFile !== undefined) saveWorld(worldFile);
    client.end(true);
  };
  const waiting = setInterval(leave, 100);
});
// Ctrl-C in a terminal reaches the whole group; the base ends this process when its heaters are off.
process.on("SIGINT", () => undefined);
