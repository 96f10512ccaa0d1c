import { heaterById } from "../../src/aircraft/index.js";
import type { BaseDocument, BasePlanDocument } from "../../src/index.js";
import { blocksOf, scenarioOf, wattsOf } from "./plan-rules.js";
import { HOUR, playersOf } from "./two-trainers.js";

type Row = BasePlanDocument["aircraft"][number];
type Span = { readonly from: number; readonly to: number };

/** Two of 20 cases: what a heating that costs nothing more may leave unused. */
const TOLERANCE = 0.11;
/** [h] nobody walks out for less. */
const SHORTEST = 0.5;

/**
 * Outlets that are idle while an aircraft that is missed could be likelier ready with them, the engine played: for those
 * that stand outside with heaters that need nobody, where people are there at all hours.
 */
export function idleOutlets(asked: BaseDocument, plan: BasePlanDocument): string[] {
  if (asked.people !== undefined) return [];
  const missed = plan.aircraft.filter((row) => row.status === "missed" && row.cart === null && !row.hangar);
  if (missed.length === 0) return [];
  const players = playersOf(asked);
  return missed.flatMap((row) => {
    const { kit, want } = scenarioOf(asked, row);
    const heaters = kit.heaters.map((h) => heaterById(typeof h === "string" ? h : h.id));
    if (heaters.length === 0 || heaters.some((h) => h.attended) || row.too_hot.length > 0) return [];
    const unplug = row.departure.at_h - (want?.unplug_before_min ?? 15) / 60;
    const longest = Math.min(...heaters.map((h) => h.longest_on_h));
    const player = players.find(({ id }) => id === row.id);
    return asked.circuits.flatMap((circuit) => {
      const free = freeOn(asked, plan, row, circuit.id, wattsOf(heaters), unplug);
      const long = free.filter((s) => s.to - s.from >= SHORTEST && s.to - s.from <= longest);
      return [1, 2].flatMap((n) => {
        const blocks = long.slice(-n).map(({ from, to }) => ({ from: from * HOUR, to: to * HOUR }));
        const played = blocks.length === 0 ? undefined : player?.play(blocks);
        if (played === undefined || played.verdict.tooHot.length > 0) return [];
        if (played.chance <= row.chance + TOLERANCE) return [];
        return [`${circuit.id} is idle: ${row.id} has ${row.chance} and could have ${played.chance}`];
      });
    });
  });
}

/** Times in which nobody else needs the outlet or the current that this aircraft would take. */
function freeOn(
  asked: BaseDocument,
  plan: BasePlanDocument,
  row: Row,
  id: string,
  watts: number,
  unplug: number,
): Span[] {
  const circuit = asked.circuits.find((c) => c.id === id);
  if (circuit === undefined) return [];
  const others = plan.aircraft.filter((one) => one.id !== row.id && one.circuit === id);
  const isFree = (t: number) => {
    const plugs = others.filter(({ connected }) =>
      connected.some((c) => c.from.at_h - 1 / 6 < t && t < c.to.at_h + 1 / 6),
    ).length;
    const drawn = others
      .filter((one) => blocksOf(one).some((b) => b.from - 1 / 6 < t && t < b.to + 1 / 6))
      .reduce((sum, one) => sum + wattsOf(one.heaters.map((h) => heaterById(h))), 0);
    const most = circuit.limit_a * (circuit.continuous_share ?? 0.8) * circuit.voltage_v;
    return plugs < circuit.outlets && drawn + watts <= most;
  };
  const spans: { from: number; to: number }[] = [];
  for (let t = 0; t < unplug - 1e-6; t += 1 / 6) {
    const to = Math.min(unplug, t + 1 / 6);
    if (!isFree((t + to) / 2)) continue;
    const last = spans.at(-1);
    if (last !== undefined && Math.abs(last.to - t) < 1e-6) last.to = to;
    else spans.push({ from: t, to });
  }
  return spans;
}
