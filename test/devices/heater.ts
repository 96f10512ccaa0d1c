import mqtt, { type MqttClient } from "mqtt";
import type { HeaterSwitch } from "../../src/logbook/index.js";
import { createRandom } from "../../src/numerics/index.js";
import { pause } from "./waiting.js";

const random = createRandom(20_261_130);

/** [ms since the process began] when it went on or off. */
export interface Change {
  readonly at: number;
  readonly on: boolean;
}

export const padSwitch: HeaterSwitch = {
  id: "pad",
  name: "sump pad",
  heaters: ["sump-pad-220"],
  longest_on_min: 60,
  rest_min: 1,
  confirm_within_s: 5,
  via: {
    kind: "mqtt",
    say: { topic: "lynx/pad/set", on: "ON", off: "OFF" },
    hear: { topic: "lynx/pad/state", pointer: "/relay", on: "on", off: "off" },
    ask: { topic: "lynx/pad/ask", payload: "" },
  },
};

/** A switch with a heater behind it, with a real MQTT client: says its state after every command and when asked. */
export class Heater {
  on = false;
  readonly changes: Change[] = [];
  readonly commands: string[] = [];
  /** Does as it is told, but does not say so. */
  mute = false;
  /** Every message is said twice, and late by up to so many milliseconds, so that they overtake each other. */
  jitterMs = 0;
  private client: MqttClient | undefined;
  private timer: NodeJS.Timeout | undefined;

  constructor(
    private readonly port: number,
    private readonly retain = false,
  ) {}

  async start(): Promise<void> {
    this.client = await mqtt.connectAsync(`mqtt://127.0.0.1:${this.port}`, {
      protocolVersion: 4,
      clean: true,
      reconnectPeriod: 100,
    });
    this.client.on("message", (topic, payload) => this.hear(topic, payload.toString()));
    this.client.on("error", () => undefined);
    await this.client.subscribeAsync(["lynx/pad/set", "lynx/pad/ask"], { qos: 1 });
  }

  /** A hand at the device. */
  press(on: boolean): void {
    this.set(on);
    void this.say();
  }

  async stop(): Promise<void> {
    clearTimeout(this.timer);
    await this.client?.endAsync(true);
  }

  private hear(topic: string, payload: string): void {
    if (topic === "lynx/pad/set") {
      this.commands.push(payload);
      const [word, seconds] = payload.split(" ");
      clearTimeout(this.timer);
      this.set(word === "ON");
      if (word === "ON" && seconds !== undefined) {
        this.timer = setTimeout(() => {
          this.set(false);
          void this.say();
        }, Number(seconds) * 1000);
      }
    }
    void this.say();
  }

  private set(on: boolean): void {
    if (on !== this.on) this.changes.push({ at: performance.now(), on });
    this.on = on;
  }

  private async say(): Promise<void> {
    if (this.mute) return;
    const text = JSON.stringify({ relay: this.on ? "on" : "off" });
    const once = async () => {
      if (this.jitterMs > 0) await pause(random.uniform() * this.jitterMs);
      await this.client
        ?.publishAsync("lynx/pad/state", text, { qos: 1, retain: this.retain })
        .catch(() => undefined);
    };
    await Promise.all(this.jitterMs > 0 ? [once(), once()] : [once()]);
  }
}

/** [ms] The longest time it was on without a break, up to now. */
export function longestOnMs(changes: readonly Change[], now = performance.now()): number {
  let longest = 0;
  changes.forEach(({ at, on }, i) => {
    if (on) longest = Math.max(longest, (changes[i + 1]?.at ?? now) - at);
  });
  return longest;
}
