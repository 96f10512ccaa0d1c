import type { Said } from "../../findings/index.js";
import { english } from "../../words/index.js";
import {
  type Answer,
  type Ask,
  type FromWorker,
  LONG_WORK,
  type Part,
  type ToWorker,
  type WorkKind,
} from "./protocol.js";

/** The worker could not do what was asked; the reasons are for the user. */
export class Refusal extends Error {
  override readonly name = "Refusal";
  readonly reasons: readonly Said[];
  constructor(reasons: readonly Said[]) {
    super(reasons.map(english).join("; "));
    this.reasons = reasons;
  }
}

/** Nobody wants the answer any more. */
export class Dropped extends Error {
  override readonly name = "Dropped";
}

export interface AskOptions<K extends WorkKind> {
  /** Ends the question: a later one with the same lane takes its place. */
  readonly lane?: string;
  readonly signal?: AbortSignal;
  readonly onProgress?: (done: number) => void;
  /** Called with what is known before the answer, for kinds that answer in parts. */
  readonly onPart?: (part: Part<K>) => void;
}

interface Pending {
  readonly ofWorker: WorkerName;
  readonly lane: string | undefined;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (reason: Error) => void;
  readonly onProgress: ((done: number) => void) | undefined;
  readonly onPart: ((part: unknown) => void) | undefined;
}

/** "prompt" answers what somebody waits for, in pieces; "long" takes what calculates for seconds and is ended to stop it. */
type WorkerName = "prompt" | "long";

/** Asks the planning workers; each is made at its first question, so that the first view does not wait for it. */
export class Planner {
  readonly #workers = new Map<WorkerName, Worker>();
  #count = 0;
  readonly #pending = new Map<number, Pending>();
  readonly #lanes = new Map<string, number>();

  ask<K extends WorkKind>(kind: K, ask: Ask<K>, options: AskOptions<K> = {}): Promise<Answer<K>> {
    const { lane, signal, onProgress, onPart } = options;
    if (signal?.aborted) return Promise.reject(new Dropped());
    const id = ++this.#count;
    if (lane !== undefined) {
      const before = this.#lanes.get(lane);
      if (before !== undefined) this.#drop(before);
      this.#lanes.set(lane, id);
    }
    const ofWorker: WorkerName = LONG_WORK.has(kind) ? "long" : "prompt";
    return new Promise<Answer<K>>((resolve, reject) => {
      this.#pending.set(id, {
        ...{ ofWorker, lane, reject, onProgress },
        onPart: onPart as Pending["onPart"],
        resolve: (a) => resolve(a as Answer<K>),
      });
      signal?.addEventListener("abort", () => this.#drop(id), { once: true });
      this.#send(ofWorker, { id, kind, ask });
    });
  }

  #send(name: WorkerName, message: ToWorker): void {
    let worker = this.#workers.get(name);
    if (worker === undefined) {
      worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
      worker.addEventListener("message", ({ data }: MessageEvent<FromWorker>) => this.#heard(data));
      worker.addEventListener("error", (event) => this.#broke(name, event.message));
      this.#workers.set(name, worker);
    }
    worker.postMessage(message);
  }

  #drop(id: number): void {
    const pending = this.#taken(id);
    if (pending === undefined) return;
    const others = [...this.#pending.values()].filter(({ ofWorker }) => ofWorker === "long");
    if (pending.ofWorker === "long" && others.length === 0) {
      // It does not listen while it calculates.
      this.#workers.get("long")?.terminate();
      this.#workers.delete("long");
    } else this.#send(pending.ofWorker, { id, kind: "cancel" });
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
    if (message.is === "part") {
      this.#pending.get(message.id)?.onPart?.(message.part);
      return;
    }
    const pending = this.#taken(message.id);
    if (message.is === "done") pending?.resolve(message.answer);
    if (message.is === "refused") pending?.reject(new Refusal(message.reasons));
    if (message.is === "failed") pending?.reject(new Error(message.message));
  }

  /** A worker itself broke, for want of memory perhaps: all it was asked fails, the next question starts it anew. */
  #broke(name: WorkerName, message: string): void {
    this.#workers.get(name)?.terminate();
    this.#workers.delete(name);
    for (const [id, { ofWorker }] of [...this.#pending]) {
      if (ofWorker === name) this.#taken(id)?.reject(new Error(message || "the planning worker stopped"));
    }
  }
}
