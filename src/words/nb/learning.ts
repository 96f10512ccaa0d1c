import type { LearningFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const learning: Phrases<LearningFindings> = {
  "heat-unsure": ({ heater, kind, percent }) =>
    `Hvor mye varme den gir, er ${kind === "scaled" ? "skalert fra en annen varmer" : "anslått"}, ikke målt: tilfellene varierer ${percent} % mer for det (${heater}).`,
  "learned-from": ({ readings, origins, isReset }) =>
    `Tallene for dette flyet er lært av ${readings} avlesninger (${origins.join(", ")})${isReset ? "; det som ble lært med andre trekk eller varmere, eller et annet sted, regnes som ukjent" : ""}.`,
  "learned-at-base": ({ aircraft }, say) =>
    `Det som fly av samme slag på denne basen har felles, er lært på ${say.list(aircraft)}.`,
  "reading-contradicts": ({ probe, at, reading_c, model_c }, say) =>
    `${probe} viste ${say.temp(reading_c)} kl. ${say.clock(at)} der modellen sier ${say.temp(model_c)}. Er det proben, plassen eller modellen?`,
  "air-as-measured": ({ probes }, say) =>
    `Luften rundt flyet er slik ${say.list(probes)} målte den, ikke slik været har den.`,
  "corrected-by-record": ({ plans, colder_k, spread }, say) => {
    const air =
      colder_k === 0
        ? []
        : [
            `som om det var ${say.difference(Math.abs(colder_k), 1)} ${colder_k > 0 ? "kaldere" : "varmere"} ute`,
          ];
    const cases =
      spread === 1 ? [] : [`med tilfeller som ligger ${say.number(spread, 2)} ganger så langt fra hverandre`];
    return `Rettet etter basens egen erfaring med ${plans} planer: planlagt ${say.list([...air, ...cases])}.`;
  },
  "unknown-snow": () => "snø eller is på motordekselet",
  "unknown-air": () => "varig feil i lufttemperaturen",
  "unknown-start": ({ part }) => `temperatur ved start for ${part ?? "alle deler"}`,
  "unknown-offset": ({ probe }) => `avvik for føleren ${probe}`,
  "unknown-lag": ({ probe }) => `treghet for føleren ${probe}`,
};
