import { type Heater, heaterById, installationById } from "../../src/aircraft/index.js";
import type { BaseDocument, BasePlanDocument } from "../../src/index.js";
import { english } from "../../src/words/index.js";

// What no base plan may break, read from its document and what was asked, with the limits of the catalogue: nothing of the
// planner is used.

type Row = BasePlanDocument["aircraft"][number];
type Scenario = Exclude<BaseDocument["aircraft"][number]["scenario"], string>;
type Span = { readonly from: number; readonly to: number };

/** [h] rounding of times in the document. */
const EXACT = 0.0011;
/** The makers' 30 min (IO-390-D series manual p. 42). */
const HOT_AIR_LEAST_H = 0.5;
/** NEC 210.20(A), from memory. */
const CONTINUOUS_SHARE = 0.8;

/** Everything that is wrong with a plan, in words; empty where nothing is. */
export function brokenRules(asked: BaseDocument, plan: BasePlanDocument): string[] {
  return [
    ...plan.aircraft.flatMap((row) =>
      brokenBy(row, scenarioOf(asked, row), asked).map((t) => `${row.id}: ${t}`),
    ),
    ...overloaded(asked, plan),
    ...unwatched(asked, plan),
  ];
}

export function scenarioOf({ aircraft }: BaseDocument, { id }: Row): Scenario {
  const scenario = aircraft.find((one) => one.id === id)?.scenario;
  if (scenario === undefined || typeof scenario === "string") throw new Error(`no scenario of ${id}`);
  return scenario;
}

function heatersOf({ heaters }: Row): Heater[] {
  return heaters.map((id) => heaterById(id));
}

export function blocksOf({ heat }: Row): Span[] {
  return heat.map(({ from, to }) => ({ from: from.at_h, to: to.at_h }));
}

function brokenBy(row: Row, scenario: Scenario, asked: BaseDocument): string[] {
  const broken: string[] = [];
  const expectThat = (holds: boolean, text: string) => {
    if (!holds) broken.push(text);
  };
  const blocks = blocksOf(row);
  const isOn = (scenario.plugged_in ?? []).length > 0;
  const inAll = blocks.reduce((sum, b) => sum + b.to - b.from, 0);
  blocks.forEach((block, i) => {
    const fromStart = isOn && i === 0 && block.from === 0;
    for (const { id, duct, least_on_h, longest_on_h, runs } of heatersOf(row)) {
      const long = block.to - block.from;
      expectThat(long <= longest_on_h + EXACT, `${id} on for ${long} h, longest ${longest_on_h} h`);
      const least = duct === undefined ? 0 : Math.max(HOT_AIR_LEAST_H, least_on_h);
      expectThat(fromStart || long >= least - EXACT, `${id} blows for ${long} h only`);
      expectThat(fromStart || inAll >= least_on_h - EXACT, `${id} on for ${inAll} h in all`);
      expectThat(runs === "anywhere" || !isInside(block, row, asked), `${id} runs in the hangar`);
    }
  });
  const last = blocks.at(-1);
  for (const { id, procedure, displacement_least_l = 0 } of last === undefined ? [] : heatersOf(row)) {
    const pause = (row.departure.at_h - (last?.to ?? 0)) * 60;
    expectThat(pause >= (procedure?.pause_min ?? 0) - 0.1, `${id}: ${pause} min before the start`);
    if (row.cart === null || typeof scenario.aircraft !== "string") continue;
    const { displacement_l } = installationById(scenario.aircraft);
    expectThat(displacement_l >= displacement_least_l, `${id} on an engine of ${displacement_l} l`);
  }
  expectThat(row.status === "missed" || row.chance >= row.wanted_chance, `ticked with ${row.chance}`);
  expectThat(row.aim === "least" || row.warm_chance >= row.wanted_chance, `warm with ${row.warm_chance}`);
  expectThat(row.warm_chance <= row.chance, "warm through more often than past the least");
  expectThat(row.explanation.length > 0, "not explained");
  const gives = row.status === "missed" ? /is not ready for/ : /./;
  expectThat(
    gives.test(row.explanation.map(english).join(" ")),
    `a cross without its reason: ${row.explanation.map(english)}`,
  );
  return broken;
}

function isInside({ from, to }: Span, { hangar }: Row, { hangar: bay }: BaseDocument): boolean {
  if (hangar === null) return false;
  return to > (hangar.in?.at_h ?? 0) + EXACT && from < hangar.out.at_h + (bay?.move_min ?? 0) / 60 - EXACT;
}

function overloaded(asked: BaseDocument, plan: BasePlanDocument): string[] {
  return asked.circuits.flatMap((circuit) => {
    const on = plan.aircraft.filter((row) => row.circuit === circuit.id);
    const drawn = on.flatMap((row) => blocksOf(row).map((b) => ({ ...b, watts: wattsOf(heatersOf(row)) })));
    const held = plan.aircraft
      .filter((row) => row.circuit === circuit.id)
      .flatMap(({ connected }) => connected.map((c) => ({ from: c.from.at_h, to: c.to.at_h, watts: 1 })));
    const most = (spans: readonly (Span & { readonly watts: number })[]) =>
      Math.max(
        0,
        ...spans.map(({ from }) =>
          spans.filter((s) => s.from <= from + EXACT && from + EXACT < s.to).reduce((w, s) => w + s.watts, 0),
        ),
      );
    const amps = most(drawn) / circuit.voltage_v;
    const allowed = circuit.limit_a * (circuit.continuous_share ?? CONTINUOUS_SHARE);
    return [
      ...(amps > allowed + 0.01 ? [`${circuit.id} carries ${amps} A of ${allowed} A`] : []),
      ...(most(held) > circuit.outlets
        ? [`${circuit.id}: ${most(held)} plugs, ${circuit.outlets} outlets`]
        : []),
    ];
  });
}

export function wattsOf(heaters: readonly Heater[]): number {
  return heaters.reduce(
    (sum, { elements, duct }) =>
      sum + elements.reduce((w, e) => w + e.power_w, duct?.energy === "electric" ? duct.power_w : 0),
    0,
  );
}

/** Somebody is beside every heater that must be watched, all the time it is on, one person each. */
function unwatched(asked: BaseDocument, plan: BasePlanDocument): string[] {
  const { people } = asked;
  if (people === undefined) return [];
  const watched = plan.aircraft
    .filter((row) => heatersOf(row).some((h) => h.attended))
    .flatMap((row) => blocksOf(row));
  const start = Date.parse(plan.start.time);
  const there = people.map(({ from, to, count }) => ({
    from: (Date.parse(from) - start) / 3.6e6,
    to: (Date.parse(to) - start) / 3.6e6,
    count,
  }));
  const moments = [...watched, ...there].flatMap(({ from, to }) => [from + EXACT, to - EXACT]);
  return moments.flatMap((t) => {
    const needed = watched.filter((b) => b.from < t && t < b.to).length;
    const count = there.filter((p) => p.from < t && t < p.to).reduce((sum, p) => sum + p.count, 0);
    return needed > count ? [`${needed} heaters to be watched at ${t} h, ${count} people there`] : [];
  });
}
