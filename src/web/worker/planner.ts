import type { Answer, Ask, FromWorker, ToWorker, WorkKind } from "./protocol.js";

/** The worker could not do what was asked; the reasons are for the user. */
export class Refusal extends Error {
  override readonly name = "Refusal";
  readonly reasons: readonly string[];
  constructor(reasons: readonly string[]) {
    super(reasons.join("; "));
    this.reasons = reasons;
  }
}

/** Nobody wants the answer any more. */
export class Dropped extends Error {
  override readonly name = "Dropped";
}

export interface AskOptions {
  /** Ends the question: a later one with the same lane takes its place. */
  readonly lane?: string;
  readonly signal?: AbortSignal;
  readonly onProgress?: (done: number) => void;
}

interface Pending {
  readonly kind: WorkKind;
  readonly lane: string | undefined;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (reason: Error) => void;
  readonly onProgress: ((done: number) => void) | undefined;
}

/** Asks the planning worker; made at the first question, so that the first view does not wait for it. */
export class Planner {
  #worker: Worker | undefined;
  #count = 0;
  readonly #pending = new Map<number, Pending>();
  readonly #lanes = new Map<string, number>();

  ask<K extends WorkKind>(kind: K, ask: Ask<K>, options: AskOptions = {}): Promise<Answer<K>> {
    const { lane, signal, onProgress } = options;
    if (signal?.aborted) return Promise.reject(new Dropped());
    const id = ++this.#count;
    if (lane !== undefined) {
      const before = this.#lanes.get(lane);
      if (before !== undefined) this.#drop(before);
      this.#lanes.set(lane, id);
    }
    return new Promise<Answer<K>>((resolve, reject) => {
      this.#pending.set(id, { kind, lane, reject, onProgress, resolve: (a) => resolve(a as Answer<K>) });
      signal?.addEventListener("abort", () => this.#drop(id), { once: true });
      this.#send({ id, kind, ask });
    });
  }

  #send(message: ToWorker): void {
    if (this.#worker === undefined) {
      this.#worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
      this.#worker.addEventListener("message", ({ data }: MessageEvent<FromWorker>) => this.#heard(data));
      this.#worker.addEventListener("error", (event) => this.#broke(event.message));
    }
    this.#worker.postMessage(message);
  }

  #drop(id: number): void {
    const pending = this.#taken(id);
    if (pending === undefined) return;
    this.#send({ id, kind: "cancel" });
    pending.reject(new Dropped());
  }

  #taken(id: number): Pending | undefined {
    const pending = this.#pending.get(id);
    this.#pending.delete(id);
    if (pending?.lane !== undefined && this.#lanes.get(pending.lane) === id) this.#lanes.delete(pending.lane);
    return pending;
  }

  #heard(message: FromWorker): void {
    if (message.is === "progress") {
      this.#pending.get(message.id)?.onProgress?.(message.done);
      return;
    }
    const pending = this.#taken(message.id);
    if (message.is === "done") pending?.resolve(message.answer);
    if (message.is === "refused") pending?.reject(new Refusal(message.reasons));
    if (message.is === "failed") pending?.reject(new Error(message.message));
  }

  /** The worker itself broke, for want of memory perhaps: everything asked fails, the next question starts it anew. */
  #broke(message: string): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    for (const id of [...this.#pending.keys()]) {
      this.#taken(id)?.reject(new Error(message || "the planning worker stopped"));
    }
  }
}
