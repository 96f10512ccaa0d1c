import type { AirframeFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const airframe: Phrases<AirframeFindings> = {
  "panel-taken": ({ name, origin }) => `Panel: ${name} (${origin}).`,
  "gap-taken": ({ name, origin }) => `Gap: ${name} (${origin}).`,
  "wing-cover-taken": ({ origin }) => `Cover: ${origin}.`,
  "skin-at-air": () => "Skin at air temperature at the start.",
  "inside-as-skin": () => "Inside of the wing (fuel) as warm as the skin at the start.",
  "open-sky": () => "Open sky, nothing above the wing.",
  "ground-at-air": () => "Ground under the wing at air temperature.",
  "no-sun-or-snowfall": () => "No sunshine, snowfall, freezing rain or drifting fog counted.",
  "outside-constant-door-shut": () => "Air outside constant; hangar air well mixed; door shut after roll-in.",
  "hangar-damp-as-outside": () => "Hangar air holds the outside's moisture at the start.",
  "no-fan": (_, say) => `No fan: draughts of ${say.wind(0.1, 1)}.`,
  "melt-water-swept": () => "Melt water swept out at once.",
  "melt-water-stays": () => "Melt water stays on the floor and evaporates.",
  "weather-constant-no-sun": () => "Weather outside constant; no sunshine counted.",
  "fittings-as-skin": () => "Fittings as warm as the skin at roll-out.",
  "standard-lapse": () => "The air cools with height as in the standard atmosphere (ISO 2533), no inversion.",
  "climb-damp-no-cloud": (_, say) =>
    `Climb: air as damp as it can be, no cloud or rain caught, no warming by airspeed (about ${say.difference(1, 0)} at ${say.wind(55)}).`,
  "no-supercooling": (_, say) => `Water freezes at ${say.temp(0)}: no supercooling, no de-icing fluid in it.`,
  "brush-snow": () => "loose snow brushed off first",
  "wipe-skin": () => "skin wiped with cloths",
  "blow-gaps": () => "gaps blown out once thawed",
  "sweep-floor": () => "floor swept dry",
  "run-fan": ({ speed_mps }, say) => `a fan, ${say.wind(speed_mps)} over it`,
  "warm-hangar": ({ set_c, more_kw }, say) =>
    `hangar air at ${say.temp(set_c)} from roll-in on${more_kw === null ? "" : `, ${say.number(more_kw)} kW of heat`}, electric or with a flue`,
  "by-hand": ({ changes }, say) => changes.map(say.finding).join(" and "),
  together: ({ changes }, say) =>
    `everything together${changes.length === 0 ? "" : `: ${changes.map(say.finding).join(", ")}`}`,
};
