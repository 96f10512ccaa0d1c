import type { BaseMoment, BasePlanFindings, Finding } from "../../findings/index.js";
import type { Phrases, Say } from "../phrases.js";

const when = ({ time, within_day }: BaseMoment, say: Say) =>
  within_day ? say.clock(time) : say.dayAndClock(time);

const span = ({ from, to }: { from: BaseMoment; to: BaseMoment }, say: Say) =>
  `from ${when(from, say)} to ${when(to, say)}`;

const causesOf = (causes: readonly Finding[], say: Say) => causes.map(say.finding).join(", and ");

const have = (holders: readonly string[], say: Say) =>
  `because ${say.list(holders)} ${holders.length === 1 ? "has" : "have"}`;

export const basePlan: Phrases<BasePlanFindings> = {
  "base-unsure": ({ missed }, say) =>
    `not sure enough: ${missed.map(({ aircraft, at }) => `${aircraft} at ${when(at, say)}`).join(", ")}`,
  "base-too-hot": ({ aircraft, at, criterion }, say) =>
    `${aircraft} is not ready for ${when(at, say)}: ${say.finding(criterion)} would get too hot.`,
  "base-held-off": ({ aircraft, at, causes }, say) =>
    `${aircraft} is not ready for ${when(at, say)} ${causesOf(causes, say)}.`,
  "base-no-heater": ({ aircraft, at }, say) =>
    `${aircraft} is not ready for ${when(at, say)}: it has no heater to use.`,
  "base-short": ({ aircraft, at, chance, criterion }, say) =>
    `${aircraft} is not ready for ${when(at, say)}: its own heat is not enough, even with the base to itself: at best ${say.odds(chance)}. Weakest point: ${say.finding(criterion)}.`,
  "base-even-less": ({ chance, causes }, say) => `Now ${say.odds(chance)}, ${causesOf(causes, say)}.`,
  "base-not-required": ({ aircraft }) => `${aircraft}: heat is not required.`,
  "base-hangar-warm": ({ aircraft }) => `${aircraft} is warm enough in the hangar, without its heater.`,
  "base-unhindered": ({ aircraft }) =>
    `${aircraft} does what it would do with the base to itself; nobody is in its way.`,
  "base-no-dearer": ({ aircraft, from }, say) =>
    `${aircraft} is heated from ${when(from, say)}, which costs it no more than what it would do with the base to itself.`,
  "base-does": ({ doing, causes }, say) => `${say.finding(doing)} ${causesOf(causes, say)}.`,
  "does-go-in": ({ aircraft, at }, say) => `${aircraft} goes into the hangar at ${when(at, say)}`,
  "does-come-out": ({ aircraft, at }, say) => `${aircraft} leaves the hangar at ${when(at, say)}`,
  "does-turns": ({ aircraft }) => `${aircraft} is heated in turns`,
  "does-nothing": ({ aircraft }) => `${aircraft} stays as it is`,
  "does-heat-from": ({ aircraft, from }, say) => `${aircraft} is heated from ${when(from, say)}`,
  "does-wait": ({ aircraft, until }, say) => `${aircraft} waits until ${when(until, say)}`,
  "does-heat-early": ({ aircraft, from, until }, say) =>
    `${aircraft} is heated already from ${when(from, say)}${until === null ? "" : `, until ${when(until, say)},`}`,
  "does-heat": ({ aircraft, ...times }, say) => `${aircraft} is heated ${span(times, say)}`,
  "because-outlet": ({ circuit, outlets, holders, ...times }, say) => {
    if (holders.length === 0) return `because ${circuit} has no outlet`;
    const what = outlets === 1 ? `the outlet of ${circuit}` : `the ${outlets} outlets of ${circuit}`;
    return `${have(holders, say)} ${what} ${span(times, say)}`;
  },
  "because-current": ({ circuit, wanted_a, capacity_a, holders, ...times }, say) => {
    if (capacity_a === 0) return `because ${circuit} does not run ${span(times, say)}`;
    const beside = holders.length === 0 ? "" : ` with ${say.list(holders)}`;
    return `because ${circuit} would carry ${say.number(wanted_a, 1)} A${beside} ${span(times, say)}, where ${say.number(capacity_a, 1)} A may be planned`;
  },
  "because-bay": ({ bays, holders, ...times }, say) =>
    holders.length === 0
      ? "because there is no bay"
      : `${have(holders, say)} the ${bays === 1 ? "bay" : "bays"} ${span(times, say)}`,
  "because-cart": ({ cart, holders, ...times }, say) => `${have(holders, say)} ${cart} ${span(times, say)}`,
  "because-people": ({ wanted, capacity, holders, ...times }, say) => {
    if (capacity === 0) return `because nobody is there ${span(times, say)}`;
    return holders.length === 0
      ? `because it takes ${wanted} people ${span(times, say)}, where ${capacity} ${capacity === 1 ? "is" : "are"} there`
      : `because ${say.list(holders)} ${holders.length === 1 ? "takes" : "take"} who is there ${span(times, say)}`;
  },
  "circuits-planned-to": ({ share }, say) =>
    `Circuits are planned up to ${say.percent(share)} of their breaker, as for loads of three hours and more.`,
  "somebody-always": () => "Somebody is there at any hour: no hours are given.",
  "no-hangar-described": () => "No hangar is described: nothing is planned into one.",
  "pulled-out-to-start": ({ aircraft }) =>
    `${aircraft} is pulled out before its start: engines are started outside.`,
  "circuit-shared": () =>
    "The plan knows only the heaters named in it: whatever else hangs on a circuit comes on top. A breaker that trips leaves everything on it cold; a cable, reel or adapter that is warm to the hand comes out of use. A residual-current device belongs on every outlet outside.",
  "generator-outside": () =>
    "A generator runs in the open and away from doors and intakes: its exhaust holds carbon monoxide. It is not refuelled while hot, and somebody stays within call while it runs.",
  "moving-aircraft": () =>
    "Propeller as if live, chocks and cord out before moving, somebody at the wing tip; an aircraft brought in with fuel or a hot heater near vapour is a fire risk.",
  "cart-rejected": ({ cart, why }, say) => `${cart} is not planned: ${say.finding(why)}`,
  "lift-outlet": ({ circuit, number }) => `outlet number ${number} on ${circuit}`,
  "lift-breaker": ({ circuit, current_a }) =>
    `${current_a} A on ${circuit} (an electrician decides whether its wiring bears that)`,
  "lift-generator": ({ circuit }) => `${circuit} running all the time`,
  "lift-bay": ({ number }) => `bay number ${number} in the hangar`,
  "lift-cart": ({ heater }) => `another ${heater}`,
  "lift-people": () => "somebody there at all hours",
  "lift-all": ({ lifts }, say) => lifts.map(say.finding).join(" and "),
};
