// How long a reading takes from being published over MQTT until it is committed, and whether any is lost.
// 500 aircraft with 8 probes each, a reading every 10 s. Run on the built project:
//   npm run build && node benchmarks/keeper-load.mjs [SECONDS] [AIRCRAFT] [STORE] [BROKER]
// 600 s where left out; STORE is a folder or postgres://…, a new folder of the system's where left out; BROKER is an
// mqtt:// address, the broker inside the keeper where left out. The publisher runs in a process of its own.
import { fork } from "node:child_process";
import { randomUUID } from "node:crypto";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import mqtt from "mqtt";
import { createPlanner, startKeeper } from "../dist/keeper/index.js";
import { openStore } from "../dist/store/index.js";

const PROBES = ["sump", "oil", "crankcase", "crankshaft", "cylinders", "heads", "battery", "cowl_air"];
const EVERY = 10_000;
const GOAL = 0.05;

if (process.argv[2] === "publish") await publish(JSON.parse(process.argv[3]));
else await measure();

async function measure() {
  const seconds = Number(process.argv[2] ?? 600);
  const count = Number(process.argv[3] ?? 500);
  const given = process.argv[4];
  const brokerUrl = process.argv[5];
  const folder = given === undefined ? mkdtempSync(join(tmpdir(), "soakline-load-")) : given;
  const url = /^postgres/.test(folder) ? folder : join(folder, `load-${process.pid}.sqlite`);
  const store = await openStore(url, { base: `load-${randomUUID()}` });
  const ids = Array.from({ length: count }, (_, i) => `a${i}`);
  const common = () => ({ id: randomUUID(), at: new Date().toISOString() });
  // With weather the keeper also estimates every aircraft once a minute, as it does in earnest.
  await store.append([
    { ...common(), kind: "set-up", base: setUp(ids) },
    { ...common(), kind: "forecast", origin: "invented", weather: weather() },
  ]);
  /** [s] from the time written into the message by the publisher until the commit returned. */
  const waits = [];
  let kept = 0;
  let known = 0;
  const timed = {
    ...store,
    async appendReadings(rows) {
      const result = await store.appendReadings(rows);
      const now = Date.now();
      for (const { time } of rows) waits.push((now - time) / 1000);
      kept += result.kept;
      known += result.known;
      return result;
    },
  };
  const keeper = await startKeeper({
    store: timed,
    planner: createPlanner(),
    http: { host: "127.0.0.1", port: 0 },
    ...(brokerUrl === undefined ? {} : { brokerUrl }),
    log: { level: "warn", stream: process.stderr },
  });
  // What is published before the keeper listens would be nobody's loss.
  while (!keeper.live.health().ready) await new Promise((done) => setTimeout(done, 100));
  const child = fork(new URL(import.meta.url), [
    "publish",
    JSON.stringify({ url: keeper.brokerUrl, ids, seconds }),
  ]);
  const began = performance.now();
  const cpu = process.cpuUsage();
  const [{ published }] = await once(child, "message");
  // What was published last has still to arrive.
  for (let k = 0; k < 100 && kept + known < published; k++)
    await new Promise((done) => setTimeout(done, 100));
  const lasted = (performance.now() - began) / 1000;
  const { user, system } = process.cpuUsage(cpu);
  const inStore = await counted(store, ids);
  await keeper.close();
  waits.sort((a, b) => a - b);
  const at = (share) =>
    `${(1000 * waits[Math.min(waits.length - 1, Math.floor(share * waits.length))]).toFixed(1)} ms`;
  console.log(
    `${count} aircraft x ${PROBES.length} probes, a reading every ${EVERY / 1000} s, ${lasted.toFixed(0)} s`,
  );
  console.log(
    `published ${published}, committed ${kept}, in the store ${inStore}, lost ${published - inStore}`,
  );
  console.log(
    `published to committed: p50 ${at(0.5)}, p90 ${at(0.9)}, p99 ${at(0.99)}, p99.9 ${at(0.999)}, worst ${at(1)}`,
  );
  console.log(`keeper's processor time ${(((user + system) / 1e6 / lasted) * 100).toFixed(0)} % of one core`);
  if (given === undefined) rmSync(folder, { recursive: true, force: true });
  const p99 = waits[Math.floor(0.99 * waits.length)];
  const good = published === inStore && p99 < GOAL;
  console.log(
    good ? "goal met: p99 under 50 ms, nothing lost" : "GOAL MISSED: p99 under 50 ms, nothing lost",
  );
  process.exit(good ? 0 : 1);
}

async function counted(store, ids) {
  let sum = 0;
  for (const aircraft of ids) {
    for (let from = 0; ; ) {
      const page = await store.readings({
        aircraft,
        from,
        to: Number.MAX_SAFE_INTEGER,
        resolution: "raw",
        limit: 10_000,
      });
      if (page.length < 10_000) {
        sum += page.length;
        break;
      }
      // The last time of a page may be cut in two: it is counted with the next.
      const last = page.at(-1).time;
      sum += page.filter(({ time }) => time < last).length;
      from = last;
    }
  }
  return sum;
}

/** Readings evenly through every ten seconds, as so many devices of their own would send them. */
async function publish({ url, ids, seconds }) {
  const client = await mqtt.connectAsync(url, { protocolVersion: 4 });
  const messages = ids.flatMap((id) => PROBES.map((probe) => `load/${id}/${probe}`));
  const rounds = Math.floor((seconds * 1000) / EVERY);
  const pause = EVERY / messages.length;
  const began = performance.now();
  const waiting = new Set();
  let published = 0;
  for (let n = 0; n < rounds * messages.length; ) {
    const due = Math.floor((performance.now() - began) / pause);
    for (; n <= due && n < rounds * messages.length; n++) {
      const topic = messages[(n * 7919) % messages.length];
      const temp = -20 + 5 * Math.sin(n / 1e4) + (n % 13) / 100;
      const done = client
        .publishAsync(topic, JSON.stringify({ temp_c: temp, time: Date.now() / 1000 }), { qos: 1 })
        .then(() => {
          published++;
          waiting.delete(done);
        });
      waiting.add(done);
    }
    await new Promise((resolve) => setTimeout(resolve, 2));
  }
  await Promise.all(waiting);
  process.send({ published });
  await client.endAsync();
  process.disconnect();
}

function weather() {
  const point = (at_h) => ({ at_h, air_c: -20, wind_mps: 3, dew_point_c: -23, cloud_fraction: 0.3 });
  return { points: Array.from({ length: 49 }, (_, at_h) => point(at_h)) };
}

function setUp(ids) {
  return {
    soakline_base: 2,
    name: "Load",
    notice: "invented, for measuring",
    zone: "UTC",
    circuits: [],
    aircraft: ids.map((id) => ({
      id,
      name: id,
      engine: "four-carburettor-160",
      kit: { heaters: ["sump-pad-220"], covers: [] },
      known: { at: new Date().toISOString(), place: "ramp", covers_on: [], initial: { all_c: -18 } },
      probes: PROBES.map((at) => ({
        id: at.replaceAll("_", "-"),
        name: at,
        at,
        topic: `load/${id}/${at}`,
        pointer: "/temp_c",
        time_pointer: "/time",
        unit: "c",
      })),
      switches: [],
    })),
    probes: [],
  };
}
