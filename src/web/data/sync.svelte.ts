import { type Db, keepFromServer, note, saveNote, sent, waitingOf } from "./db.js";
import { eventsAfter, sendEvents, serverAddress } from "./server.js";

/** [ms] until the next attempt after a failed one; doubled up to the longest. */
const FIRST_WAIT = 2000;
const LONGEST_WAIT = 120_000;

/**
 * Brings this device's logbook and the server's together. Sending twice is harmless: events are known by their ids. Of
 * several tabs only one at a time talks to the server.
 */
export class Sync {
  isOnline = $state(navigator.onLine);
  /** "none": this page comes from no server of the base, everything stays on the device. */
  server = $state<"none" | "asking" | "joined" | "unreachable" | "signed-out">("none");
  /** This book has a server, whether it can be reached now or not. */
  hasServer = $state(false);
  /** Events that the server has not confirmed. */
  waiting = $state(0);
  /** Events that the server has with other content under the same id: kept here, never sent again. */
  conflicts = $state<readonly string[]>([]);
  /** What the server refused to take, in words: kept here, never sent again. */
  refusals = $state.raw<readonly string[]>([]);
  /** When the server last answered. */
  lastHeard = $state<number>();

  #db: Db | undefined;
  #api: string | null = null;
  #onNews: () => void = () => {};
  #wait = FIRST_WAIT;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #stream: EventSource | undefined;

  constructor() {
    addEventListener("online", () => {
      this.isOnline = true;
      this.#wait = FIRST_WAIT;
      void this.send();
    });
    addEventListener("offline", () => {
      this.isOnline = false;
    });
  }

  start(db: Db, onNews: () => void): void {
    this.#db = db;
    this.#onNews = onNews;
    void note<boolean>(db, "has-server").then((known) => {
      this.hasServer = known === true;
    });
    void this.send();
  }

  stop(): void {
    clearTimeout(this.#timer);
    this.#stream?.close();
    this.#stream = undefined;
    this.#db = undefined;
    this.server = "none";
    this.hasServer = false;
    this.waiting = 0;
  }

  /** Where the server of this page is; null where there is none. */
  async address(): Promise<string | null> {
    this.#api ??= await serverAddress();
    return this.#api;
  }

  /** Sends what waits and fetches what is new, should there be a server to be reached. */
  async send(): Promise<void> {
    const db = this.#db;
    if (db === undefined) return;
    this.waiting = await db.count("outbox");
    if (!this.isOnline) return;
    if ((await this.address()) === null) return;
    if (this.server === "none") this.server = "asking";
    await navigator.locks.request("soakline-sync", () => this.#exchange(db, this.#api ?? ""));
    this.waiting = await db.count("outbox");
  }

  async #exchange(db: Db, api: string): Promise<void> {
    for (;;) {
      const batch = await waitingOf(db);
      if (batch.length === 0) break;
      const answer = await sendEvents(
        api,
        batch.map(({ event }) => event),
      );
      if (!answer.ok) return this.#failed(answer.why);
      const { kept, known, conflicting, refused } = answer.value;
      const done = new Set([...kept.map(({ id }) => id), ...known, ...conflicting]);
      for (const { index } of refused) if (batch[index] !== undefined) done.add(batch[index].event.id);
      const keys = batch.filter(({ event }) => done.has(event.id)).map(({ key }) => key);
      await sent(db, keys);
      if (conflicting.length > 0) this.conflicts = [...this.conflicts, ...conflicting];
      const said = refused.flatMap(({ issues }) =>
        issues.map(({ path, expected, received }) => `${path}: expected ${expected}, received ${received}`),
      );
      if (said.length > 0) this.refusals = [...this.refusals, ...said];
      // A server that says nothing of an event must not be asked without end.
      if (keys.length === 0) return this.#failed("unreachable");
    }
    let fresh = 0;
    for (let more = true; more; ) {
      const sequence = (await note<number>(db, "sequence")) ?? 0;
      const answer = await eventsAfter(api, sequence);
      if (!answer.ok) return this.#failed(answer.why);
      fresh += await keepFromServer(db, answer.value.events);
      more = answer.value.more && answer.value.events.length > 0;
    }
    this.server = "joined";
    if (!this.hasServer) await saveNote(db, "has-server", true);
    this.hasServer = true;
    this.lastHeard = Date.now();
    this.#wait = FIRST_WAIT;
    this.#follow(api);
    if (fresh > 0) this.#onNews();
  }

  #failed(why: "unreachable" | "signed-out" | "refused"): void {
    this.server = why === "signed-out" ? "signed-out" : "unreachable";
    clearTimeout(this.#timer);
    if (why === "signed-out") return;
    this.#timer = setTimeout(() => void this.send(), this.#wait);
    this.#wait = Math.min(LONGEST_WAIT, 2 * this.#wait);
  }

  /** Hears of changes as they happen. */
  #follow(api: string): void {
    if (this.#stream !== undefined) return;
    const stream = new EventSource(`${api}/changes`);
    this.#stream = stream;
    stream.addEventListener("logbook", () => void this.send());
    stream.addEventListener("error", () => {
      if (stream.readyState === EventSource.CLOSED) this.#stream = undefined;
      if (this.isOnline) this.#failed("unreachable");
    });
  }
}
