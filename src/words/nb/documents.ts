import type { DocumentsFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const documents: Phrases<DocumentsFindings> = {
  "own-words": ({ text }) => text,
  "of-aircraft": ({ name, finding }, say) => `${name}: ${say.finding(finding)}`,
  "members-taken": ({ members }) => `Sjansene er telt over ${members} trukne tilfeller.`,
  "zone-of-start": ({ offset }) =>
    `Ingen tidssone er oppgitt: lokale tider vises med starttidens avvik, ${offset}, uten sommertid.`,
  "no-cover-fitted": () => "Ikke noe trekk eller inntaksplugg er oppgitt som på ved start: ingen er på.",
  "heated-for-unknown": () =>
    "Det er ikke kjent hvor lenge motorvarmeren har stått på: den regnes som på for lenge, og skal kobles fra nå.",
  "no-power-here": () => "Her er det ikke strøm: alle varmere i dokumentet regnes som av.",
  "hangar-taken": ({ air_c }, say) =>
    `Ingen hangar er beskrevet: der en hangar prøves som utvei, regnes luften i den som ${say.temp(air_c)}.`,
  "ground-taken": ({ roughness_m }) =>
    `Bakken mot vinden regnes som snødekte jorder (ruhetslengde ${String(roughness_m).replace(".", ",")} m), der mye av vinden når motordekselet.`,
  "heaters-together": ({ heaters }) => `Alle varmere i utstyret brukes sammen: ${heaters.join(", ")}.`,
  "chance-taken": ({ chance }, say) => `Ønsket sjanse for å være klar: ${say.percent(chance)}.`,
  "unplugged-before": ({ minutes }) => `Motorvarmeren kobles fra ${minutes} min før start.`,
  "covers-off-before": ({ minutes }) => `Trekk tas av ${minutes} min før start.`,
  "shut-down-taken": ({ hours }) =>
    `Motoren regnes som stoppet etter marsjflyging ${String(hours).replace(".", ",")} h før start, med temperaturer som er vanlige for typen, og som avkjølt siden der den står nå.`,
  "weather-held-back": () =>
    "Været begynner etter at motoren ble stoppet: de første verdiene holdes bakover.",
  "parts-as-heated": ({ hours }, say) =>
    `Deler uten avlesning regnes som varmet i ${say.number(hours, 1)} h fra kald, i det været som er kjent.`,
  "parts-at-air": ({ air_c, of, where }, say) => {
    const what = of === "all" ? "Ingen motortemperatur er oppgitt: alle deler" : "Deler uten avlesning";
    const air =
      where === "hangar"
        ? "luften i hangaren"
        : "den kaldeste luften de siste 6 h før start som været kjenner";
    return `${what} regnes som ${say.temp(air_c, 1)}, ${air}.`;
  },
  "start-known-to": ({ sd_k }, say) =>
    `Temperaturene ved start regnes som kjent på ±${say.difference(sd_k, 0)} nær (standardavvik).`,
  "idled-before-start": ({ minutes, air_c, oil_c, heads_c, caution }, say) =>
    `Motoren regnes som kjørt på tomgang i ${minutes} min fram til start, fra temperaturene før det, i luft på ${say.temp(air_c)}: oljen er da ${say.temp(oil_c)}, de fremre sylindertoppene ${say.temp(heads_c)}, etter vanlig praksis uten publisert kilde. ${say.finding(caution)}`,
  "forecast-used": ({ origin, hours }, say) => `Vær: ${origin}, mottatt for ${say.number(hours, 1)} h siden.`,
  "anchor-not-used": ({ known_at, begins_at }) =>
    `Hvordan motoren sto ${known_at} brukes ikke: beregningen begynner ${begins_at}, fra da været er kjent eller husket.`,
  "logged-before-not-used": ({ begins_at }) =>
    `Det som ble logget før ${begins_at} brukes ikke: ingenting er kjent fra da.`,
  "probe-left-out": ({ probe, reason }, say) => `Føleren ${probe} er utelatt: ${say.finding(reason)}.`,
  "hand-reading-left-out": ({ part, reason }, say) =>
    `Avlesningen for hånd av ${part} er utelatt: ${say.finding(reason)}.`,
  "element-unnamed": ({ elements }) =>
    `utstyret har ${elements} varmeelementer, og det er ikke sagt hvilket den sitter på`,
  "no-such-part": ({ part }) => `dette flyet har ikke ${part}`,
  "no-battery": () => "Det er ikke noe batteri i flyet. Sett det i varmt og ladet før start.",
  "oil-unlisted": ({ grade, air_c, listed }, say) =>
    `Olje: SAE ${grade} står ikke oppført for ${say.temp(air_c)}: det gjør ${listed.map((g) => `SAE ${g}`).join(", ")}. Se i motorprodusentens tabell.`,
  "attended-taken": ({ amount, currency }) =>
    `En time der noen passer på eller kobler til, regnes som ${`${amount} ${currency}`.trimEnd()}: eget skjønn, sett prices.attended_per_h.`,
  "hands-there": ({ from, until }) =>
    `Noen kan være der og koble til fra ${from} til ${until}; tidsur stilles kl. ${until} kvelden før.`,
  "cold-cases-taken": (_, say) =>
    `I de kalde tilfellene er flyet gjennomkaldt under trekkene, himmelen klar, luften ${say.difference(2, 0)} over duggpunktet, likt hele natten.`,
  "flight-taken": ({ hours }) =>
    `En flytur regnes å vare ${String(hours).replace(".", ",")} h, med motoren gjennomvarm til slutt.`,
  "first-day-left-out": ({ departures }) =>
    `Avganger i vinterens første døgn er utelatt (${departures}): flyet tar først værets temperatur.`,
  "winters-made": ({ years }) => `${years} vintre er laget av normalene.`,
  "winter-weather-made": ({ origin }) => `Været er laget, ikke målt: ${origin}.`,
  "no-fuel-named": () =>
    "Ikke noe drivstoff er oppgitt: den delen av vingen som ses på, har ingen tank bak seg.",
  "fuel-as": ({ as }) =>
    `Drivstoffet regnes som like varmt som ${as === "air-at-start" ? "luften ved start" : "overflaten når flyet kommer inn"}.`,
  "place-taken": ({ roughness_m, wing_height_m, isOpenSky, isSeaLevel }, say) => {
    const taken = [
      ...(roughness_m === undefined
        ? []
        : [`snødekte jorder (ruhetslengde ${String(roughness_m).replace(".", ",")} m)`]),
      ...(wing_height_m === undefined ? [] : [`vingen ${say.number(wing_height_m, 1)} m over bakken`]),
      ...(isOpenSky ? ["åpen himmel rundt om"] : []),
      ...(isSeaLevel ? ["havnivå"] : []),
    ];
    return `Om stedet er antatt: ${taken.join(", ")}.`;
  },
  "air-changes-taken": ({ per_h }) =>
    `Luften i hangaren regnes å skiftes ${per_h} gang i timen (0,6 til 2 er målt).`,
  "heater-with-flue": () => "Varmeren regnes som elektrisk eller med avtrekk: den gir ikke vann til luften.",
  "dew-point-taken": ({ where, below_k }, say) =>
    `Duggpunktet ${where === "outside" ? "ute" : "ved uttrilling"} regnes ${say.difference(below_k, 0)} under lufttemperaturen.`,
  "roll-out-taken": ({ minutes, wind_mps, isClear }, say) => {
    const taken = [
      ...(minutes === undefined ? [] : [`${minutes} min fra uttrilling til avgang`]),
      ...(wind_mps === undefined ? [] : [`vind ${say.wind(wind_mps)}`]),
      ...(isClear ? ["klar himmel"] : []),
    ];
    return `Ved uttrilling er antatt: ${taken.join(", ")}.`;
  },
  "climb-taken": ({ climb_fpm, airspeed_mps }, say) => {
    const taken = [
      ...(climb_fpm === undefined ? [] : [`stigning ${climb_fpm} ft/min`]),
      ...(airspeed_mps === undefined ? [] : [`fart ${say.wind(airspeed_mps)}`]),
    ];
    return `Om stigningen er antatt: ${taken.join(", ")}.`;
  },
  "hangar-at-sea-level": () => "Hangaren regnes å ligge ved havnivå.",
  "no-snow-named": () => "Ingen snø er oppgitt: flyet kommer bart inn, med vann i spaltene.",
  "broom-leaves": ({ share }, say) => `En kost regnes å la ${say.percent(share)} av snøen bli igjen.`,
  "comes-in-cold": ({ skin_c }, say) => `Flyet kommer gjennomkaldt inn, med ${say.temp(skin_c)}.`,
  "skin-drips": () => "Den smeltede overflaten får dryppe av, den tørkes ikke.",
  "light-wind-taken": ({ wind_mps, engine_wind_mps }, say) =>
    `Der ingen vind er oppgitt, regnes den som ${say.wind(wind_mps)}: svak vind gir rim før de ${say.wind(engine_wind_mps)} som kjøler en motor.`,
  "lull-frosts": () => "Der vinden er antatt, gir vindstille mer rim enn det som sies her.",
};
