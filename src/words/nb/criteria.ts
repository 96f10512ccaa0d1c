import type { CriteriaFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

const WARM = {
  oil: "olje, gjennomvarm",
  bearings: "veivaksel og lagre, gjennomvarme",
  crankcase: "veivhus, gjennomvarmt",
  barrels: "sylindre og stempler, gjennomvarme",
  heads: "kaldeste sylindertopp, gjennomvarm",
} as const;

export const criteria: Phrases<CriteriaFindings> = {
  "criterion-oil": ({ in: place }) => (place === "tank" ? "olje i tanken" : "olje i bunnpannen"),
  "criterion-oil-why": () => "stiv olje når ikke fram til pumpen, og lagrene går tørre",
  "criterion-bearings": () => "veivaksel og lagre",
  "criterion-bearings-why": () =>
    "ingen måler viser dem; kalde lagre har stiv olje og, i et veivhus av aluminium, minst klaring",
  "criterion-crankcase": () => "veivhus",
  "criterion-crankcase-why": () => "oljekanaler og lagerseter ligger i det",
  "criterion-barrels": () => "sylindre og stempler",
  "criterion-barrels-why": () =>
    "stempler av aluminium vokser fortere enn kalde stålsylindre de første minuttene, og oljefilmen der gir mest motstand",
  "criterion-heads": () => "kaldeste sylindertopp",
  "criterion-heads-why": () =>
    "drivstoffet fordamper ikke på kalde topper, og pluggene rimer til etter et mislykket startforsøk",
  "criterion-oil-cooler": () => "oljekjøler, filter og slanger",
  "criterion-oil-cooler-why": () =>
    "stiv olje i kjøler, filter eller slanger holder igjen oljen som er varm i bunnpannen",
  "criterion-warm": ({ part }) => WARM[part],
  "criterion-warm-why": () =>
    "over produsentens grense kan motoren startes; gjennomvarm starter den lett og slites lite",
  "criterion-evenness": () => "forskjell mellom varmeste og kaldeste motordel",
  "criterion-evenness-why": () => "en halvvarm motor har varme målere og kalde lagre eller sylindre",
  "criterion-oil-maximum": () => "olje, varmeste",
  "criterion-oil-maximum-why": () => "varmere olje eldes og damper bort",
  "criterion-oil-film": () => "oljefilm ved den oppvarmede veggen",
  "criterion-oil-film-why": () => "tykk, kald olje mot en het vegg kokser lenge før resten av oljen er varm",
  "criterion-hub": () => "propellnav",
  "criterion-hub-why": () => "med stiv olje i navet lar propellen seg ikke regulere",
  "criterion-surface": ({ heater, element }, say) =>
    `overflaten på ${say.name(heater)}, ${say.name(element)}`,
  "criterion-surface-why": () =>
    "en overflate som er het nok til å svi olje, slange eller trekk, er brannfarlig; se på den, et tall er ikke nok",
  "criterion-oil-pump": () => "oljen renner til pumpen",
  "criterion-oil-pump-why": () =>
    "olje som ikke renner til pumpen, lar lagrene gå tørre, uansett hva måleren viser etterpå",
  "criterion-oil-crank": () => "oljefilmen er tynn nok til å dreie motoren",
  "criterion-oil-crank-why": () =>
    "det meste av motstanden i en kald motor ligger i oljefilmen mellom stempler og sylindre og i lagrene",
  "criterion-cranking-speed": () => "turtall på starteren",
  "criterion-cranking-speed-why": () =>
    "dreies motoren for sakte, suger den ikke blanding og stopper i kompresjonen; batteriet er tomt før den tenner",
  "criterion-tries": () => "startforsøk på 5 s som batteriet holder til",
  "criterion-tries-why": () =>
    "en kald motor starter sjelden på første forsøk, og et tomt batteri fryser snart i kulda",
  "criterion-battery": ({ kind }) =>
    kind === "lithium" ? "batteriet over utkoblingsgrensen" : "batteriet over frysepunktet",
  "criterion-battery-why": ({ kind, charge }, say) =>
    kind === "lithium"
      ? "batteripakken gir ingenting under utkoblingsgrensen"
      : `syren i et batteri som er ${say.percent(charge)} ladet, fryser; et frosset batteri kan sprekke når det belastes eller lades`,
  "criterion-battery-charge": () => "batteriet varmt nok til å lades",
  "criterion-battery-charge-why": ({ kind }, say) =>
    kind === "lithium"
      ? `lading under ${say.temp(0)} skader cellene, også lading fra dynamoen`
      : "et kaldere batteri tar nesten ikke lading: det en start bruker, kommer ikke tilbake",
  "criterion-fuel-vapour": () => "drivstoffdamp ved den kaldeste toppen",
  "criterion-fuel-vapour-why": () =>
    "selv luft som er mettet med dette drivstoffet, er for mager til å brenne: priming hjelper ikke, bare varme",
  "criterion-fuel-offered": () => "drivstoff som trengs, mot en varm start",
  "criterion-fuel-offered-why": () =>
    "mer priming enn det fyller innsuget før det fordamper: brann, sylindervegger vasket for olje, plugger som rimer til",
  "criterion-plugs": () => "kaldeste topp, for et nytt forsøk",
  "criterion-plugs-why": (_, say) =>
    `når motoren tenner og stopper i kulda, rimer pluggene til: ikke noe nytt forsøk under ${say.temp(0)}`,
  "criterion-bearing-clearance": () => "klaring i rammelagrene, indeks",
  "criterion-bearing-clearance-why": () =>
    "et veivhus av aluminium strammer om stålakselen når det kjølner, der oljen er tykkest",
  "criterion-piston-clearance": () => "plass for varme stempler, indeks",
  "criterion-piston-clearance-why": () =>
    "stemplene er varme innen et minutt og vokser fortere enn sylindre som ennå er kalde",
  "owners-limit": ({ maker }) =>
    maker === null ? "eierens strengere grense" : `eierens strengere grense; produsenten: ${maker}`,
};
