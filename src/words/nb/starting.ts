import type { StartingFindings } from "../../findings/index.js";
import type { Phrases, Say } from "../phrases.js";

const PARTS: Readonly<Record<StartingFindings["part"]["name"], string>> = {
  sump: "bunnpanne",
  oil: "olje",
  crankcase: "veivhus",
  crankshaft: "veivaksel og lagre",
  barrels: "sylindre",
  heads_front: "fremre sylindertopper",
  heads_rear: "bakre sylindertopper",
  accessories: "hjelpeaggregater",
  hub: "propellnav",
  cowl_air: "luft under motordekselet",
  cowl_skin: "motordeksel",
  battery: "batteri",
  coolant: "kjølevæske",
};

const PARAMETERS: Readonly<Record<StartingFindings["parameter"]["name"], string>> = {
  heater_contact: "hvor godt varmeren sitter på det den varmer",
  heater_power: "virkelig effekt (nettspenning, toleranse i elementet)",
  oil_film: "varme fra bunnpannens vegg til oljen",
  sump_joint: "varmeledning fra bunnpanne til veivhus",
  oil_inside: "varme med olje, damp og retur fra oljen til veivhus og veivaksel",
  journals: "varmeledning gjennom rammelagrene",
  flanges: "varmeledning fra veivhus til sylindre og topper",
  accessory_mounts: "varmeledning til hjelpeaggregatene",
  engine_to_cowl_air: "varme fra motoren til luften under motordekselet",
  cowl_skin_loss: "varme gjennom motordeksel og trekk",
  ventilation: "luft som lekker gjennom innløp, utløp og under trekket",
  hub_loss: "varme gjennom propellnav og blader",
  battery_links: "varme mellom batteri, motordeksel og uteluft",
  heat_stores: "varmekapasiteten til motorens metall",
};

const TITLES: Readonly<Record<StartingFindings["why-title"]["topic"], string>> = {
  "oil-viscosity": "Hvor tykk er oljen?",
  "oil-pressure": "Hvor lang tid tar det før oljetrykket kommer?",
  "cranking-drag": "Hvor tung er motoren å dra rundt?",
  "cranking-power": "Hvor mye er igjen av batteriet?",
  "cranking-speed": "Går starteren fort nok rundt?",
  "battery-freezing": "Når fryser batteriet?",
  "fuel-vapour": "Gir drivstoffet en blanding som brenner?",
  "bearing-clearance": "Hvor mye er igjen av klaringen i rammelagrene?",
  "piston-clearance": "Hvor mye plass har stempelet de første minuttene?",
  "frost-point": "Ved hvilken overflatetemperatur begynner rimet?",
};

const BATTERIES = {
  flooded: "blybatteri med fri syre",
  sealed: "forseglet blybatteri",
  lithium: "litiumjernfosfatbatteri",
} as const;

