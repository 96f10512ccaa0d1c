import type { StartDocument } from "../../index.js";
import type { Style } from "../style.js";
import { fact, wrapped } from "./words.js";

const LABEL: Readonly<Record<StartDocument["notes"][number]["topic"], string>> = {
  oil: "Oil",
  "oil-pressure": "Pressure",
  "oil-grade": "Oil grade",
  propeller: "Propeller",
  cranking: "Cranking",
  battery: "Battery",
  fuel: "Fuel",
  breather: "Breather",
};

/** What to know before the starter is pressed, each caution beside what it belongs to. */
export function startFacts({ notes }: StartDocument, style: Style): string[] {
  return [
    "",
    style.colors.bold("At the start"),
    ...notes.flatMap(({ topic, text, cautions }) => [
      ...fact(LABEL[topic], style.say(text), style),
      ...cautions.flatMap((caution) =>
        wrapped(`${style.say(caution)} (${caution.source})`, style.width, `${INDENT}! `, `${INDENT}  `),
      ),
    ]),
  ];
}

/** As wide as the labels. */
const INDENT = " ".repeat(14);
