import { randomUUID } from "node:crypto";
import { demoOpening, isoOf } from "../../base/index.js";
import { DEMO_SEED } from "../../documents/index.js";
import type { LogbookEvent } from "../../logbook/index.js";
import type { Store } from "../../store/index.js";
import type { Book } from "../book.js";

/** The demo's night that a store holds. */
export interface OpenedDemo {
  readonly seed: number;
  /** [ms] since 1970 UTC */
  readonly opened: number;
  /** Whether it was begun just now; else it goes on from where it was left. */
  readonly isNew: boolean;
}

const KEY = "demo";

/**
 * Opens the demo's logbook, or goes on with its night as long as a departure of it lies ahead. A store that holds
 * somebody's own base is left alone.
 */
export async function openDemo(
  book: Book,
  store: Pick<Store, "loadState" | "saveState">,
  now: number,
  seed = DEMO_SEED,
): Promise<OpenedDemo> {
  const before = (await store.loadState(KEY)) as { opened: number; seed: number } | undefined;
  const state = book.state();
  if (state !== undefined && before === undefined) {
    throw new RangeError(
      `invalid --demo: the store holds ${state.setUp.name} (expected an empty store, or the demo's own)`,
    );
  }
  const departures = [...(state?.aircraft.values() ?? [])].flatMap((aircraft) =>
    aircraft.departures.map((departure) => ({ aircraft: aircraft.setUp.id, ...departure })),
  );
  if (before !== undefined && before.opened <= now && departures.some(({ departure }) => departure > now)) {
    return { ...before, isNew: false };
  }
  const over = departures.map(
    ({ aircraft, id }): LogbookEvent => ({
      ...{ kind: "departure-dropped", id: randomUUID(), at: isoOf(now), by: "demo", aircraft, of: id },
    }),
  );
  await book.record([...over, ...demoOpening(now, seed).events]);
  await store.saveState(KEY, { opened: now, seed });
  return { opened: now, seed, isNew: true };
}