export const starting: Phrases<StartingFindings> = {
  part: ({ name }) => PARTS[name],
  parameter: ({ name }) => PARAMETERS[name],
  "with-source": ({ finding, source }, say) => `${say.finding(finding)} (${source})`,
  "oil-below-pour-point": ({ oil, temp_c, pour_point_c }, say) =>
    `${say.name(oil)} på ${say.temp(temp_c)} er under stivnepunktet (${say.temp(pour_point_c)}): den flyter kanskje ikke i det hele tatt`,
  "oil-not-pumped": ({ oil, temp_c, limit_c }, say) =>
    `${say.name(oil)} på ${say.temp(temp_c)} når kanskje ikke pumpen: grense ${say.temp(limit_c)}`,
  "oil-too-stiff": ({ oil, temp_c, limit_c }, say) =>
    `${say.name(oil)} på ${say.temp(temp_c)} er for stiv til å starte etter SAE J300: grense ${say.temp(limit_c)}`,
  "oil-fit": ({ oil, temp_c }, say) =>
    `${say.name(oil)} på ${say.temp(temp_c)} kan pumpes og dras rundt etter SAE J300; motorprodusentens grense for forvarming går foran`,
  "oil-pressure-never": () => "oljetrykket kommer kanskje aldri: oljen når kanskje ikke pumpen",
  "oil-pressure-delay": ({ least_s, most_s, limit_s }, say) => {
    const range = `oljetrykket kan ta ${say.number(least_s)} til ${say.number(most_s)} s`;
    return least_s > limit_s
      ? `${range}, og motoren skal stoppes etter ${limit_s} s: varm den først`
      : `${range}; stopp motoren etter ${limit_s} s uten trykk`;
  },
  "oil-grade-listed": ({ grade, temp_c }, say) =>
    `SAE ${grade} er blant oljene som er oppført for ${say.temp(temp_c)}`,
  "oil-grade-unlisted": ({ grade, temp_c, listed }, say) =>
    `SAE ${grade} er ikke oppført for ${say.temp(temp_c)}: det er ${say.list(listed.map((one) => `SAE ${one}`))}`,
  "propeller-clear": () => "se at det er klart rundt den, og rop, før noe slås på",
  "starter-stalls": () => "starteren ventes ikke å få motoren rundt",
  "starter-slow": (turning, say) => `for sakte til å tenne: omtrent ${figuresOf(turning, say)}`,
  "starter-turns": (turning, say) => `starteren drar motoren rundt med omtrent ${figuresOf(turning, say)}`,
  "battery-absent": () => "det er ikke batteri i flyet: sett det i varmt og ladet",
  "battery-frozen": (battery, say) => `${batteryAt(battery, say)} kan være frosset`,
  "battery-cut-off": (battery, say) => `${batteryAt(battery, say)} gir ingenting så kaldt`,
  "battery-power": ({ power, may_charge, ...battery }, say) =>
    `${batteryAt(battery, say)} gir ${say.percent(power)} av startkraften når det er varmt${may_charge ? "" : " og tar ikke lading"}`,
  "fuel-too-lean": ({ temp_c }, say) =>
    `Ved ${say.temp(temp_c)} gir ingen primer en blanding som brenner: varm sylindre og innsug.`,
  "fuel-as-warm": ({ temp_c }, say) =>
    `Ved ${say.temp(temp_c)} fordamper drivstoffet som på en varm dag: bruk primer etter håndboken.`,
  "fuel-more": ({ temp_c, ratio, too_much }, say) => {
    const amount = `Ved ${say.temp(temp_c)} må det omtrent ${say.number(ratio, 1)} ganger så mye drivstoff til som ved ${say.temp(15)}`;
    return too_much
      ? `${amount}, mer enn primeren er laget for: varm sylindre og innsug først.`
      : `${amount} for den samme dampen; hvordan du bruker primer, sier håndboken.`;
  },
  "breather-iced": () => "den kan være iset: kjenn og se",
  "why-title": ({ topic }) => TITLES[topic],
  "why-oil-viscosity": ({ oil, temp_c, viscosity_pa_s, ratio, cranking_c, pumping_c }, say) =>
    `Ved ${say.temp(temp_c)} har ${say.name(oil)} ${brief(viscosity_pa_s, say)} Pa s, ${brief(ratio, say)} ganger så mye som ved ${say.temp(20)}. ` +
    `Den er for stiv til å starte under ${say.temp(cranking_c)} og når kanskje ikke pumpen under ${say.temp(pumping_c)}.`,
  "why-oil-pressure": ({ temp_c, least_s, most_s }, say) =>
    `Ved ${say.temp(temp_c)} tar det omtrent ${say.number(least_s)} til ${say.number(most_s)} s før oljen viser trykk, om den flyter ` +
    "i det hele tatt. Det er et grovt anslag. Stopp motoren når det ikke er trykk innen 10 s; motorens håndbok bestemmer.",
  "why-cranking-drag": ({ temp_c, torque_nm, ratio, mostly }, say) =>
    `Er alt på ${say.temp(temp_c)}, trengs det ${say.number(torque_nm)} N m for å dra den rundt med 100 rpm, ${say.percent(ratio)} av det ` +
    `som trengs ved ${say.temp(27)}. Det meste er ${mostly === "films" ? "oljefilmene" : "kompresjon og tørr friksjon"}.`,
  "why-cranking-power": ({ temp_c, battery, power }, say) =>
    `Ved ${say.temp(temp_c)} har et fullt ${BATTERIES[battery]} ${say.percent(power)} av startkraften ved ${say.temp(27)}, mens ` +
    "motoren krever mer.",
  "why-cranking-speed": ({ temp_c, charge, rpm, least_rpm }, say) =>
    `Med motor og batteri på ${say.temp(temp_c)} og batteriet ${say.percent(charge)} ladet drar starteren den rundt med omtrent ` +
    `${say.number(rpm)} rpm. Det trengs minst ${say.number(least_rpm)} rpm.`,
  "why-battery-freezing": ({ temp_c, charge, margin_k, freezing_c, empty_c }, say) =>
    `Ved ${say.temp(temp_c)} er et batteri som er ${say.percent(charge)} ladet, ${aboveOrBelow(margin_k, say)} frysepunktet for ` +
    `syren, ${say.temp(freezing_c)}. Tomt ville det fryse ved ${say.temp(empty_c)}.`,
  "why-battery-cut-off": ({ temp_c, margin_k, cut_off_c }, say) =>
    `Ved ${say.temp(temp_c)} er batteripakken ${aboveOrBelow(margin_k, say)} grensen der den kobler ut, ${say.temp(cut_off_c)}.`,
  "why-fuel-vapour": ({ temp_c, fuel, vapour, lean, lean_c, ratio }, say) =>
    `Ved ${say.temp(temp_c)} holder luft over ${fuel} høyst ${say.number(100 * vapour, 1)} % damp (den brenner fra ` +
    `${say.number(100 * lean, 1)} %, altså ikke under ${say.temp(lean_c)}), og det må ${say.number(ratio, 1)} ganger så ` +
    `mye drivstoff til som ved ${say.temp(15)}. Håndboken sier hvordan du bruker primer.`,
  "why-bearing-clearance": ({ temp_c, left_mm, whole_mm }, say) =>
    `Ved ${say.temp(temp_c)} har et veivhus av aluminium krympet inn mot stålakselen: ${say.number(left_mm, 3)} mm av ` +
    `${say.number(whole_mm, 3)} mm er igjen, om veivhuset alene bestemte boringen.`,
  "why-piston-clearance": ({ temp_c, left_mm, warm_mm }, say) =>
    `Med sylinderen på ${say.temp(temp_c)} og stempelet alt på ${say.temp(100)} er det ${say.number(left_mm, 3)} mm igjen. Med ` +
    `sylinderen på ${say.temp(20)} ville det vært ${say.number(warm_mm, 3)} mm.`,
  "why-frost-point": ({ temp_c, frost_c }, say) =>
    `Et meldt duggpunkt på ${say.temp(temp_c)} betyr rim på alt under ${say.temp(frost_c, 1)}.`,
  "why-dew-point": ({ temp_c }, say) =>
    `Et duggpunkt på ${say.temp(temp_c)} betyr dugg, ikke rim, på alt under det.`,
};

function figuresOf({ rpm, current_a, voltage_v }: StartingFindings["starter-turns"], say: Say): string {
  return `${say.number(rpm)} rpm ved ${say.number(current_a)} A og ${say.number(voltage_v, 1)} V`;
}

function batteryAt({ temp_c, charge }: StartingFindings["battery-frozen"], say: Say): string {
  return `batteriet på ${say.temp(temp_c)}, regnet som ${say.percent(charge)} ladet,`;
}

function aboveOrBelow(margin: number, say: Say): string {
  return `${say.difference(Math.abs(margin), 0)} ${margin < 0 ? "under" : "over"}`;
}

/** Two figures, without powers of ten. */
function brief(value: number, say: Say): string {
  const rounded = Number(value.toPrecision(2));
  return say.number(rounded, Math.max(0, 1 - Math.floor(Math.log10(rounded))));
}
