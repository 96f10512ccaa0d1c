import type { Measure, PlanningFindings } from "../../findings/index.js";
import type { Phrases, Say } from "../phrases.js";

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
    `${TRIED[tried]} er sjansen ${say.odds(chance)}, ikke ${say.odds(wanted)}; ` +
    `${say.finding(criterion)}: i orden i ${say.number(100 * ok)} av 100, i det midterste tilfellet ${away(margin, say)}`,
  "was-stopped": () => "det ble stanset",
  "not-calculated": ({ remedy }) => `kunne ikke regnes ut: ${remedy}`,
  "trials-not-calculated": () => "en prøve av hva som ville hjelpe, kunne ikke regnes ut",
  "no-forecast-entered": () => "ingen værmelding er lagt inn: det finnes ikke noe vær å planlegge med",
  "departure-too-far": ({ most_h }) => `avgangen er mer enn ${most_h} t fram: for langt til å planlegge`,
  "no-departure-wanted": () => "ingen avgang er ønsket",
  "no-forecast-reaches": ({ until, hours, forecasts }, say) =>
    `ingen værmelding rekker fra nå til ${until === null ? `${hours} t fram` : say.dayAndClock(until)}: ${forecasts.map(say.finding).join(" | ")}`,
  "forecast-not-used": ({ origin, why }, say) => `${origin}: ${say.finding(why)}`,
  "forecast-names-file": () => "den viser til en fil, som loggen ikke har",
  "no-forecast-of-then": () => "ingen værmelding sier noe om denne tiden",
  "weather-known-until": ({ at, wanted }, say) =>
    `været er bare kjent til ${say.dayAndClock(at)}, ikke til ${say.dayAndClock(wanted)}`,
  "weather-known-from": ({ at }, say) => `været er bare kjent fra ${say.dayAndClock(at)}`,
  "plan-ready": () => "klart med den ønskede sjansen",
  "plan-not-required": () => "forvarming er ikke nødvendig: over produsentens grense uten varme",
  "help-cover": ({ cover }, say) => `legg på nå: ${say.name(cover)}`,
  "help-heater": ({ heater }, say) => `varm med: ${say.name(heater)}`,
  "help-hangar": ({ air_c }, say) => `sett flyet inn i hangaren (${say.temp(air_c)}) nå`,
};

/** @example "mangler 12,1 K", "har 3,2 K å gå på" */
function away({ value, unit }: Measure, say: Say): string {
  const text = say.measure({ value: Math.abs(value), unit });
  return value < 0 ? `mangler ${text}` : `har ${text} å gå på`;
}
