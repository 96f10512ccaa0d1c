import { type Finding, finding } from "../findings/index.js";
import type { Store } from "../store/index.js";
import type { Book } from "./book.js";
import { createFacts, type Facts } from "./facts.js";
import type { KeeperLog } from "./log.js";

/** Whether the store can be written: where it cannot, heaters go off until it can again. */
export interface StoreWatch {
  /** The keeper's own events, which wait while nothing can be written. */
  readonly facts: Facts;
  /** Something could not be written. */
  failed(error: unknown): void;
  /** Tries to write, and what waits first. */
  lookOver(): Promise<void>;
  troubles(): readonly Finding[];
}

export function createStoreWatch({
  store,
  book,
  log,
  onFailed,
}: {
  readonly store: Pick<Store, "check">;
  readonly book: Pick<Book, "record">;
  readonly log: KeeperLog["write"];
  readonly onFailed: () => void;
}): StoreWatch {
  let writable = true;
  const facts = createFacts((events) => book.record(events), failed);

  function failed(error: unknown): void {
    if (writable) log("error", "the store cannot be written: heaters go off", { error: String(error) });
    writable = false;
    onFailed();
  }

  return {
    facts,
    failed,
    async lookOver() {
      try {
        await store.check();
      } catch (error) {
        return failed(error);
      }
      if (!(await facts.flush())) return;
      if (!writable) log("info", "the store can be written again");
      writable = true;
    },
    troubles: () => (writable ? [] : [finding("store-not-writable", {})]),
  };
}
