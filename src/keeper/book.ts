import { type BaseState, deriveBase, type LogbookEvent } from "../logbook/index.js";
import type { AppendResult, Store } from "../store/index.js";

/** The logbook in memory: what is kept is taken into the state before anybody is told. */
export interface Book {
  state(): BaseState | undefined;
  readonly sequence: number;
  record(events: readonly LogbookEvent[]): Promise<AppendResult>;
  /** Takes in what others wrote into the same store. */
  refresh(): Promise<void>;
  /** Called with the events that are new, after the state has them. */
  onKept(listener: (events: readonly LogbookEvent[]) => void): void;
}

const PAGE = 1000;

export async function openBook(store: Pick<Store, "append" | "eventsAfter">): Promise<Book> {
  const events = new Map<string, LogbookEvent>();
  const listeners: ((events: readonly LogbookEvent[]) => void)[] = [];
  let sequence = 0;
  let derived: { readonly state: BaseState | undefined } | undefined;
  let line: Promise<unknown> = Promise.resolve();
  await pull();

  /** One after the other, so that none overtakes another between store and state. */
  function inLine<T>(work: () => Promise<T>): Promise<T> {
    const done = line.then(work, work);
    line = done.catch(() => undefined);
    return done;
  }

  async function pull(): Promise<LogbookEvent[]> {
    const fresh: LogbookEvent[] = [];
    for (;;) {
      const page = await store.eventsAfter(sequence, PAGE);
      for (const stored of page) if (take(stored.event)) fresh.push(stored.event);
      sequence = Math.max(sequence, ...page.map((stored) => stored.sequence));
      if (page.length < PAGE) return fresh;
    }
  }

  function take(event: LogbookEvent): boolean {
    if (events.has(event.id)) return false;
    events.set(event.id, event);
    derived = undefined;
    return true;
  }

  function tell(fresh: readonly LogbookEvent[]): void {
    if (fresh.length > 0) for (const listener of listeners) listener(fresh);
  }

  return {
    state() {
      derived ??= { state: deriveBase(events.values()) };
      return derived.state;
    },
    get sequence() {
      return sequence;
    },
    async record(given) {
      const result = await inLine(() => store.append(given));
      // What another process wrote in between is left for the next look; here nothing may be passed over.
      const { kept } = result;
      const fresh = kept.filter(({ event }) => take(event)).map(({ event }) => event);
      const last = kept.at(-1)?.sequence ?? 0;
      if (last === sequence + kept.length) sequence = last;
      tell(fresh);
      return result;
    },
    async refresh() {
      tell(await inLine(pull));
    },
    onKept(listener) {
      listeners.push(listener);
    },
  };
}
