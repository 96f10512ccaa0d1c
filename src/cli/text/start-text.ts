import type { StartDocument } from "../../index.js";
import type { Style } from "../style.js";
import { cared, fact, inUnits } from "./words.js";

const LABEL: Readonly<Record<StartDocument["notes"][number]["topic"], string>> = {
  oil: "Oil",
  "oil-pressure": "Pressure",
  "oil-grade": "Oil grade",
  cranking: "Cranking",
  battery: "Battery",
  fuel: "Fuel",
};

/** What to know before the starter is pressed. */
export function startFacts({ notes }: StartDocument, style: Style): string[] {
  return [
    "",
    style.colors.bold("At the start"),
    ...notes.flatMap(({ topic, text }) => fact(LABEL[topic], inUnits(text, style), style)),
  ];
}

/** Cautions of the equipment and of the start, each once. */
export function careList(
  cautions: readonly { readonly text: string; readonly source: string }[],
  start: StartDocument,
  style: Style,
): string[] {
  const all = [...new Map([...cautions, ...start.cautions].map((c) => [c.text, c])).values()];
  return cared(all, style);
}
