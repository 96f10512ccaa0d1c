import type { ScenarioDocument, WinterDocument } from "../../../documents/index.js";
import { dayKey, isoOf, momentOfInput } from "../../units/times.js";
import type { KitChoice } from "../kit/kit-document.js";

export const DAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;
type Day = (typeof DAYS)[number];

interface PricedKit extends KitChoice {
  price?: number | undefined;
}

/** Prices in the order in which they are asked for. */
export const PRICES = ["electricity", "fuel", "missed", "attended"] as const;

/** What is asked of a winter on the screen. */
export interface WinterForm extends Partial<Record<(typeof PRICES)[number], number | undefined>> {
  /** Id of an invented place; "file" for the user's own weather. */
  place: string;
  file?: { readonly name: string; readonly text: string };
  winters: number;
  days: readonly Day[];
  /** HH:MM */
  at: string;
  currency: string;
  kits: PricedKit[];
}

/** The most kits that a browser works through in a bearable time. */
export const MOST_KITS = 3;
/** October to April. */
const MONTHS = 7;
/** Drawn aircraft beside the middle one: few, for every one flies a whole winter for each kit and habit. */
const MEMBERS = 5;

/** The question as a document: the winter that began last, for an aircraft as its scenario describes it. */
export function winterDocument(scenario: ScenarioDocument, form: WinterForm, now: number): WinterDocument {
  const { name, aircraft, learned, zone = "UTC", place, hangar, site, limits, want } = scenario;
  const { file, electricity, fuel, missed, attended } = form;
  return {
    soakline: 2,
    kind: "winter",
    ...{ name, aircraft, zone, place },
    ...(learned === undefined ? {} : { learned }),
    ...(hangar === undefined ? {} : { hangar }),
    ...(site === undefined ? {} : { site }),
    ...(limits === undefined ? {} : { limits }),
    start: isoOf(winterStart(now, zone)),
    months: MONTHS,
    weather:
      form.place !== "file"
        ? { place: form.place, years: form.winters }
        : { [isEpw(file?.name) ? "epw_files" : "csv_files"]: [file?.name ?? ""] },
    flying: { schedule: [{ days: [...form.days], at: form.at }] },
    kits: form.kits.map(({ heaters, covers, price, ...rest }) => ({
      ...rest,
      ...(price === undefined ? {} : { price }),
      heaters: [...heaters],
      covers: [...covers],
    })),
    habits: [
      { do: "always_on" },
      { do: "clock", lead_h: 3 },
      { do: "planned", chance: Math.min(0.99, Math.max(0.5, want?.chance ?? 0.9)) },
    ],
    prices: {
      ...(form.currency === "" ? {} : { currency: form.currency }),
      ...(electricity === undefined ? {} : { electricity_per_kwh: electricity }),
      ...(fuel === undefined ? {} : { fuel_per_kwh: fuel }),
      ...(missed === undefined ? {} : { missed_departure: missed }),
      ...(attended === undefined || attended <= 0 ? {} : { attended_per_h: attended }),
    },
    ensemble: { members: MEMBERS, seed: 1 },
  };
}

/** [ms] the last 1 October by the zone's clock. */
function winterStart(now: number, zone: string): number {
  const year = Number(dayKey(now, zone).slice(0, 4));
  const from = (y: number) => momentOfInput(`${y}-10-01T00:00`, zone) ?? Date.UTC(y, 9, 1);
  return from(year) <= now ? from(year) : from(year - 1);
}

function isEpw(name: string | undefined): boolean {
  return /\.epw$/i.test(name ?? "");
}
