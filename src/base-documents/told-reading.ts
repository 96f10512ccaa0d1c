import type { BaseLimits, Course } from "../base-plan/index.js";
import { withoutOtherDucts } from "../base-plan/index.js";
import {
  type BaseDocument,
  type Clock,
  epochOfText,
  fault,
  type Notes,
  type Path,
} from "../documents/index.js";
import type { Block } from "../response/index.js";
import type { AircraftScenario } from "../scenario/index.js";

/**
 * What an aircraft was told to do, as far as it is still to come. Undefined when it was told nothing, or when what it was
 * told can no longer be done: it was to be in the hangar and is not, or is wanted sooner than it was to be unplugged.
 */
export function toldOf(
  document: BaseDocument,
  id: string,
  { scenario, want }: AircraftScenario,
  clock: Clock,
  limits: BaseLimits,
  findings: Notes,
): Course | undefined {
  const at = (document.told ?? []).findIndex((t) => t.id === id);
  const entry = document.told?.[at];
  if (entry === undefined || want === undefined) return undefined;
  const path: Path = ["told", at];
  const moment = (text: string, ...more: Path) =>
    (epochOfText(text, [...path, ...more], clock, findings) ?? clock.start) - clock.start;
  const index = (value: string | null, list: readonly { readonly id: string }[], key: string) => {
    if (value === null) return undefined;
    const found = list.findIndex((e) => e.id === value);
    if (found >= 0) return found;
    return fault(findings, [...path, key], `one of ${list.map((e) => e.id).join(", ") || "none"}`, value);
  };
  const { wish } = want;
  const byHand = document.aircraft.find((a) => a.id === id)?.switching === "hand";
  const unplug = wish.departure - wish.unplugBefore;
  const blocks = entry.heat.flatMap(({ from, to }, k): Block[] => {
    const block = {
      from: Math.max(0, moment(from, "heat", k, "from")),
      to: Math.min(unplug, moment(to, "heat", k, "to")),
    };
    return block.to > block.from ? [block] : [];
  });
  // What somebody plugged in is on now, whatever was told.
  if (byHand && scenario.initial.configuration.heatersOn.size > 0) {
    if (blocks.length === 0) return undefined;
    blocks[0] = { from: 0, to: blocks[0].to };
  }
  const cart = index(entry.cart, limits.carts, "cart");
  const circuit = blocks.length === 0 ? undefined : index(entry.circuit, limits.circuits, "circuit");
  const inside = scenario.initial.configuration.place === "hangar";
  const { hangar } = entry;
  const heaters =
    cart === undefined
      ? want.heaters
      : withoutOtherDucts(scenario.kit, want.heaters, limits.carts[cart].heater);
  const course = {
    circuit,
    cart: blocks.length === 0 ? undefined : cart,
    heaters,
    blocks,
    givesUpOutlet: false,
  };
  if (hangar === null) return inside ? undefined : { ...course, stay: undefined };
  const into = hangar.in === null ? undefined : moment(hangar.in, "hangar", "in");
  const exit = wish.departure - Math.max(wish.coverOffBefore, limits.hangar?.moveTime ?? 0);
  const out = Math.min(exit, moment(hangar.out, "hangar", "out"));
  if (limits.hangar === undefined || out <= 0) return inside ? undefined : { ...course, stay: undefined };
  if (inside) return { ...course, stay: { from: undefined, to: out } };
  return into === undefined || into < 0 || into >= out
    ? undefined
    : { ...course, stay: { from: into, to: out } };
}
