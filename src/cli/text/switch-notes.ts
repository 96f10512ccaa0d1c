import { type BaseState, switchCautions, unsafeSwitches } from "../../logbook/index.js";
import { english } from "../../words/index.js";

/** What whoever keeps the base has to know of its switches, a line each; none where there is nothing to say. */
export function switchNotes(state: BaseState | undefined): readonly string[] {
  if (state === undefined) return [];
  const { setUp } = state;
  const unsafe = unsafeSwitches(setUp);
  return [
    ...[...unsafe].map(([name, reason]) => `Switch ${name} stays off: ${english(reason)}.`),
    ...switchCautions(setUp)
      .map((one) => ({ name: `${one.aircraft}/${one.switch}`, ...one }))
      .filter(({ name }) => !unsafe.has(name))
      .map(({ name, caution }) => `Caution, switch ${name}: ${english(caution)}`),
  ];
}
