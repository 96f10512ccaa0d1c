/** Work in pieces; what it yields says whether what is left may wait for other questions. */
export type Pieces<T> = Generator<"waits" | undefined, T, undefined>;

export interface Job {
  readonly id: number;
  readonly pieces: Pieces<unknown>;
  /** Answered in milliseconds and of itself: it goes before whatever else is left to do. */
  readonly isQuick?: boolean;
  done(answer: unknown): void;
  failed(error: unknown): void;
}

/**
 * Works off jobs piece by piece, in the order they came; quick ones before the others, those whose rest may wait after
 * them, the newest first: it is what is being looked at. Between two pieces new questions and cancellations are let in,
 * so that the newest question waits for one piece at most.
 */
export class Jobs {
  readonly #turn: (go: () => void) => void;
  readonly #prompt: Job[] = [];
  readonly #waiting: Job[] = [];
  #isRunning = false;

  /** @param turn calls back after what else has come in was taken in */
  constructor(turn: (go: () => void) => void) {
    this.#turn = turn;
  }

  add(job: Job): void {
    if (job.isQuick) this.#prompt.unshift(job);
    else this.#prompt.push(job);
    if (this.#isRunning) return;
    this.#isRunning = true;
    this.#turn(() => this.#piece());
  }

  /** Stops a job wherever it is; nothing more is heard of it. */
  cancel(id: number): void {
    for (const list of [this.#prompt, this.#waiting]) {
      const at = list.findIndex((job) => job.id === id);
      if (at < 0) continue;
      const [job] = list.splice(at, 1);
      job.pieces.return(undefined);
    }
  }

  #piece(): void {
    const list = this.#prompt.length > 0 ? this.#prompt : this.#waiting;
    const [job] = list;
    if (job !== undefined) this.#go(job, list);
    this.#isRunning = this.#prompt.length + this.#waiting.length > 0;
    if (this.#isRunning) this.#turn(() => this.#piece());
  }

  #go(job: Job, list: Job[]): void {
    try {
      const { done, value } = job.pieces.next();
      if (!done) {
        if (value === "waits" && list === this.#prompt)
          this.#waiting.unshift(...list.splice(list.indexOf(job), 1));
        return;
      }
      list.splice(list.indexOf(job), 1);
      job.done(value);
    } catch (error) {
      list.splice(list.indexOf(job), 1);
      job.failed(error);
    }
  }
}
