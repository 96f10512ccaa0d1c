import type { ProbePlace } from "./log.js";

/** What words in a column's name say of it. */
export type NameGuess =
  | { readonly kind: "place"; readonly place: ProbePlace }
  | {
      readonly kind: "ambiguous";
      readonly guesses: readonly ProbePlace[];
      /** One of several cylinders: where all are logged, they are taken together. */
      readonly isNumbered: boolean;
    }
  | { readonly kind: "signal"; readonly signal: EngineSignal }
  | { readonly kind: "other-quantity"; readonly word: string }
  | { readonly kind: "unknown" };

/** What tells whether the engine runs. */
export type EngineSignal = "rpm" | "fuel-flow" | "egt";

interface Rule {
  readonly place: ProbePlace;
  readonly words: readonly string[];
  /** A second word that must stand beside one of the first: the rule then goes before those of one word. */
  readonly beside?: readonly string[];
}

const part = (name: string): ProbePlace => ({ part: name });

const OIL = ["oil", "oilt", "oel", "ol", "olje", "olja", "oljy", "huile", "aceite", "olio"];
const HEAD = [
  "cht",
  "head",
  "heads",
  "kopf",
  "zylinderkopf",
  "topp",
  "topplokk",
  "toppen",
  "culasse",
  "culata",
];
const CYLINDER = ["cylinder", "cylinders", "cyl", "barrel", "barrels", "zylinder", "sylinder", "cylindre"];
const CRANK = [
  "crank",
  "crankshaft",
  "bearing",
  "bearings",
  "journal",
  "kurbelwelle",
  "veivaksel",
  "vevaxel",
  "vilebrequin",
];
const CASE = ["crankcase", "case", "casing", "kurbelgehause", "gehause", "veivhus", "vevhus", "carter"];
const COWL = ["cowl", "cowling", "motorraum", "motorrom", "haube", "capot"];
const HEATER = [
  "pad",
  "heater",
  "element",
  "heizmatte",
  "heizung",
  "varmer",
  "varmematte",
  "varmare",
  "chauffage",
];

/**
 * Words of the trade, their usual short forms, and the same in a few languages of cold countries (from memory), with
 * accents taken off. Words that fit several places are left out: a question is better than a wrong guess.
 */
const RULES: readonly Rule[] = [
  { place: part("oil"), words: OIL },
  { place: part("sump"), words: ["sump", "olwanne", "oelwanne", "bunnpanne", "oljetrag"] },
  { place: part("heads"), words: HEAD },
  { place: part("heads"), words: HEAD, beside: CYLINDER },
  {
    place: part("heads_front"),
    words: HEAD,
    beside: ["front", "fwd", "forward", "vorn", "vorne", "fremre", "framre", "avant"],
  },
  { place: part("heads_rear"), words: HEAD, beside: ["rear", "aft", "hinten", "bakre", "bak", "arriere"] },
  { place: part("barrels"), words: CYLINDER },
  { place: part("crankcase"), words: CASE },
  { place: part("crankcase"), words: ["crank"], beside: ["case"] },
  { place: part("crankshaft"), words: CRANK },
  { place: part("battery"), words: ["battery", "batt", "bat", "akku", "batterie", "batteri", "bateria"] },
  {
    place: "outside-air",
    words: ["ambient", "oat", "outside", "outdoor", "outdoors", "aussen", "ute", "exterieur", "ulko"],
  },
  { place: "hangar-air", words: ["hangar", "halle", "indoor", "indoors"] },
  { place: part("cowl_air"), words: COWL },
  { place: part("cowl_skin"), words: COWL, beside: ["skin", "metal", "surface", "outer"] },
  { place: part("heater_surface"), words: HEATER },
  { place: part("heater_surface"), words: HEATER, beside: ["surface", "skin", "centre", "center"] },
  { place: part("accessories"), words: ["accessory", "accessories", "magneto", "alternator", "starter"] },
  { place: part("hub"), words: ["hub", "prop", "propeller", "spinner", "nabe", "helice"] },
  {
    place: part("coolant"),
    words: ["coolant", "water", "glycol", "wasser", "kuhlwasser", "kjolevann", "kylvatten"],
  },
];

