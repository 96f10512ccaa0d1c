import type { FirstScreenFindings, Label } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

const LABELS: Readonly<Record<Label, string>> = {
  "heat-on": "Varmen er på",
  "plug-in": "Strøm på",
  unplug: "Strøm av",
  after: "Deretter",
  chance: "Sjanse",
  weakest: "Svakeste punkt",
  stay: "Tilsyn",
  choice: "Du velger",
  "quarter-more": "15 min mer",
  best: "Best",
  why: "Hvorfor",
  "look-first": "Se etter først",
  "not-used": "Brukes ikke",
  "would-help": "Ville hjelpe",
  "ready-now": "Klart nå",
  engine: "Motoren",
  "cover-by": "Trekk på innen",
  lasts: "Det holder",
  run: "Kjør motoren",
  somebody: "Tilsyn",
  longest: "Lengst",
  "by-itself": "Av seg selv",
  "may-leave": "Kan ut",
  "brush-first": "Kost av først",
  "skin-clear": "Flaten fri",
  "gaps-thawed": "Spaltene tint",
  "freezes-again": "Fryser igjen",
  "somebody-must": "Noen må",
  tonight: "I natt",
  "warm-through": "Gjennomvarm",
  "costs-start": "En start koster",
  inside: "Innvendig",
  "more-money": "Mer penger",
  "not-advised": "Frarådes",
  "best-chance": "Beste sjanse",
  ready: "Klart",
  costs: "Koster",
  time: "Tid",
  heat: "Varme",
};

const ACTS = { "covers-off": "trekk av", "pull-out": "trekk ut flyet" } as const;

const ENGINE = {
  readings: "som lest av",
  air: "ingen har sagt det: regnet som like kald som luften (si når den ble stanset)",
} as const;
const COVER = { none: "", on: ", tildekket", off: ", ingenting på motordekselet" } as const;

const NO_RUN = {
  "no-return": "si når du er tilbake, så prøves kjøringer",
  "not-needed": "trengs ikke",
  covers: "trengs ikke med trekk på",
  unsure: "nei: det er ikke sikkert at den starter nå",
  "too-little": "ingen kjøring rekker så lenge",
} as const;

const DRY_LAST = {
  snow: "snø eller is som ikke er borte i tide",
  skin: "overflaten: smeltevannet på den tørker sist",
  gaps: "hengselspaltene: vannet i dem tørker sist",
} as const;

const NO_DEARER = {
  "no-price": "ikke kjent: prisen mangler",
  cases: "ikke noe dyrere utstyr her gjør flere tilfeller klare",
  winter: "ikke noe dyrere utstyr her er oftere klart eller koster mindre i vinteren",
} as const;

const RULES = {
  "outdoors-only": "en brenner skal aldri gå inne i en hangar (kullos, brann)",
  "engine-too-small": "for stor for denne motoren",
  rejected: "motorprodusentene avviser den",
  "longest-on": "står på over sin lengste tid",
  "always-on": "det har ingen slutt",
} as const;

const WHERE = { gaps: "spaltene", skin: "overflaten", "gaps-and-skin": "spalter og overflate" } as const;

