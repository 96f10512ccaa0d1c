import type { BaseMoment, BasePlanFindings, Finding } from "../../findings/index.js";
import type { Phrases, Say } from "../phrases.js";

const when = ({ time, within_day }: BaseMoment, say: Say) =>
  within_day ? say.clock(time) : say.dayAndClock(time);

const span = ({ from, to }: { from: BaseMoment; to: BaseMoment }, say: Say) =>
  `fra ${when(from, say)} til ${when(to, say)}`;

const causesOf = (causes: readonly Finding[], say: Say) => causes.map(say.finding).join(", og ");

export const basePlan: Phrases<BasePlanFindings> = {
  "base-unsure": ({ missed }, say) =>
    `ikke sikkert nok: ${missed.map(({ aircraft, at }) => `${aircraft} ${when(at, say)}`).join(", ")}`,
  "base-too-hot": ({ aircraft, at, criterion }, say) =>
    `${aircraft} er ikke klar til ${when(at, say)}: ${say.finding(criterion)} blir for varm.`,
  "base-held-off": ({ aircraft, at, causes }, say) =>
    `${aircraft} er ikke klar til ${when(at, say)} ${causesOf(causes, say)}.`,
  "base-no-heater": ({ aircraft, at }, say) =>
    `${aircraft} er ikke klar til ${when(at, say)}: det har ingen varmer å bruke.`,
  "base-short": ({ aircraft, at, chance, criterion }, say) =>
    `${aircraft} er ikke klar til ${when(at, say)}: egen varme er ikke nok, selv med hele basen for seg selv: i beste fall ${say.odds(chance)}. Svakeste punkt: ${say.finding(criterion)}.`,
  "base-even-less": ({ chance, causes }, say) => `Nå ${say.odds(chance)}, ${causesOf(causes, say)}.`,
  "base-not-required": ({ aircraft }) => `${aircraft}: trenger ikke varme.`,
  "base-hangar-warm": ({ aircraft }) => `${aircraft} er varmt nok i hangaren, uten motorvarmer.`,
  "base-unhindered": ({ aircraft }) => `${aircraft} gjør det samme som om basen var tom; ingen er i veien.`,
  "base-no-dearer": ({ aircraft, from }, say) =>
    `${aircraft} varmes fra ${when(from, say)}, og det koster ikke mer enn om basen var tom.`,
  "base-does": ({ doing, causes }, say) => `${say.finding(doing)} ${causesOf(causes, say)}.`,
  "does-go-in": ({ aircraft, at }, say) => `${aircraft} settes inn i hangaren ${when(at, say)}`,
  "does-come-out": ({ aircraft, at }, say) => `${aircraft} tas ut av hangaren ${when(at, say)}`,
  "does-turns": ({ aircraft }) => `${aircraft} varmes i flere omganger`,
  "does-nothing": ({ aircraft }) => `${aircraft} blir stående som det er`,
  "does-heat-from": ({ aircraft, from }, say) => `${aircraft} varmes fra ${when(from, say)}`,
  "does-wait": ({ aircraft, until }, say) => `${aircraft} venter til ${when(until, say)}`,
  "does-heat-early": ({ aircraft, from, until }, say) =>
    `${aircraft} varmes alt fra ${when(from, say)}${until === null ? "" : `, til ${when(until, say)},`}`,
  "does-heat": ({ aircraft, ...times }, say) => `${aircraft} varmes ${span(times, say)}`,
  "because-outlet": ({ circuit, outlets, holders, ...times }, say) => {
    if (holders.length === 0) return `fordi ${circuit} ikke har noe uttak`;
    const what = outlets === 1 ? `uttaket på ${circuit}` : `de ${outlets} uttakene på ${circuit}`;
    return `fordi ${say.list(holders)} har ${what} ${span(times, say)}`;
  },
  "because-current": ({ circuit, wanted_a, capacity_a, holders, ...times }, say) => {
    if (capacity_a === 0) return `fordi ${circuit} ikke går ${span(times, say)}`;
    const beside = holders.length === 0 ? "" : ` sammen med ${say.list(holders)}`;
    return `fordi ${circuit} ville bære ${say.number(wanted_a, 1)} A${beside} ${span(times, say)}, der ${say.number(capacity_a, 1)} A kan planlegges`;
  },
  "because-bay": ({ bays, holders, ...times }, say) =>
    holders.length === 0
      ? "fordi det ikke er noen plass i hangaren"
      : `fordi ${say.list(holders)} har ${bays === 1 ? "plassen" : "plassene"} i hangaren ${span(times, say)}`,
  "because-cart": ({ cart, holders, ...times }, say) =>
    `fordi ${say.list(holders)} har ${cart} ${span(times, say)}`,
  "because-people": ({ wanted, capacity, holders, ...times }, say) => {
    if (capacity === 0) return `fordi ingen er der ${span(times, say)}`;
    return holders.length === 0
      ? `fordi det trengs ${wanted} personer ${span(times, say)}, der ${capacity} er til stede`
      : `fordi ${say.list(holders)} opptar dem som er der ${span(times, say)}`;
  },
  "circuits-planned-to": ({ share }, say) =>
    `Kursene planlegges opp til ${say.percent(share)} av sikringen, som for laster på tre timer og mer.`,
  "somebody-always": () => "Noen er der til alle tider: ingen tider er oppgitt.",
  "no-hangar-described": () => "Ingen hangar er beskrevet: ingenting planlegges inn i en.",
  "pulled-out-to-start": ({ aircraft }) => `${aircraft} trekkes ut før start: motorer startes ute.`,
  "circuit-shared": () =>
    "Planen kjenner bare varmerne som er nevnt i den: alt annet som henger på en kurs, kommer i tillegg. En sikring som går, lar alt på den bli kaldt; en ledning, trommel eller overgang som er varm å ta på, tas ut av bruk. Jordfeilbryter hører til på hvert uttak ute.",
  "generator-outside": () =>
    "Et aggregat går i friluft og unna dører og luftinntak: eksosen inneholder kullos. Det fylles ikke drivstoff mens det er varmt, og noen er innen rop mens det går.",
  "moving-aircraft": () =>
    "Propellen regnes som om den kan slå rundt, klosser og ledning fjernes før flytting, noen ved vingetippen; et fly som settes inn med drivstoff eller varm varmer nær damp, er en brannfare.",
  "cart-rejected": ({ cart, why }, say) => `${cart} blir ikke planlagt: ${say.finding(why)}`,
  "lift-outlet": ({ circuit, number }) => `uttak nummer ${number} på ${circuit}`,
  "lift-breaker": ({ circuit, current_a }) =>
    `${current_a} A på ${circuit} (en elektriker avgjør om ledningene tåler det)`,
  "lift-generator": ({ circuit }) => `${circuit} i gang hele tiden`,
  "lift-bay": ({ number }) => `plass nummer ${number} i hangaren`,
  "lift-cart": ({ heater }) => `en ${heater} til`,
  "lift-people": () => "noen til stede hele døgnet",
  "lift-all": ({ lifts }, say) => lifts.map(say.finding).join(" og "),
};
