import type { WinterFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const winter: Phrases<WinterFindings> = {
  "rule-outdoors-only": ({ heater }, say) =>
    `${say.name(heater)}: en brenner skal aldri gå inne i en hangar (kullos, brann).`,
  "rule-engine-too-small": ({ heater, least_l, engine_l }, say) =>
    `${say.name(heater)}: for motorer på ${say.number(least_l, 1)} l eller mer, denne er på ${say.number(engine_l, 1)} l.`,
  "rule-longest-on": ({ heater, on_h, longest_on_h }, say) =>
    `${say.name(heater)}: ${say.number(on_h)} t i strekk, ${say.number(longest_on_h)} t er tillatt.`,
  "rule-always-on": () =>
    "Alltid på har ingen slutt: en tur som faller bort, lar varmeren stå på over den lengste tiden, og en varmer som ingen passer på, må slå seg av.",
  "habit-always-on": () => "alltid på",
  "habit-clock": ({ lead_h }, say) => `alltid ${say.number(lead_h, lead_h % 1 === 0 ? 0 : 1)} t før`,
  "habit-daily": ({ from, until }) => `daglig ${from}–${until}`,
  "habit-planned": ({ chance }, say) =>
    `som planlagt${chance === null ? "" : `, ${say.number(100 * chance)} av 100`}`,
  "no-heater-to-switch": () => "ingen varmer å slå på",
  "heater-attended": ({ heater }, say) => `noen må være ved ${say.name(heater)} hele tiden mens den går`,
  "times-need-timer": () => "faste tider krever et tidsur",
  "least-over-longest": () => "den korteste tiden varmerne må stå på, er over den lengste de får",
  "heats-too-short": ({ least_on_h }, say) =>
    `varmer kortere enn de ${say.number(least_on_h, 1)} t som varmeren minst skal stå på`,
  "winter-flown-warm": () =>
    "De som er klare til en avgang, flyr og blir satt fra seg gjennomvarme; de andre blir stående og varmes til neste avgang.",
  "winter-lead-table": () =>
    "En plan tar tiden fra en tabell etter varslet middel av luft og vind de tolv timene før avgang, som om flyet var gjennomkaldt: kort etter en flytur varmer den lenger enn nødvendig.",
  "winter-aims": () =>
    "Planene sikter mot gjennomvarm der utstyret når det med den ønskede sjansen, ellers mot det minste produsenten krever; «klart» teller det minste.",
  "winter-time-counted": () =>
    "Tilsynet er hele tiden en passet varmer går og pausen etterpå; for hånd 10 min for hver gang den står på (prosjektets skjønn).",
  "winter-wet-counted": (_, say) =>
    `Våte timer gjelder det midterste flyet. ISO 9223 teller timer over 80 % luftfuktighet og ${say.temp(0)} for metall i fri luft; her teller rim også, ` +
    "for det blir til vann ved start. Inne i et veivhus, under oljefilm og spor av syre, rangerer tallet bare vaner mot hverandre. " +
    "Flater, lufting og olje er anslag: regn vannmengden som riktig innenfor en faktor tre.",
  "winter-by-hand": ({ kits }) =>
    `For hånd (${kits.join(", ")}) settes strømmen på i siste liten før vanens tid når noen er der: til en tidlig avgang er det kvelden før, uansett hvor lenge før vanen sier.`,
  "always-on-compared": ({ heater, longest_on_h }, say) =>
    `Alltid på sammenlignes, men rådes ikke til: ${say.name(heater)} kan stå på i ${say.number(longest_on_h)} t i strekk, og en varmer som ingen passer på, må slå seg av.`,
};
