import type { WinterFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const winter: Phrases<WinterFindings> = {
  "rule-outdoors-only": ({ heater }) => `${heater}: a burner never runs in a hangar (carbon monoxide, fire).`,
  "rule-engine-too-small": ({ heater, least_l, engine_l }, say) =>
    `${heater}: for engines of ${say.number(least_l, 1)} l or more, this one has ${say.number(engine_l, 1)} l.`,
  "rule-longest-on": ({ heater, on_h, longest_on_h }, say) =>
    `${heater}: ${say.number(on_h)} h in one go, ${say.number(longest_on_h)} h allowed.`,
  "rule-always-on": () =>
    "Always on has no end: a flight that falls away leaves it on beyond its longest time, and a heater that nobody watches must go off.",
  "habit-always-on": () => "always on",
  "habit-clock": ({ lead_h }) => `always ${lead_h} h before`,
  "habit-daily": ({ from, until }) => `daily ${from}-${until}`,
  "habit-planned": ({ chance }, say) =>
    `as planned${chance === null ? "" : `, ${say.number(100 * chance)} of 100`}`,
  "no-heater-to-switch": () => "no heater to switch",
  "heater-attended": ({ heater }) => `somebody must stand by ${heater} all the time it runs`,
  "times-need-timer": () => "set times need a timer",
  "least-over-longest": () => "its heaters' shortest time on is over their longest",
  "heats-too-short": ({ least_on_h }) => `heats less than the ${least_on_h} h that the heater is on at least`,
  "winter-flown-warm": () =>
    "Those ready at a departure fly and stand there again warm through; the others stay, and are heated for the next departure.",
  "winter-lead-table": () =>
    "A plan takes its lead from a table by the forecast's mean air and wind of the twelve hours before departure, as if cold-soaked: soon after a flight it heats longer than needed.",
  "winter-aims": () =>
    "Plans aim at warm through where the kit reaches it with the wanted chance, else at the least that the maker asks for; ready counts the least.",
  "winter-time-counted": () =>
    "Somebody's time is the whole time that an attended heater runs and the pause after it; by hand 10 min for each time on (project judgement).",
  "winter-wet-counted": (_, say) =>
    `Wet hours are those of the middle aircraft. ISO 9223 counts hours above 80 % humidity and ${say.temp(0)} for open-air sheet; frost counts here too, ` +
    "for it becomes water at the start. Inside a case, under oil films and acid traces, the count only ranks one habit against " +
    "another. Areas, breather and oil are estimates: take the water as good to a factor of three.",
  "winter-by-hand": ({ kits }) =>
    `By hand (${kits.join(", ")}) it is plugged in at the last moment before a habit's time when somebody is there: for an early departure that is the evening before, whatever lead the habit names.`,
  "always-on-compared": ({ heater, longest_on_h }) =>
    `Always on is compared, not advised: ${heater} may be on for ${longest_on_h} h in one go, and a heater that nobody watches must go off.`,
};
