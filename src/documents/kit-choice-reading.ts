import type { Installation, Kit } from "../aircraft/index.js";
import { finding } from "../findings/index.js";
import { handlingOf } from "../scenario/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { dailyTimes } from "./daily-times.js";
import { kitOf } from "./kit-reading.js";
import { fault, type Notes, newNotes } from "./reading.js";
import type { KitSections, WinterSections } from "./winter-schema.js";

export type Switching = "by_hand" | "mains_timer" | "local_network" | "phone_network";

/** Equipment that one might buy: what heats, what keeps warm, what switches. */
export interface KitChoice {
  readonly name: string;
  readonly kit: Kit;
  readonly switching: Switching;
  /** In the document's currency; undefined where it is not told. */
  readonly price: number | undefined;
  readonly yearlyCost: number;
  /** [s] hours it is rated for; undefined where nobody says. */
  readonly heaterLife: number | undefined;
}

export interface Prices {
  readonly currency: string;
  /** Per kWh; undefined where it is not told: then no money is counted. */
  readonly electricity: number | undefined;
  readonly fuel: number | undefined;
  readonly missedDeparture: number;
  /** Of somebody who stands by or plugs in, per hour. */
  readonly attended: number;
}

/** When somebody can be there to plug in: matching beginnings and ends [s since epoch], ascending. */
export interface HandHours {
  readonly from: readonly number[];
  readonly until: readonly number[];
}

export function kitChoicesOf(
  { kits }: Pick<WinterSections | KitSections, "kits">,
  installation: Installation | undefined,
  notes: Notes,
): KitChoice[] {
  if (kits === undefined) return [];
  const names = kits.map(({ name }) => name);
  names.forEach((name, i) => {
    if (names.indexOf(name) < i) fault(notes, ["kits", i, "name"], "a name that stands once", name);
  });
  return kits.flatMap(({ name, heaters, covers, switching, price, yearly_cost, heater_life_h }, i) => {
    const own = newNotes();
    const kit = kitOf({ kit: { heaters, covers } }, installation, own);
    notes.issues.push(
      ...own.issues.map((issue) => ({ ...issue, path: issue.path.replace(/^kit/, `kits[${i}]`) })),
    );
    if (kit === undefined) return [];
    return [
      {
        ...{ name, kit, switching, price },
        yearlyCost: yearly_cost ?? 0,
        heaterLife: heater_life_h === undefined ? undefined : heater_life_h * SECONDS_OF_HOUR,
      },
    ];
  });
}

/** Of somebody's hour on a cold ramp, where nobody says: about a mechanic's helper; project judgement. */
const USUAL_ATTENDED: Readonly<Record<string, number>> = { NOK: 350, SEK: 350, DKK: 250, ISK: 4500 };
const USUAL_ATTENDED_ELSEWHERE = 30;

export function pricesOf(
  { prices = {} }: Pick<WinterSections | KitSections, "prices">,
  notes: Notes,
): Prices {
  const currency = prices.currency ?? "";
  const attended = prices.attended_per_h ?? USUAL_ATTENDED[currency] ?? USUAL_ATTENDED_ELSEWHERE;
  if (prices.attended_per_h === undefined) {
    notes.assumptions.push(finding("attended-taken", { amount: attended, currency }));
  }
  return {
    currency,
    attended,
    electricity: prices.electricity_per_kwh,
    fuel: prices.fuel_per_kwh,
    missedDeparture: prices.missed_departure ?? 0,
  };
}

/** Local time of day within which somebody is there to plug in, where nobody says; project judgement. */
const USUAL_HAND_HOURS = { from: "07:00", until: "21:00" } as const;

export function handHoursOf(
  { by_hand }: Pick<WinterSections | KitSections, "by_hand">,
  span: { readonly start: number; readonly end: number; readonly zone: string },
  notes: Notes,
): HandHours {
  const { from, until } = by_hand ?? USUAL_HAND_HOURS;
  if (!(from < until)) fault(notes, ["by_hand", "until"], `later than from, ${from}`, until);
  if (by_hand === undefined) {
    notes.assumptions.push(finding("hands-there", { from, until }));
  }
  // The evening before the first day counts too.
  const wide = { ...span, start: span.start - 36 * SECONDS_OF_HOUR };
  const begins = dailyTimes(from, wide);
  // The span may begin between the two: then the first end belongs to no beginning.
  const ends = dailyTimes(until, wide).filter((t) => t > (begins[0] ?? Number.POSITIVE_INFINITY));
  return { from: begins, until: ends };
}

/** [s] before departure at which heaters are unplugged and covers come off. */
export function handlingBefore(
  {
    unplug_before_min,
    cover_off_before_min,
  }: Pick<WinterSections | KitSections, "unplug_before_min" | "cover_off_before_min">,
  notes: Notes,
): { readonly unplugBefore: number; readonly coverOffBefore: number } {
  const { unplug, coverOff } = handlingOf(
    { unplugBefore: unplug_before_min, coverOffBefore: cover_off_before_min },
    { most: Number.POSITIVE_INFINITY, isHeated: true },
    notes.assumptions,
  );
  if (coverOff > unplug) {
    const expected = `${unplug} or less: covers come off after unplugging`;
    fault(notes, ["cover_off_before_min"], expected, coverOff);
  }
  return { unplugBefore: 60 * unplug, coverOffBefore: 60 * coverOff };
}