/** Words of other quantities that loggers keep beside temperatures. */
const OTHER_QUANTITIES = new Set(
  (
    "humidity rh wind speed spd gs tas ias kts kt volt volts voltage bus amp amps current watt watts power hp kwh energy " +
    "pressure press p psi hpa mbar inhg oilp map fuel qty gal litres lat latitude lon longitude alt altitude baro hdg " +
    "heading track trk crs pitch roll vspd vs dew dewpoint rssi signal status state event alarm feuchte spannung strom " +
    "leistung druck fukt spenning spanning effekt trykk tryck iat cdt tit turbine"
  ).split(" "),
);

/** Words of what tells that the engine runs; the exhaust is too hot to be a part that cools with the engine. */
const SIGNALS: Readonly<Record<EngineSignal, readonly string[]>> = {
  rpm: ["rpm", "tach", "revs", "drehzahl", "turtall", "varvtal", "tours"],
  "fuel-flow": ["ff", "fflow", "flow", "durchfluss"],
  egt: ["egt", "exhaust", "abgas", "eksos", "echappement"],
};

/**
 * The engine that a column's name tells, with that taken off: "E1 CHT2" and "CHT2 (L)" are of engine 1, left, or 2, right.
 * @example engineOfName("R OIL TEMP") // { engine: 2, rest: " OIL TEMP" }
 */
export function engineOfName(name: string): { readonly engine?: 1 | 2; readonly rest: string } {
  for (const [engine, pattern] of ENGINES) {
    const rest = name.replace(pattern, " ");
    if (rest !== name) return { engine, rest };
  }
  return { rest: name };
}

const ENGINES = [
  [
    1,
    /(?:^|[^a-z0-9])(?:e|eng|engine|motor)[ _.#-]?1(?![0-9])|(?:^|[^a-z])(?:l|left|links|venstre)(?![a-z])/i,
  ],
  [
    2,
    /(?:^|[^a-z0-9])(?:e|eng|engine|motor)[ _.#-]?2(?![0-9])|(?:^|[^a-z])(?:r|right|rechts|hoyre)(?![a-z])/i,
  ],
] as const;

/** Guesses what a column is from its name. A numbered head or cylinder may be front or rear, so that is asked. */
export function guessOfName(name: string): NameGuess {
  const words = wordsOf(name);
  const signal = Object.entries(SIGNALS).find(([, of]) => words.some((word) => of.includes(word)));
  if (signal !== undefined) return { kind: "signal", signal: signal[0] as EngineSignal };
  const other = words.find((word) => OTHER_QUANTITIES.has(word));
  if (other !== undefined) return { kind: "other-quantity", word: other };
  const matching = RULES.filter(
    ({ words: first, beside }) =>
      words.some((word) => first.includes(word)) &&
      (beside === undefined || words.some((word) => beside.includes(word))),
  );
  const closer = matching.filter(({ beside }) => beside !== undefined);
  const places = distinct((closer.length > 0 ? closer : matching).map(({ place }) => place));
  if (places.length === 0) return { kind: "unknown" };
  if (places.length > 1) return { kind: "ambiguous", guesses: places, isNumbered: false };
  const [place] = places;
  const numbered = words.some((word) => /^\d$/.test(word));
  if (numbered && typeof place === "object" && (place.part === "heads" || place.part === "barrels")) {
    const guesses = [place, part("heads_front"), part("heads_rear")];
    return { kind: "ambiguous", guesses, isNumbered: true };
  }
  return { kind: "place", place };
}

/** Words of a name in small letters without accents: "CHT1 Öltemp" gives cht, 1, ol; "temperature" says nothing. */
export function wordsOf(name: string): readonly string[] {
  return name
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .replaceAll("ø", "o")
    .replaceAll("æ", "ae")
    .replaceAll("ß", "ss")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/temp(?:erat[a-z]*)?/g, " ")
    .split(/[^a-z0-9]+|(?<=[a-z])(?=\d)|(?<=\d)(?=[a-z])/)
    .filter((word) => word !== "");
}

function distinct(places: readonly ProbePlace[]): readonly ProbePlace[] {
  const seen = new Map(places.map((place) => [JSON.stringify(place), place]));
  return [...seen.values()];
}
