import { Dropped, Planner } from "../../src/web/worker/planner.js";
import type { ReplanAsk, ReplanPart } from "../../src/web/worker/protocol.js";

// Measures in the browser what benchmarks/replan-browser.mjs prints.

const HOUR = 3_600_000;
const NOW = Date.UTC(2026, 0, 14, 17);
const MEMBERS = 200;

interface Heard {
  readonly first: number;
  readonly decided: number;
  readonly bases: readonly string[];
}

const planner = new Planner();
let turn = 0;
/** The same sequence every time, 0 to 1. */
const scattered = () => (++turn * 0.618034) % 1;

/** Milliseconds until all aircraft had their first answers, and their decisions. */
async function replan(ask: Omit<ReplanAsk, "now" | "members">): Promise<Heard> {
  const start = performance.now();
  const count = ask.aircraft.length;
  const parts: ReplanPart[] = [];
  let first = Number.NaN;
  let decided = Number.NaN;
  await planner.ask(
    "replan",
    { now: NOW, members: MEMBERS, ...ask },
    {
      lane: "replan",
      onPart(part) {
        parts.push(part);
        const of = (grade: string) => parts.filter((p) => p.grade === grade).length;
        if (of("first") + of("refused") === count && Number.isNaN(first)) first = performance.now() - start;
        if (of("decided") + of("refused") === count && Number.isNaN(decided))
          decided = performance.now() - start;
      },
    },
  );
  return { first, decided, bases: parts.flatMap((p) => (p.grade === "first" ? [p.basis] : [])) };
}

async function measure(trials: number) {
  const start = performance.now();
  const events = await planner.ask("demo", { now: NOW });
  const view = await planner.ask("open", { events, now: NOW });
  const opened = performance.now() - start;
  const ids = view.aircraft.filter(({ departures }) => departures.length > 0).map(({ id }) => id);
  const all = ids.map((id) => ({ id }));
  const opening = await replan({ aircraft: all, until: "first" });
  const wholeStart = performance.now();
  await replan({ aircraft: all });
  const prepared = performance.now() - wholeStart;

  const moved = () => ids.map((id) => ({ id, departure: NOW + (4 + 26 * scattered()) * HOUR }));
  const asks: Record<string, () => Omit<ReplanAsk, "now" | "members">> = {
    departure: () => ({ aircraft: moved() }),
    "one departure": () => ({ aircraft: moved().slice(0, 1) }),
    wind: () => ({ aircraft: all, windFactor: 0.4 + 1.4 * scattered() }),
    cover: () => ({
      aircraft: all.map(({ id }) => ({ id, covers: [] })),
      windFactor: 0.9 + 0.2 * scattered(),
    }),
  };
  const results: Record<string, { first: number[]; decided: number[]; bases: string[] }> = {};
  for (const [kind, ask] of Object.entries(asks)) {
    for (let i = 0; i < 3; i++) await replan({ ...ask(), until: "first" });
    const first: number[] = [];
    const decided: number[] = [];
    const bases = new Set<string>();
    for (let i = 0; i < trials; i++) {
      const heard = await replan({ ...ask(), until: i % 5 === 0 ? "decided" : "first" });
      first.push(heard.first);
      if (i % 5 === 0) decided.push(heard.decided);
      for (const basis of heard.bases) bases.add(basis);
    }
    results[kind] = { first, decided, bases: [...bases] };
  }

  // A finger that moves on while whole plans are being made: each question ends the one before it.
  const interrupting: number[] = [];
  for (let i = 0; i < trials; i++) {
    const left = replan({ aircraft: moved() }).catch((error) => {
      if (!(error instanceof Dropped)) throw error;
    });
    await new Promise((resolve) => setTimeout(resolve, 40 + 400 * scattered()));
    interrupting.push((await replan({ aircraft: moved(), until: "first" })).first);
    await left;
  }
  return {
    aircraft: ids.length,
    opened,
    openingFirst: opening.first,
    prepared,
    results,
    interrupting,
    memory: await memory(),
  };
}

/** [bytes] of page and workers, where the browser tells it. */
async function memory(): Promise<number | undefined> {
  const { measureUserAgentSpecificMemory: tell } = performance as Performance & {
    measureUserAgentSpecificMemory?: () => Promise<{ readonly bytes: number }>;
  };
  return tell === undefined ? undefined : (await tell.call(performance)).bytes;
}

Object.assign(window, { measure });
