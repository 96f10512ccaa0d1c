import mqtt, { type IClientOptions, type MqttClient } from "mqtt";
import { errorText, type Log } from "./device.js";

interface Will {
  readonly topic: string;
  readonly payload: string;
  readonly retain: boolean;
}

export interface BrokerOptions {
  /** mqtt://, mqtts://, ws:// or wss:// */
  readonly url: string;
  readonly username?: string;
  readonly password?: string;
  /** The same after a restart: the broker then ends the old connection, and says its last will, at once. */
  readonly clientId: string;
  /** What the broker says when this connection ends without a goodbye. */
  readonly will?: Will;
  /** [s] The broker notices a dead link within one and a half times of it. 15 where left out. */
  readonly keepaliveS?: number;
  readonly onLog?: Log;
}

interface BrokerMessage {
  readonly topic: string;
  readonly payload: string;
  /** Kept by the broker from before the subscription: of unknown age. */
  readonly retained: boolean;
}

/** One connection to a broker that is opened again and again until it is closed. Nothing is queued while it is lost. */
export interface Broker {
  /** With quality of service 1; rejects when the broker does not acknowledge. */
  publish(topic: string, payload: string, options?: { readonly retain?: boolean }): Promise<void>;
  subscribe(topics: readonly string[], hear: (message: BrokerMessage) => void): void;
  /** Calls at once when the link is there already. */
  onLink(hear: (online: boolean) => void): void;
  close(options?: { readonly abrupt?: boolean }): Promise<void>;
}

const KEEPALIVE_S = 15;
const CONNECT_WITHIN_MS = 10_000;
const ACKNOWLEDGE_WITHIN_MS = 5000;
const AGAIN_FIRST_MS = 500;
const AGAIN_LONGEST_MS = 15_000;

export function connectBroker(options: BrokerOptions): Broker {
  return new BrokerLink(options);
}

class BrokerLink implements Broker {
  private client: MqttClient | undefined;
  private online = false;
  private closed = false;
  private attempts = 0;
  private again: NodeJS.Timeout | undefined;
  private readonly hearers = new Map<string, ((message: BrokerMessage) => void)[]>();
  private readonly linkHearers: ((online: boolean) => void)[] = [];
  private readonly waiting = new Set<(error: Error) => void>();

  constructor(private readonly options: BrokerOptions) {
    // After this turn, so that whoever made it can subscribe first.
    queueMicrotask(() => this.open());
  }

  publish(topic: string, payload: string, { retain = false } = {}): Promise<void> {
    const { client } = this;
    if (!this.online || client === undefined) return Promise.reject(new Error("no link to the broker"));
    return new Promise((resolve, reject) => {
      const settle = (error?: Error) => {
        clearTimeout(timer);
        this.waiting.delete(settle);
        if (error === undefined) resolve();
        else reject(error);
      };
      // A broker that does not acknowledge cannot be trusted with the next command either: begin anew.
      const timer = setTimeout(() => {
        settle(new Error(`the broker did not acknowledge within ${ACKNOWLEDGE_WITHIN_MS / 1000} s`));
        this.drop(client, "no acknowledgement");
      }, ACKNOWLEDGE_WITHIN_MS);
      this.waiting.add(settle);
      client.publish(topic, payload, { qos: 1, retain }, (error) => settle(error ?? undefined));
    });
  }

  subscribe(topics: readonly string[], hear: (message: BrokerMessage) => void): void {
    for (const topic of topics) this.hearers.set(topic, [...(this.hearers.get(topic) ?? []), hear]);
    const { client } = this;
    if (this.online && client !== undefined)
      this.ask(client, topics).catch(() => this.drop(client, "not subscribed"));
  }

  onLink(hear: (online: boolean) => void): void {
    this.linkHearers.push(hear);
    if (this.online) hear(true);
  }

  async close({ abrupt = false } = {}): Promise<void> {
    this.closed = true;
    clearTimeout(this.again);
    const { client } = this;
    this.client = undefined;
    this.setOnline(false);
    this.failWaiting("the link was closed");
    // Forced, the connection ends without a goodbye, and the broker says the last will.
    if (client !== undefined) await client.endAsync(abrupt).catch(() => undefined);
  }

  /** A new client for every connection: what an old one still had to send must never be sent late. */
  private open(): void {
    if (this.closed) return;
    const { url, username, password, clientId, will, keepaliveS = KEEPALIVE_S } = this.options;
    const settings: IClientOptions = {
      clientId,
      clean: true,
      protocolVersion: 4,
      keepalive: keepaliveS,
      // Pings go out however much else is sent: what is sent into a frozen link proves nothing.
      reschedulePings: false,
      reconnectPeriod: 0,
      connectTimeout: CONNECT_WITHIN_MS,
      resubscribe: false,
      ...(username === undefined ? {} : { username }),
      ...(password === undefined ? {} : { password }),
      ...(will === undefined ? {} : { will: { ...will, payload: Buffer.from(will.payload), qos: 1 } }),
    };
    const client = mqtt.connect(url, settings);
    this.client = client;
    client.on("connect", () => {
      this.ask(client, [...this.hearers.keys()]).then(
        () => {
          if (client !== this.client) return;
          this.attempts = 0;
          this.setOnline(true);
        },
        (error: unknown) => this.drop(client, errorText(error)),
      );
    });
    client.on("message", (topic, payload, { retain }) => {
      if (client !== this.client) return;
      const message = { topic, payload: payload.toString("utf8"), retained: retain };
      for (const hear of this.hearers.get(topic) ?? []) hear(message);
    });
    client.on("error", (error) => this.options.onLog?.("warning", `broker: ${errorText(error)}`));
    client.on("close", () => this.drop(client, "the connection ended"));
  }

  private async ask(client: MqttClient, topics: readonly string[]): Promise<void> {
    if (topics.length === 0) return;
    const granted = await client.subscribeAsync([...topics], { qos: 1 });
    const refused = granted.filter(({ qos }) => qos === 128).map(({ topic }) => topic);
    if (refused.length > 0) throw new Error(`the broker refuses the subscription to ${refused.join(", ")}`);
  }

  private drop(client: MqttClient, reason: string): void {
    if (client !== this.client) return;
    this.client = undefined;
    client.end(true);
    this.setOnline(false);
    this.failWaiting(reason);
    if (this.closed) return;
    const wait = Math.min(AGAIN_LONGEST_MS, AGAIN_FIRST_MS * 2 ** Math.min(this.attempts++, 10));
    this.options.onLog?.("warning", `broker: ${reason}; connecting again`);
    // Spread, so that hundreds of switches do not all knock at once.
    this.again = setTimeout(() => this.open(), wait * (0.5 + Math.random() / 2));
  }

  private failWaiting(reason: string): void {
    for (const settle of [...this.waiting]) settle(new Error(reason));
  }

  private setOnline(online: boolean): void {
    if (online === this.online) return;
    this.online = online;
    for (const hear of this.linkHearers) hear(online);
  }
}
