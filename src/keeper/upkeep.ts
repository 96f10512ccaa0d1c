import type { Store } from "../store/index.js";
import type { Book } from "./book.js";
import type { BaseClock } from "./clocks.js";

/** [ms] by the base's clock. */
const ROLL_UP = 60_000;
const TIDY = 3_600_000;
const DAY = 24 * TIDY;
/** [ms] real time for messages between two pieces of rolling up: a message takes several turns of the loop on its way. */
const ROLL_UP_PAUSE = 20;
/** [ms] raw readings are kept, and means by the minute; longer ones stay. Project judgement: a winter of minutes. */
const KEEP_RAW = 30 * DAY;
const KEEP_MINUTES = 240 * DAY;

/** Rolls readings up and drops what is old, again and again until the functions returned are called. */
export function rollUpAndTidy(
  store: Store,
  book: Book,
  clock: BaseClock,
  onTrouble: (error: unknown) => void,
): (() => void)[] {
  const rollUp = async () => {
    await store.rollUp(ROLL_UP_PAUSE);
    await book.refresh();
  };
  const tidy = async () => {
    const now = clock.now();
    await store.removeExpiredSessions(now);
    await store.dropRawBefore(now - KEEP_RAW);
    await store.dropMinutesBefore(now - KEEP_MINUTES);
  };
  return [clock.every(ROLL_UP, rollUp, onTrouble), clock.every(TIDY, tidy, onTrouble)];
}
