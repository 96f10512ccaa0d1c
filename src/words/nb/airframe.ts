import type { AirframeFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const airframe: Phrases<AirframeFindings> = {
  "panel-taken": ({ name, origin }, say) => `Felt: ${say.name(name)} (${origin}).`,
  "gap-taken": ({ name, origin }, say) => `Spalte: ${say.name(name)} (${origin}).`,
  "wing-cover-taken": ({ origin }) => `Trekk: ${origin}.`,
  "skin-at-air": () => "Overflaten har lufttemperatur ved start.",
  "inside-as-skin": () => "Det indre av vingen (drivstoff) er like varmt som overflaten ved start.",
  "open-sky": () => "Åpen himmel, ingenting over vingen.",
  "ground-at-air": () => "Bakken under vingen har lufttemperatur.",
  "no-sun-or-snowfall": () => "Sol, snøfall, underkjølt regn og drivende tåke er ikke regnet med.",
  "outside-constant-door-shut": () =>
    "Uteluften er jevn, luften i hangaren godt blandet, og porten lukkes når flyet er inne.",
  "hangar-damp-as-outside": () => "Luften i hangaren er ved start like fuktig som ute.",
  "no-fan": (_, say) => `Ingen vifte: trekk på ${say.wind(0.1, 1)}.`,
  "melt-water-swept": () => "Smeltevannet kostes ut med en gang.",
  "melt-water-stays": () => "Smeltevannet blir liggende på gulvet og fordamper.",
  "weather-constant-no-sun": () => "Været ute er jevnt; sol er ikke regnet med.",
  "fittings-as-skin": () => "Beslag er like varme som overflaten ved uttrilling.",
  "standard-lapse": () =>
    "Luften blir kaldere med høyden som i standardatmosfæren (ISO 2533), uten inversjon.",
  "climb-damp-no-cloud": (_, say) =>
    `Stigning: luften er så fuktig som den kan bli, ingen sky eller regn fanges, ingen oppvarming av farten (omtrent ${say.difference(1, 0)} ved ${say.wind(55)}).`,
  "no-supercooling": (_, say) =>
    `Vann fryser ved ${say.temp(0)}: ingen underkjøling, ingen avisingsvæske i det.`,
  "brush-snow": () => "løs snø kostes av først",
  "wipe-skin": () => "overflaten tørkes med kluter",
  "blow-gaps": () => "spaltene blåses ut når de er tint",
  "sweep-floor": () => "gulvet kostes tørt",
  "run-fan": ({ speed_mps }, say) => `en vifte, ${say.wind(speed_mps)} over flyet`,
  "warm-hangar": ({ set_c, more_kw }, say) =>
    `hangarluft på ${say.temp(set_c)} fra flyet er inne${more_kw === null ? "" : `, ${say.number(more_kw)} kW varme`}, elektrisk eller med avtrekk`,
  "by-hand": ({ changes }, say) => changes.map(say.finding).join(" og "),
  together: ({ changes }, say) =>
    `alt sammen${changes.length === 0 ? "" : `: ${changes.map(say.finding).join(", ")}`}`,
};
