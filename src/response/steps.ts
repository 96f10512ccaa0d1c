/**
 * Work in pieces: whoever runs it may look up between two of them, to show how far it got, to let something more
 * urgent in, or to stop it by not going on.
 */
export type Steps<T> = Generator<undefined, T, undefined>;

/** Runs work to its end at one go; undefined when `goOn`, asked between pieces, stopped it. */
export function finished<T>(steps: Steps<T>, goOn: () => boolean = () => true): T | undefined {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    if (!goOn()) return undefined;
  }
}
