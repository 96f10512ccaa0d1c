import { describe, expect, test } from "vitest";
import { Jobs, type Pieces } from "../../src/web/worker/jobs.js";

/** Jobs whose turns are taken by hand, and what they said. */
function bench() {
  const turns: (() => void)[] = [];
  const said: string[] = [];
  const jobs = new Jobs((go) => turns.push(go));
  return {
    jobs,
    said,
    add: (id: number, pieces: () => Pieces<unknown>, isQuick = false) =>
      jobs.add({
        ...{ id, isQuick },
        pieces: pieces(),
        done: (answer) => said.push(`${id} done ${answer}`),
        failed: (error) => said.push(`${id} failed ${(error as Error).message}`),
      }),
    /** Takes at most `most` turns; whether any was left. */
    run(most = 100) {
      for (let i = 0; i < most && turns.length > 0; i++) turns.shift()?.();
      return turns.length > 0;
    },
  };
}

describe("Jobs", () => {
  test("answer in the order they came, one piece a turn", () => {
    const { add, run, said } = bench();
    const counted = (id: number, pieces: number) =>
      function* (): Pieces<string> {
        for (let i = 1; i <= pieces; i++) {
          said.push(`${id} piece ${i}`);
          yield;
        }
        return "well";
      };
    add(1, counted(1, 2));
    add(2, counted(2, 1));
    expect(run()).toBe(false);
    expect(said).toEqual(["1 piece 1", "1 piece 2", "1 done well", "2 piece 1", "2 done well"]);
  });

  test("of those whose rest may wait the newest goes on first", () => {
    const { add, run, said } = bench();
    for (const id of [1, 2]) {
      add(id, function* () {
        yield "waits";
        yield;
        return "at last";
      });
    }
    run();
    expect(said).toEqual(["2 done at last", "1 done at last"]);
  });

  test("a quick one goes before what is left of the others", () => {
    const { add, run, said } = bench();
    for (const id of [1, 2]) {
      add(id, function* () {
        yield;
        yield;
        return "at last";
      });
    }
    run(1);
    const quick = function* (): Pieces<string> {
      yield;
      return "at once";
    };
    add(3, quick, true);
    run();
    expect(said).toEqual(["3 done at once", "1 done at last", "2 done at last"]);
  });

  test("what may wait lets a newer question through after one piece", () => {
    const { add, run, said } = bench();
    add(1, function* () {
      yield "waits";
      for (let i = 0; i < 5; i++) {
        said.push("background");
        yield;
      }
      return "rest";
    });
    run(3);
    expect(said).toEqual(["background", "background"]);
    add(2, function* () {
      yield;
      return "urgent";
    });
    run(2);
    expect(said.slice(2)).toEqual(["2 done urgent"]);
    run();
    expect(said.at(-1)).toBe("1 done rest");
  });

  test("a cancelled job is stopped between pieces, cleans up and says nothing more", () => {
    const { jobs, add, run, said } = bench();
    add(1, function* () {
      try {
        for (;;) {
          said.push("piece");
          yield;
        }
      } finally {
        said.push("cleaned up");
      }
    });
    run(2);
    jobs.cancel(1);
    run();
    expect(said).toEqual(["piece", "piece", "cleaned up"]);
  });

  test("a job that throws says why, and the next one is answered", () => {
    const { add, run, said } = bench();
    // biome-ignore lint/correctness/useYield: it fails before its first piece.
    add(1, function* () {
      throw new Error("no weather");
    });
    // biome-ignore lint/correctness/useYield: one piece only.
    add(2, function* () {
      return 7;
    });
    expect(run()).toBe(false);
    expect(said).toEqual(["1 failed no weather", "2 done 7"]);
  });

  test("begins again after having been idle", () => {
    const { add, run, said } = bench();
    for (const id of [1, 2]) {
      // biome-ignore lint/correctness/useYield: one piece only.
      add(id, function* () {
        return "x";
      });
      expect(run()).toBe(false);
    }
    expect(said).toEqual(["1 done x", "2 done x"]);
  });
});
