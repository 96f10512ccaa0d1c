import type { WeatherFindings } from "../../findings/index.js";
import type { Phrases, Say } from "../phrases.js";

const QUANTITY = {
  tempAir: "lufttemperatur",
  windSpeed: "vind",
  tempDewPoint: "duggpunkt",
  cloudCover: "skydekke",
} as const;

function ahead(quantity: "windSpeed" | "cloudCover", mps: number, say: Say): string {
  if (quantity === "cloudCover") return "himmelen regnes som klar";
  return `vinden regnes som den sterkeste av siste kjente og ${say.wind(mps)}`;
}

const WHEN = {
  "no-forecast": "uten varsel",
  "after-taf": "etter at TAF-en er utløpt",
  "until-named": "til TAF-en gir en verdi",
} as const;

export const weather: Phrases<WeatherFindings> = {
  "weather-assumed": ({ finding, from, to }, say) =>
    `Vær${from === undefined ? "" : ` ${from} til ${to}`}: ${say.finding(finding)}.`,
  "weather-file-assumed": ({ path, finding }, say) => `Vær ${path}: ${say.finding(finding)}.`,
  "weather-file-gaps": ({ path, gaps }) => `Vær ${path}: ${gaps} hull i alt.`,
  "wind-assumed": ({ wind_mps }, say) => `vinden regnes som ${say.wind(wind_mps)}: kilden gir ingen`,
  "sky-assumed-clear": () => "himmelen regnes som klar: kilden sier ikke noe om skyer",
  "dew-point-assumed": ({ below_k, by }, say) =>
    `duggpunktet regnes ${say.difference(below_k, 0)} under lufttemperaturen: ${by === "file" ? "kilden gir ingen fuktighet" : "rapportene gir ikke noe"}`,
  "rows-missing": ({ quantity, rows, isHeld }) =>
    `${QUANTITY[quantity]} mangler i rader (${rows}): ${isHeld ? "nærmeste verdi holdt" : "rett linje imellom"}`,
  "no-reading-for": ({ hours }, say) =>
    `ingen avlesning på ${say.number(hours, 1)} h: rett linje imellom for alle verdier`,
  "reports-missing": ({ quantity, reports, instead, wind_mps }, say) =>
    `${QUANTITY[quantity]} mangler i rapporter (${reports}): ${
      {
        bridged: "fylt ut fra rapportene ved siden av",
        taf: "som fremover: hentet fra TAF-en",
        assumed: `som fremover: ${ahead(quantity, wind_mps, say)}`,
      }[instead]
    }`,
  "dew-points-bridged": () =>
    "duggpunkt mangler i noen rapporter: avstanden til lufttemperaturen er fylt ut fra rapportene ved siden av",
  "dew-point-kept": ({ below_k }, say) =>
    `duggpunktet holdes ${say.difference(below_k)} under lufttemperaturen, som i siste rapport: kildene gir ikke noe fremover`,
  "change-taken-throughout": ({ group }) =>
    `${group}: regnes å vare hele tiden der den gir mer vind eller mindre skyer, for det kjøler mer`,
  "ahead-assumed": ({ quantity, when, wind_mps }, say) => `${WHEN[when]}: ${ahead(quantity, wind_mps, say)}`,
  "before-taf": () => "før TAF-en begynner: det som kjøler mest av siste avlesning og begynnelsen av TAF-en",
  "air-held-at-low": () =>
    "luften holdes på det første minimum fra begynnelsen: det er ingen avlesning, og minimum er på den kalde siden",
  "taken-as-one-place": ({ readings, forecast }) =>
    `avlesninger fra ${readings} og varsel for ${forecast} regnes som samme sted`,
  "air-held-at-reading": ({ colder_k, low_at }, say) =>
    `luften holdes på siste avlesning: den er alt ${say.difference(colder_k)} kaldere enn minimum som er varslet for ${low_at}`,
  "low-assumed": ({ fall_k, from, at }, say) =>
    `nattens minimum regnes ${say.difference(fall_k)} under ${from}, kl. ${at}: bare maksimum etterpå er varslet`,
  "air-taken-to-cool": ({ fall_k, hours }, say) =>
    `ingen temperatur er varslet: luften regnes å kjølne med kvadratroten av tiden, ${say.difference(fall_k)} på ${hours} h, og å bli der uten dagens oppvarming`,
  "low-held": () => "ingen temperatur er varslet etter siste minimum: minimum holdes, uten dagens oppvarming",
  "air-by-cosines": () =>
    "luften mellom avlesningen og minimum og maksimum følger halve cosinuser: kildene gir bare punktene",
  "value-held": ({ end }) =>
    `holdt: tiden ligger ${end === "first" ? "før den første" : "etter den siste"} verdien i kilden`,
  "years-moved": ({ from, to }) =>
    `rader fra ${from} er lagt i ${to}: filen er satt sammen av måneder fra ulike år, eller et annet år ble bedt om`,
};
