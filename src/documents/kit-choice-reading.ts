import type { Installation, Kit } from "../aircraft/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { dailyTimes } from "./daily-times.js";
import { kitOf } from "./kit-reading.js";
import { type Findings, fault, newFindings } from "./reading.js";
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
  findings: Findings,
): KitChoice[] {
  if (kits === undefined) return [];
  const names = kits.map(({ name }) => name);
  names.forEach((name, i) => {
    if (names.indexOf(name) < i) fault(findings, ["kits", i, "name"], "a name that stands once", name);
  });
  return kits.flatMap(({ name, heaters, covers, switching, price, yearly_cost, heater_life_h }, i) => {
    const own = newFindings();
    const kit = kitOf({ kit: { heaters, covers } }, installation, own);
    findings.issues.push(
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
  findings: Findings,
): Prices {
  const currency = prices.currency ?? "";
  const attended = prices.attended_per_h ?? USUAL_ATTENDED[currency] ?? USUAL_ATTENDED_ELSEWHERE;
  if (prices.attended_per_h === undefined) {
    const amount = `${attended} ${currency}`.trimEnd();
    findings.assumptions.push(
      `An hour of somebody standing by or plugging in counts ${amount}: project judgement, set prices.attended_per_h.`,
    );
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
  findings: Findings,
): HandHours {
  const { from, until } = by_hand ?? USUAL_HAND_HOURS;
  if (!(from < until)) fault(findings, ["by_hand", "until"], `later than from, ${from}`, until);
  if (by_hand === undefined) {
    findings.assumptions.push(
      `Somebody can be there to plug in from ${from} to ${until}; timers are set at ${until} the evening before.`,
    );
  }
  // The evening before the first day counts too.
  const wide = { ...span, start: span.start - 36 * SECONDS_OF_HOUR };
  const begins = dailyTimes(from, wide);
  // The span may begin between the two: then the first end belongs to no beginning.
  const ends = dailyTimes(until, wide).filter((t) => t > (begins[0] ?? Number.POSITIVE_INFINITY));
  return { from: begins, until: ends };
}

/** [min] to coil the lead, take covers off, walk round and get in, as in a scenario; project judgement. */
const USUAL_UNPLUG_BEFORE = 15;
const USUAL_COVER_OFF_BEFORE = 10;

/** [s] before departure at which heaters are unplugged and covers come off. */
export function handlingOf(
  {
    unplug_before_min,
    cover_off_before_min,
  }: Pick<WinterSections | KitSections, "unplug_before_min" | "cover_off_before_min">,
  findings: Findings,
): { readonly unplugBefore: number; readonly coverOffBefore: number } {
  const unplug = unplug_before_min ?? USUAL_UNPLUG_BEFORE;
  const coverOff = cover_off_before_min ?? Math.min(USUAL_COVER_OFF_BEFORE, unplug);
  if (unplug_before_min === undefined)
    findings.assumptions.push(`The heater is unplugged ${unplug} min before the start.`);
  if (cover_off_before_min === undefined)
    findings.assumptions.push(`Covers come off ${coverOff} min before the start.`);
  if (coverOff > unplug) {
    const expected = `${unplug} or less: covers come off after unplugging`;
    fault(findings, ["cover_off_before_min"], expected, coverOff);
  }
  return { unplugBefore: 60 * unplug, coverOffBefore: 60 * coverOff };
}
