import { describe, expect, test } from "vitest";
import { Work } from "../../../src/web/data/work.svelte.js";
import { Dropped, Refusal } from "../../../src/web/worker/planner.js";

describe("work that somebody waits for", () => {
  test("shows how far it is, and what came of it", async () => {
    const work = new Work<number>();
    const isDone = await work.run(async ({ onProgress }) => {
      expect(work.share).toBe(0);
      onProgress(0.5);
      expect(work.share).toBe(0.5);
      return 7;
    });
    expect([isDone, work.answer, work.share]).toEqual([true, 7, undefined]);
  });

  test("says why nothing came of it, in the words of who refused", async () => {
    const work = new Work<number>();
    await work.run(async () => 7);
    expect(await work.run(() => Promise.reject(new Refusal(["no weather"])))).toBe(false);
    expect([work.answer, work.reasons]).toEqual([undefined, ["no weather"]]);
    await work.run(() => Promise.reject(new Error("broke")));
    expect(work.reasons).toEqual(["broke"]);
  });

  test("a newer question takes its place, and nothing of the older is shown", async () => {
    const work = new Work<string>();
    let answer = (_: string) => {};
    const old = work.run(
      () =>
        new Promise<string>((resolve) => {
          answer = resolve;
        }),
    );
    const fresh = work.run(async () => "new");
    answer("old");
    expect([await old, await fresh, work.answer]).toEqual([false, true, "new"]);
  });

  test("stopped, it is neither answered nor refused, and an answer before stays", async () => {
    const work = new Work<number>(true);
    await work.run(async () => 7);
    const stopped = work.run(({ signal }) => {
      work.stop();
      expect(signal.aborted).toBe(true);
      return Promise.reject(new Dropped());
    });
    expect([await stopped, work.answer, work.reasons]).toEqual([false, 7, []]);
    work.forget();
    expect(work.answer).toBeUndefined();
  });
});
