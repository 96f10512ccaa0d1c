import type { PlanningFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

const TRIED = {
  earliest: "selv med strøm på så tidlig som tillatt",
  "at-best": "i beste fall",
  "heat-left-on": "med varmen stående på",
  "no-heater": "uten motorvarmer",
  "no-heater-allowed": "uten en varmer som kan brukes her",
  "too-late": "for sent til å varme lenge nok: uten varme",
  "without-heat": "uten varme",
} as const;

export const planning: Phrases<PlanningFindings> = {
  "plan-too-hot": ({ criterion, over_k }, say) =>
    `${say.finding(criterion)} blir for varm: ${say.difference(over_k, 0)} over grensen i det midterste anslaget`,
  "plan-unsure": ({ tried, chance, wanted, criterion, ok, margin }, say) =>
    `${TRIED[tried]} er sjansen ${say.percent(chance)}, ikke ${say.percent(wanted)}: ` +
    `${say.finding(criterion)} er i orden i ${say.number(100 * ok)} av 100, midterste margin er ${say.measure(margin)}`,
  "help-cover": ({ cover }) => `legg på nå: ${cover}`,
  "help-heater": ({ heater }) => `varm med: ${heater}`,
  "help-hangar": ({ air_c }, say) => `sett flyet inn i hangaren (${say.temp(air_c)}) nå`,
};
