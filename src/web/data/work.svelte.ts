import type { Said } from "../../findings/index.js";
import { Dropped, Refusal } from "../worker/planner.js";

/** What long work is given: how to stop it, and whom to tell how far it is. */
export interface WorkOptions {
  readonly signal: AbortSignal;
  readonly onProgress: (done: number) => void;
}

/** Why something could not be done, for the user. */
export function reasonsOf(error: unknown): readonly Said[] {
  if (error instanceof Refusal) return error.reasons;
  return [error instanceof Error ? error.message : String(error)];
}

/** Work that somebody waits for and may stop: how far it is, what came of it, or why nothing did. */
export class Work<T> {
  /** Share done; undefined while nothing is worked on. */
  share = $state<number>();
  answer = $state.raw<T>();
  reasons = $state.raw<readonly Said[]>([]);
  #stop: AbortController | undefined;
  readonly #keepsAnswer: boolean;

  /** @param keepsAnswer an answer before stays beside the reasons why there is no newer one */
  constructor(keepsAnswer = false) {
    this.#keepsAnswer = keepsAnswer;
  }

  /** Takes the place of what is worked on. @returns whether an answer came of it */
  async run(work: (options: WorkOptions) => Promise<T>): Promise<boolean> {
    this.stop();
    const mine = new AbortController();
    this.#stop = mine;
    this.share = 0;
    const onProgress = (done: number) => {
      if (this.#stop === mine) this.share = done;
    };
    try {
      const answer = await work({ signal: mine.signal, onProgress });
      if (mine.signal.aborted) return false;
      this.answer = answer;
      this.reasons = [];
      return true;
    } catch (error) {
      if (!(error instanceof Dropped)) {
        if (!this.#keepsAnswer) this.answer = undefined;
        this.reasons = reasonsOf(error);
      }
      return false;
    } finally {
      if (this.#stop === mine) this.share = undefined;
    }
  }

  stop(): void {
    this.#stop?.abort();
  }

  /** Stops, and knows nothing any more. */
  forget(): void {
    this.stop();
    this.answer = undefined;
    this.reasons = [];
  }
}
