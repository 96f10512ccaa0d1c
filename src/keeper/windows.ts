import { type Finding, finding } from "../findings/index.js";
import type { Heater } from "../index.js";
import {
  type BaseState,
  CONTINUOUS_SHARE,
  continuousLimit,
  type EventOf,
  unsafeSwitches,
} from "../logbook/index.js";
import { heatersOf, wattsOf } from "./heaters.js";

/** When a switch is to be on, by the plan that stands. */
export interface SwitchWindow {
  readonly aircraft: string;
  readonly switch: string;
  /** [ms] since 1970 UTC: from (inclusive) to (exclusive). */
  readonly from: number;
  readonly to: number;
  readonly planId: string;
}

export interface Windows {
  readonly windows: readonly SwitchWindow[];
  /** Plans that no switch carries out, and why. */
  readonly refused: readonly {
    readonly aircraft: string;
    readonly switch: string;
    readonly reason: Finding;
  }[];
}

/** [0..1] below which a departure that cannot be met is not heated for unasked: half warm is not ready. Project judgement. */
const LEAST_CHANCE = 0.5;

/**
 * What the standing plans want of the switches. A heater that somebody has to stand by is left to them, a switch that is
 * not safe stays off, and a circuit is never planned beyond what a continuous load may draw on its breaker: of windows that
 * together take too much the one that begins last is left out.
 */
export function windowsOf(state: BaseState, now: number): Windows {
  const refused: { aircraft: string; switch: string; reason: Finding }[] = [];
  const unsafe = unsafeSwitches(state.setUp);
  const wanted = [...state.aircraft.values()].flatMap((aircraft) => {
    const { plan, setUp } = aircraft;
    if (plan === undefined || plan.plug_in === null || aircraft.running) return [];
    const [from, to] = [Date.parse(plan.plug_in), Date.parse(plan.unplug)];
    if (!(to > now && to > from)) return [];
    return setUp.switches
      .filter(({ heaters }) => heaters.some((id) => plan.heaters.includes(id)))
      .flatMap((one) => {
        const name = { aircraft: setUp.id, switch: one.id };
        const heaters = heatersOf(setUp, one);
        const reason = reasonAgainst(plan, heaters, unsafe.get(`${setUp.id}/${one.id}`));
        if (reason !== undefined) {
          refused.push({ ...name, reason });
          return [];
        }
        return [{ ...name, from, to, planId: plan.id, watts: wattsOf(heaters), circuit: setUp.circuit }];
      });
  });
  const windows: typeof wanted = [];
  for (const window of wanted.sort((a, b) => a.from - b.from)) {
    const circuit = state.setUp.circuits.find(({ id }) => id === window.circuit);
    const limit =
      circuit === undefined ? Number.POSITIVE_INFINITY : continuousLimit(circuit) * circuit.voltage_v;
    const beside = windows.filter(
      (w) => w.circuit === window.circuit && w.from < window.to && window.from < w.to,
    );
    // Where they overlap the most that is taken is at the beginning of one of them.
    const most = Math.max(
      ...[window, ...beside].map(({ from }) =>
        beside.filter((w) => w.from <= from && from < w.to).reduce((sum, w) => sum + w.watts, window.watts),
      ),
    );
    if (most <= limit) windows.push(window);
    else {
      const reason = finding("circuit-overloaded", {
        circuit: circuit?.name ?? "",
        load_w: Math.round(most),
        limit_w: Math.round(limit),
        share: CONTINUOUS_SHARE,
      });
      refused.push({ aircraft: window.aircraft, switch: window.switch, reason });
    }
  }
  return { windows: windows.map(({ watts: _, circuit: __, ...window }) => window), refused };
}

/** Why a switch does not carry out a plan, whatever else draws current. */
function reasonAgainst(
  plan: EventOf<"plan-issued">,
  heaters: readonly Heater[],
  unsafe: Finding | undefined,
): Finding | undefined {
  const attended = heaters.find((heater) => heater.attended);
  if (attended !== undefined) return finding("heater-needs-somebody", { heater: attended.name });
  if (unsafe !== undefined) return unsafe;
  if (plan.status === "ready" || plan.chance >= LEAST_CHANCE) return undefined;
  return finding("chance-too-low-to-heat", { chance: plan.chance });
}