export const firstScreen: Phrases<FirstScreenFindings> = {
  label: ({ of }) => LABELS[of],
  "verdict-plug-in": ({ at, unplug, start, chance, is_off_first }, say) =>
    `${is_off_first ? "Ta av strømmen nå: den har stått på for lenge. Sett den på igjen" : "Sett på strøm"} ${at === null ? "nå" : `klokken ${say.clock(at)}`}, ` +
    `ta den av ${say.clock(unplug)}, start ${say.clock(start)}. Sjanse ${say.odds(chance)}.`,
  "verdict-heat-on": ({ unplug, start, chance }, say) =>
    `Varmen er på. Ta av strømmen ${say.clock(unplug)}, start ${say.clock(start)}. Sjanse ${say.odds(chance)}.`,
  "verdict-no-heat": ({ start, chance }, say) =>
    `Start uten varme ${say.clock(start)}. Sjanse ${say.odds(chance)}.`,
  "verdict-not-required": ({ start, chance }, say) =>
    `Forvarming er ikke nødvendig. Start ${say.clock(start)}. Sjanse ${say.odds(chance)}.`,
  "verdict-not-ready": ({ start, chance, wanted }, say) =>
    `Ikke klart ${say.clock(start)}: i beste fall ${say.odds(chance)}, ønsket ${say.odds(wanted)}.`,
  "verdict-look-first": ({ what }, say) => `Se etter først. ${what.map(say.finding).join(" ")}`,
  "heat-on-for": ({ on_h, longest_on_h, wet_h, next, at }, say) => {
    const on =
      on_h === null
        ? "ukjent hvor lenge"
        : `har stått på i ${say.span(on_h)}, høyst ${say.span(longest_on_h)} i strekk`;
    const wet = wet_h === null ? "" : `, vått eller rimet innvendig i ${say.span(wet_h)}`;
    const then = {
      stays: `blir stående på til ${say.clock(at)}`,
      off: "av nå",
      "off-then-on": `av nå, på igjen ${say.clock(at)}`,
    };
    return `${on}${wet}; ${then[next]}`;
  },
  "plug-in-none": ({ is_required }) => (is_required ? "uten varme" : "ikke nødvendig"),
  "plug-in-latest": ({ at, aim }, say) =>
    `senest ${say.clock(at)}, for ${aim === "least" ? "det minste produsenten krever" : "en gjennomvarm motor"}`,
  "unplug-at": ({ at, minutes }, say) => `${say.clock(at)}, ${minutes} min før start`,
  "then-start": ({ acts, at, within_min, stays_h }, say) => {
    const left =
      stays_h === null
        ? `start innen ${say.left(within_min)}`
        : `det holder seg klart i ${say.span(stays_h)} og mer`;
    return acts.length === 0 ? left : `${acts.map((act) => ACTS[act]).join(", ")} ${say.clock(at)}, ${left}`;
  },
  "chance-both": ({ start, warm, is_put_right_first }, say) =>
    `${is_put_right_first ? "når det er ordnet: " : ""}${say.odds(start)} for at det kan startes, ${say.odds(warm)} gjennomvarm`,
  "weakest-point": ({ criterion, value, worst, limit, direction }, say) => {
    const [worse, sign] =
      direction === "at-most"
        ? ["mer", "høyst"]
        : [{ rpm: "langsommere", c: "kaldere" }[value.unit as string] ?? "mindre", "minst"];
    return `${say.finding(criterion)}: ${say.measure(value)}, 1 av 20 ${worse} enn ${say.measure(worst)}; ${sign} ${say.measure(limit)}`;
  },
  "stay-with": ({ attended, is_heated }, say) =>
    attended.length > 0
      ? `noen må være der hele tiden: ${attended.map(say.name).join(", ")}`
      : `ingen trenger å bli hos det${is_heated ? "; se til det én gang mens det varmes" : ""}`,
  "line-of-two": ({ line, reached, plug_in, chance, energy_kwh, is_planned }, say) => {
    const name = line === "least" ? "det minste" : "gjennomvarm";
    const how =
      plug_in === null ? (reached ? "uten varme" : "ikke uten varme") : `strøm på ${say.clock(plug_in)}`;
    const kwh = plug_in === null ? "" : `, ${say.number(energy_kwh, 1)}\u00a0kWh`;
    return `${name}: ${how}, ${reached ? "" : "i beste fall "}${say.odds(chance)}${kwh}${is_planned ? " (planlagt)" : ""}`;
  },
  "best-plug-in": ({ at }, say) => `strøm på ${at === null ? "nå" : say.clock(at)}`,
  "best-without": ({ stays_on, least_on_min }) =>
    stays_on
      ? "la varmen stå på"
      : least_on_min === null
        ? "ingen varme kan brukes"
        : `for sent til å varme i ${least_on_min} min og gjøre kontrollene`,
  "heater-basis": (basis, say) => {
    if (basis.kind === "estimated") return "anslått";
    if (basis.kind === "scaled") return `skalert fra ${say.name(basis.from)}`;
    return `målt i ${basis.runs} ${basis.runs === 1 ? "kjøring" : "kjøringer"}`;
  },
  "barred-heater": ({ heater, reason }, say) =>
    `${say.name(heater)}: ${reason === "indoors" ? "en brenner skal aldri gå inne i en hangar (kullos, brann)" : "for mye varme for en så liten motor"}`,
  "would-help": ({ remedy, chance, plug_in, attended }, say) =>
    `${say.finding(remedy)}: ${say.odds(chance)}${plug_in === null ? "" : `, strøm på ${say.clock(plug_in)}`}${attended ? "; noen må være der" : ""}`,
  "nothing-helps": ({ tried }) => `ingenting av det som ble prøvd${tried === null ? "" : ` (${tried} ting)`}`,
  "being-worked-out": () => "regner …",
  "verdict-away": ({ is_ready, back, covered, uncovered, is_covered }, say) => {
    const chances =
      covered === null
        ? `${say.odds(uncovered)} for at det starter`
        : `${say.odds(covered)} for at det starter med trekk ${is_covered ? "fortsatt på" : "på nå"}, ${say.odds(uncovered)} uten`;
    return `${is_ready ? "Klart" : "Ikke klart"} når du er tilbake klokken ${say.clock(back)}: ${chances}.`;
  },
  "verdict-away-now": ({ is_ready, chance, beside }, say) =>
    is_ready
      ? `Klart nå: ${say.odds(chance)} for at det starter. Det holder ${say.finding(beside)}.`
      : `Ikke klart nå: ${say.odds(chance)} for at det starter; svakeste punkt: ${say.finding(beside)}.`,
  "ready-yes-no": ({ is_ready, chance }, say) => `${is_ready ? "ja" : "nei"}, ${say.odds(chance)}`,
  "engine-from": ({ from, shut_down_h_ago, cover }, say) => {
    const shutDown =
      shut_down_h_ago === 0
        ? "nettopp stanset, etter marsjflyging"
        : `stanset for ${say.span(shut_down_h_ago)} siden, etter marsjflyging`;
    return (from === "shut-down" ? shutDown : ENGINE[from]) + COVER[cover];
  },
  "cover-on-by": ({ how, by, off_before_min, chance, is_covered }, say) => {
    const off = `, av ${off_before_min} min før start`;
    switch (how) {
      case "none":
        return "ikke noe trekk i utstyret";
      case "on-already":
        return "ligger på";
      case "at-once":
        return "nå: det kjølner fortest i begynnelsen";
      case "not-needed":
        return "trengs ikke, men hjelper likevel";
      case "by":
        if (is_covered) return `ligger på${off}: ${say.odds(chance)}`;
        return `${by === null ? "nå" : `senest ${say.clock(by)}`}${off}`;
      case "between-runs":
        return `${is_covered ? "ligger på" : "nå"}, og på igjen etter hver kjøring`;
      case "too-little":
        return `ikke nok: ${say.odds(chance)} med trekk ${is_covered ? "fortsatt på" : "på nå"}`;
    }
  },
  "it-lasts": ({ covered, uncovered, chance }, say) => {
    const lasting = ({ sure_h, is_over }: typeof uncovered) =>
      sure_h <= 0 ? "ingen tid" : `${is_over ? "over " : ""}${say.span(sure_h)}`;
    const both =
      covered === null ? lasting(uncovered) : `${lasting(covered)} med trekk, ${lasting(uncovered)} uten`;
    return `${both}, med en sjanse på ${say.odds(chance)}`;
  },
  "run-none": ({ why }) => NO_RUN[why],
  "run-engine": ({ starts, from, run_h, is_covered, chance }, say) => {
    const clocks = starts.map((start) => say.clock(start));
    const last = clocks[clocks.length - 1]!;
    const when =
      clocks.length > 1
        ? `${clocks.length} ganger ${say.span(run_h)}, klokken ${say.list(clocks)}`
        : from === null || say.clock(from) === last
          ? `${say.span(run_h)} klokken ${last}`
          : `${say.span(run_h)}, startet mellom ${say.clock(from)} og ${last}`;
    return `${when}${is_covered ? ", med trekk på imellom" : ""}: ${say.odds(chance)}`;
  },
  "covers-on-by": ({ by, chance }, say) =>
    `trekk på ${by === null ? "nå" : `senest ${say.clock(by)}`}: ${say.odds(chance)}`,
  "weakest-chance": ({ criterion, chance, when }, say) =>
    `${say.finding(criterion)}: ${say.odds(chance)} ${when === "now" ? "nå" : when === "return" ? "når du er tilbake" : "når du er tilbake, med trekk på"}`,
  "at-controls": ({ is_run }) =>
    is_run ? "noen må sitte ved spakene mens motoren går" : "ingen trenger å bli igjen",
  "longest-away": ({ back, is_covered, runs, run_h }, say) => {
    if (back === null) return "bare nå: ingenting her holder det klart";
    const how = [
      ...(is_covered ? ["trekk på nå"] : []),
      ...(runs === 0 ? [] : [`${runs} ${runs === 1 ? "kjøring" : "kjøringer"} på ${say.span(run_h)}`]),
    ];
    return `tilbake innen ${say.clock(back)}${how.length === 0 ? "" : `, med ${say.list(how)}`}; senere er det ingenting her som holder det klart`;
  },
  "ready-by-itself": ({ at, looked_h }, say) =>
    at === null
      ? `ikke i de ${say.span(looked_h)} som er regnet ut`
      : `${say.clock(at)}, når luften blir mildere`,
  "verdict-leave": ({ at, clear, dry, may }, say) => {
    if (may)
      return `Kan ut klokken ${say.clock(at)}: tørt i ${say.counted(dry)} tilfeller. Se og kjenn etter likevel.`;
    const ice = clear === null ? "" : `fritt for snø og is i ${say.counted(clear)} tilfeller, `;
    return `Skal ikke ut klokken ${say.clock(at)}: ${ice}tørt i ${say.counted(dry)}${clear === null ? " tilfeller" : ""}.`;
  },
  "verdict-leave-from": ({ at }, say) =>
    `Kan ut fra klokken ${say.clock(at)}: tørt i 19 av 20 tilfeller. Se og kjenn etter likevel.`,
  "verdict-not-dry": ({ horizon_h, dry }, say) =>
    `Blir kanskje ikke tørt på ${say.span(horizon_h)}: tørt innen da i ${say.counted(dry)} tilfeller.`,
  "leave-from": ({ at, half, horizon_h }, say) => {
    const from = at === null ? `ikke innen ${say.span(horizon_h)}` : `ikke før ${say.clock(at)}`;
    const cases =
      at === null || half === null ? "" : ` (halvparten av tilfellene er tørre innen ${say.clock(half)})`;
    return `${from}${cases}; beveg først hvert ror og trimmen til stopp, og igjen før avgang`;
  },
  "dry-last": ({ what }) => DRY_LAST[what],
  "brush-off": ({ loose_kg_per_m2: loose, snow_kg_per_m2: snow }, say) => {
    if (loose > 0)
      return `ja: ${say.number(loose, 2)} av ${say.number(snow, 2)}\u00a0kg/m² kan kostes av, ute`;
    return snow > 0 ? "mer kan ikke kostes av; resten må smelte" : "ingen snø på det";
  },
  "was-tried": ({ what, chance }, say) => `${say.finding(what)}: ${say.counted(chance)}`,
  "longer-stay": ({ hours }, say) => `et opphold på ${say.needed(hours)}`,
  "no-longer-stay": ({ longest_h }, say) =>
    `et lengre opphold: ikke sikkert tørt selv etter ${say.span(longest_h)}`,
  "into-mild-air": ({ at }, say) => `ut i mild luft ${say.clock(at)}`,
  "no-mild-air": ({ until }, say) => `ingen mild luft ute innen ${say.clock(until)}`,
  "clear-then-dry": ({ clear, dry }, say) => {
    const surely = ({ at, horizon_h, ...counted }: typeof clear) =>
      at === null
        ? `i ${say.counted(counted)} tilfeller innen ${say.span(horizon_h)}`
        : `innen ${say.clock(at)}`;
    return `${surely(clear)}; tørt ${surely(dry)}`;
  },
  "freezes-again": ({ where, is_snow_left, is_wettest, outside, climb, melts_what_falls }, say) => {
    const falls = melts_what_falls ? "; det som faller, smelter på den varme overflaten og fryser fast" : "";
    if (where === null)
      return `${is_snow_left ? "det er fortsatt snø eller is på det: det skal ikke fly" : "ikke ventet, selv i de våteste tilfellene: se og kjenn etter"}${falls}`;
    const risk = (counted: typeof outside) => (counted.share === 0 ? "nei" : say.risk(counted));
    const up = climb === null ? "" : `, i stigningen ${risk(climb)}`;
    return `${WHERE[where]}${is_wettest ? " i de våteste tilfellene" : ""}: ute ${risk(outside)}${up}${falls}`;
  },
  "work-by-hand": ({ brush, wipe }) =>
    `${[...(brush ? ["koste av snø"] : []), ...(wipe ? ["tørke av"] : []), "blåse ut spaltene"].join(", ")}; kjenne over alt med bar hånd før avgang`,
  "verdict-kit": ({ kit, chance, cold, attended }, say) =>
    `${kit}: klart i ${say.odds(chance)} tilfeller ned til ${say.cold(cold)}; ${attended ? "noen må være der" : "ingen trenger å være der"}.`,
  "verdict-colder": ({ kit, cold, attended }, say) =>
    `${kit} rekker til ${cold === null ? "ingen av tilfellene" : say.cold(cold)}${attended ? ", men noen må være der" : ""}.`,
  "verdict-no-kit": ({ chance }, say) =>
    `Ikke noe av dette utstyret gjør det klart i ${say.odds(chance)} tilfeller og kan anbefales.`,
  "kit-tonight": ({ status, plug_in, unplug, start, chance }, say) => {
    const at = say.clock(start);
    if (status === "not-reachable") return `ikke klart ${at}: i beste fall ${say.odds(chance)}`;
    const begin = `start ${at}, sjanse ${say.odds(chance)}${status === "look-first" ? "; se etter først" : ""}`;
    if (plug_in !== null) return `strøm på ${say.clock(plug_in)}, av ${say.clock(unplug)}, ${begin}`;
    return status === "not-required" ? `varme er ikke nødvendig; ${begin}` : begin;
  },
  "kit-lead": ({ lead_h, cold }, say) =>
    lead_h === null
      ? `ikke nødvendig ned til ${say.cold(cold)}`
      : `${say.needed(lead_h)} før start ved ${say.cold(cold)}`,
  "kit-warm": ({ cold }, say) =>
    cold === null
      ? "i ingen av tilfellene; bare det minste produsenten krever"
      : `${say.cold(cold)} og mildere; kaldere bare det minste produsenten krever`,
  "kit-costs": ({ all, energy_kwh, energy, attended_h, attended, attended_per_h, currency, cold }, say) => {
    const time =
      attended_h === 0
        ? "ingen må være der"
        : `${say.span(attended_h)} tilsyn ${say.money({ amount: attended, currency }, 2)} (${say.money({ amount: attended_per_h, currency })} i timen)`;
    const heat = `${say.number(energy_kwh, 1)}\u00a0kWh${energy === null ? "" : ` ${say.money({ amount: energy, currency }, 2)}`}`;
    return `${all === null ? "" : `${say.money({ amount: all, currency }, 2)} `}ved ${say.cold(cold)}: ${heat}, ${time}`;
  },
  "kit-inside": ({ wet_h }, say) =>
    `${say.number(wet_h, 1)} t vått eller rimet før den starten (bare til sammenligning)`,
  "kit-weakest": ({ criterion, cold, chance }, say) =>
    `${say.finding(criterion)}: ved ${say.cold(cold)} klart i ${say.odds(chance)}`,
  "kit-best-chance": ({ kit, chance, cold, criterion }, say) =>
    `${kit}: ${say.odds(chance)} ved ${say.cold(cold)}, svakeste punkt ${say.finding(criterion)}`,
  "dearer-none": ({ why }) => NO_DEARER[why],
  "dearer-kit": ({ kit, extra, cold, attended }, say) =>
    `${kit}, ${say.money(extra)} mer, rekker til ${cold === null ? "ingen av tilfellene" : say.cold(cold)}${attended ? ", men noen må være der" : ""}`,
  "kit-not-advised": ({ kit, rule }) => `${kit}: ${RULES[rule]}`,
  "more-not-advised": ({ kits }) => `${kits} til`,
  "verdict-winter": ({ kit, habit, ready, wanted, cost, heat_kwh, attended_h }, say) => {
    const short = wanted === null ? "" : `, ikke de ønskede ${say.odds(wanted)}`;
    const winter = cost === null ? `${say.brief(heat_kwh)}\u00a0kWh` : say.money(cost);
    const stay = attended_h === null ? "" : `; noen må være der, ${say.brief(attended_h)} t`;
    return `${kit}, ${say.finding(habit)}: klart til ${say.odds(ready)} avganger${short}, ${winter} i vinteren${stay}.`;
  },
  "verdict-other-kit": ({ kit, ready, cost, attended_h }, say) => {
    const time = attended_h === null ? "" : `, men krever ${say.brief(attended_h)} t tilsyn`;
    return `${kit}: ${say.odds(ready)}${cost === null ? "" : `, ${say.money(cost)}`}${time}.`;
  },
  "verdict-no-habit": () => "Ingen av disse måtene å bruke utstyret på kan anbefales.",
  "winter-ready": ({ least, warm }, say) =>
    `${say.odds(least)} avganger kan starte, ${say.odds(warm)} gjennomvarme`,
  "winter-costs": ({ all, heat, time, rest, currency }, say) =>
    `${say.money({ amount: all, currency })} i vinteren: varme ${say.number(heat)}, tilsyn ${say.number(time)}, tapte avganger og vedlikehold ${say.number(rest)}`,
  "winter-cost-unknown": () => "ikke regnet: en pris mangler",
  "winter-time": ({ attended_h, per_h }, say) =>
    `${say.brief(attended_h)} t der noen er til stede eller setter på strøm, ${say.money(per_h)} i timen`,
  "winter-heat": ({ heat_kwh, heater_h, longest_h, allowed_h }, say) =>
    `${say.brief(heat_kwh)}\u00a0kWh på ${say.brief(heater_h)} t, høyst ${say.brief(longest_h)} t i strekk${allowed_h === null ? "" : ` (${say.number(allowed_h)} t er tillatt)`}`,
  "winter-inside": ({ wet_h, frost_h }, say) =>
    `vått ${say.brief(wet_h)} t, rimet ${say.brief(frost_h)} t i vinteren (bare til sammenligning)`,
  "winter-weakest": ({ criterion, share }, say) =>
    `${say.finding(criterion)}, for kald ved ${say.odds(share)} avganger`,
  "winter-weakest-none": () => "ingen: ingenting hindret en start",
  "winter-always-on": ({ longest_h, allowed_h, alone_h, wet_h }, say) => {
    const over =
      allowed_h === null
        ? "det har ingen slutt"
        : `${say.brief(longest_h)} t i strekk, ${say.number(allowed_h)} t er tillatt`;
    const alone = alone_h === null ? "" : `; varm uten at noen er der ${say.brief(alone_h)} t`;
    return `alltid på: ${over}${alone}; vått innvendig ${say.brief(wet_h)} t`;
  },
  "dearer-winter": ({ kit, habit, extra, ready, cost }, say) =>
    `${kit}, ${say.finding(habit)}, ${say.money(extra)} mer: ${say.odds(ready)}${cost === null ? "" : `, ${say.money(cost)} i vinteren`}`,
};
