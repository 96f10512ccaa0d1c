import "fake-indexeddb/auto";
import { afterEach, beforeEach } from "vitest";
import type { LogbookEvent } from "../../../src/logbook/index.js";

// What the app's state finds around it on a device: storage, a network with a base on it, and a worker, without a browser.

/** A base's server in memory, as the app talks to it. */
export class Base {
  events: LogbookEvent[] = [];
  /** Ids in the order they came, with those that came again. */
  posted: string[] = [];
  isDown = false;
  /** The next answer is lost on the way, though the base has what was sent. */
  losesNext = false;
  status = 200;
  conflicting: string[] = [];
  refused: string[] = [];

  answer(path: string, init?: RequestInit): Response {
    if (path === "server.json") return Response.json({ api: "/api/v1" });
    if (this.isDown) throw new TypeError("fetch failed");
    if (this.status !== 200) return Response.json({ error: { message: "no" } }, { status: this.status });
    if (init?.method === "POST") return this.#take(JSON.parse(String(init.body)).events);
    const after = Number(new URLSearchParams(path.split("?")[1]).get("after"));
    const events = this.events.map((event, i) => ({ sequence: i + 1, received: "", event })).slice(after);
    return Response.json({ events, more: false });
  }

  #take(events: LogbookEvent[]): Response {
    const [kept, known]: [object[], string[]] = [[], []];
    const refused: object[] = [];
    for (const [index, event] of events.entries()) {
      this.posted.push(event.id);
      if (this.conflicting.includes(event.id)) continue;
      if (this.refused.includes(event.id)) {
        refused.push({ index, issues: [{ path: "at", expected: "a time", received: "later" }] });
      } else if (this.events.some(({ id }) => id === event.id)) known.push(event.id);
      else kept.push({ id: event.id, sequence: this.events.push(event) });
    }
    if (this.losesNext) {
      this.losesNext = false;
      throw new TypeError("fetch failed");
    }
    const conflicting = this.conflicting.filter((id) => events.some((event) => event.id === id));
    return Response.json({ kept, known, conflicting, refused });
  }
}

type Task = (ask: never, tell: (part: unknown) => void) => unknown;

/** What the worker is asked, and how it answers: by kind of work. */
export const worker = {
  tasks: {} as Record<string, Task>,
  asked: [] as { readonly kind: string; readonly ask: never }[],
};

class InPageWorker extends EventTarget {
  postMessage({ id, kind, ask }: { id: number; kind: string; ask: never }): void {
    if (kind === "cancel") return;
    worker.asked.push({ kind, ask });
    void this.#work(id, kind, ask);
  }

  async #work(id: number, kind: string, ask: never): Promise<void> {
    const say = (message: object) =>
      this.dispatchEvent(new MessageEvent("message", { data: { id, ...message } }));
    try {
      const answer = await worker.tasks[kind](ask, (part) => say({ is: "part", part }));
      say({ is: "done", answer });
    } catch (error) {
      const { reasons } = error as { reasons?: readonly string[] };
      say(reasons ? { is: "refused", reasons } : { is: "failed", message: (error as Error).message });
    }
  }

  terminate(): void {}
}

class Stream extends EventTarget {
  static readonly CLOSED = 2;
  static last: Stream | undefined;
  readyState = 1;
  constructor() {
    super();
    Stream.last = this;
  }
  close(): void {
    this.readyState = Stream.CLOSED;
  }
}

/** The base says that its logbook grew. */
export function tellNews(): void {
  Stream.last?.dispatchEvent(new Event("logbook"));
}

/** One at a time holds the lock. */
let turn: Promise<void> = Promise.resolve();
const kept = new Map<string, string>();
const around = new EventTarget();
const given = {
  addEventListener: around.addEventListener.bind(around),
  matchMedia: () => Object.assign(new EventTarget(), { matches: false }),
  localStorage: {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
  },
  document: { documentElement: { dataset: {}, lang: "en" } },
  location: { hash: "" },
  navigator: {
    onLine: true,
    languages: ["en"],
    locks: { request: (_: string, work: () => Promise<void>) => (turn = turn.then(work, work)) },
  },
  EventSource: Stream,
  Worker: InPageWorker,
};
for (const [name, value] of Object.entries(given)) {
  Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
}

/** The network comes or goes. */
export function goes(to: "online" | "offline"): void {
  Object.assign(navigator, { onLine: to === "online" });
  around.dispatchEvent(new Event(to));
}

export let base = new Base();
const original = globalThis.fetch;
beforeEach(() => {
  base = new Base();
  worker.tasks = {};
  worker.asked = [];
  globalThis.fetch = async (url, init) => base.answer(String(url), init);
});
afterEach(() => {
  globalThis.fetch = original;
});
