import type { Configuration, Installation } from "../aircraft/index.js";
import type { Finding } from "../findings/index.js";
import type { FittedAircraft } from "../learning/index.js";
import type { StricterLimits } from "../readiness/index.js";
import type { Site } from "../simulation/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { monthsLater } from "../weather/index.js";
import { type Clock, clockOf } from "./clock.js";
import { inFormOfKind } from "./current-form.js";
import { dailyTimes } from "./daily-times.js";
import type { DocumentIssue } from "./issue.js";
import {
  type HandHours,
  handHoursOf,
  handlingBefore,
  type KitChoice,
  kitChoicesOf,
  type Prices,
  pricesOf,
} from "./kit-choice-reading.js";
import { installationOf } from "./kit-reading.js";
import { learnedOf } from "./learned-reading.js";
import { fault, type Notes, newNotes, type Reading, sectionsBy } from "./reading.js";
import { standingSite } from "./scenario-reading.js";
import type { ReadFile } from "./weather-sources/index.js";
import { flyingOf } from "./winter-flying.js";
import { type WinterDocument, type WinterSections, winterSchema } from "./winter-schema.js";
import { type WinterYear, winterYearsOf } from "./winter-weather.js";
import { limitsOf } from "./wish-reading.js";

/** How heaters are used through a winter. */
export type Habit =
  | { readonly do: "always-on" }
  | {
      readonly do: "clock";
      /** [s] before each departure */
      readonly lead: number;
    }
  | {
      readonly do: "daily";
      /** [s] since epoch: on from, off until, day by day. */
      readonly on: readonly number[];
      readonly off: readonly number[];
      /** Clock times of both. */
      readonly times: { readonly from: string; readonly until: string };
    }
  | { readonly do: "planned"; readonly chance: number };

/** A winter study as read from its document, with all that was assumed on the way. */
export interface ReadWinter {
  readonly document: WinterDocument;
  readonly name: string;
  readonly zone: string;
  /** [s] since epoch */
  readonly start: number;
  readonly end: number;
  readonly installation: Installation;
  readonly learned: FittedAircraft | undefined;
  readonly place: Configuration["place"];
  readonly site: Site;
  readonly limits: StricterLimits;
  readonly kits: readonly KitChoice[];
  readonly habits: readonly Habit[];
  readonly years: readonly WinterYear[];
  /** [s] since epoch, ascending */
  readonly departures: readonly number[];
  /** [s] from departure until it stands again */
  readonly flightTime: number;
  readonly unplugBefore: number;
  readonly coverOffBefore: number;
  readonly handHours: HandHours;
  readonly prices: Prices;
  /** Index of kit and habit that payback is counted against. */
  readonly against: { readonly kit: number; readonly habit: number };
  readonly ensemble: { readonly members: number; readonly seed: number };
  readonly assumptions: readonly Finding[];
  readonly warnings: readonly DocumentIssue[];
}

export type WinterReading = Reading<ReadWinter>;

const USUAL_MONTHS = 7;
const USUAL_MEMBERS = 5;
const USUAL_SEED = 1;
const USUAL_HABITS: NonNullable<WinterDocument["habits"]> = [
  { do: "always_on" },
  { do: "clock", lead_h: 3 },
  { do: "planned" },
];
const USUAL_CHANCE = 0.9;

/** Reads a winter document, as text or as a value, of this or any earlier version. Every fault is named at once. */
export function readWinterDocument(
  source: unknown,
  { readFile }: { readonly readFile?: ReadFile } = {},
): WinterReading {
  const form = inFormOfKind("winter", source);
  if (!form.ok) return { ok: false, issues: [form.issue] };
  const notes = newNotes();
  const sections = sectionsBy(winterSchema, form.document, notes);
  const span = spanOf(sections, notes);
  const installation = installationOf(scenarioPart(sections, "aircraft"), notes);
  const learned = learnedOf(scenarioPart(sections, "learned"), installation, readFile, notes);
  const kits = kitChoicesOf(sections, installation, notes);
  const limits = limitsOf(scenarioPart(sections, "limits"), installation, notes);
  const site = standingSite(sections, notes);
  const years = winterYearsOf(sections, span, readFile, notes);
  const habits = span === undefined ? [] : habitsOf(sections, span, notes);
  const flying = span === undefined ? undefined : flyingOf(sections, span, readFile, notes);
  const handling = handlingBefore(sections, notes);
  const handHours = span === undefined ? undefined : handHoursOf(sections, span, notes);
  const against = againstOf(sections, kits, habits, notes);
  const { members = USUAL_MEMBERS, seed = USUAL_SEED } = sections.ensemble ?? {};
  if (notes.issues.length > 0) return { ok: false, issues: notes.issues };
  if (span === undefined || installation === undefined || flying === undefined || handHours === undefined) {
    throw new Error("a section of the document was refused without an issue");
  }
  const document = sections as WinterDocument;
  return {
    ok: true,
    document,
    name: document.name,
    zone: span.zone,
    start: span.start,
    end: span.end,
    installation,
    learned,
    place: document.place,
    site,
    limits,
    kits,
    habits,
    years,
    ...flying,
    ...handling,
    handHours,
    prices: pricesOf(sections, notes),
    against,
    ensemble: { members, seed },
    assumptions: notes.assumptions,
    warnings: notes.warnings,
  };
}

/** One section in the form in which scenarios are read. */
function scenarioPart<K extends keyof WinterSections>(
  sections: WinterSections,
  key: K,
): Pick<WinterSections, K> {
  return sections[key] === undefined
    ? ({} as Pick<WinterSections, K>)
    : ({ [key]: sections[key] } as Pick<WinterSections, K>);
}

function spanOf(sections: WinterSections, notes: Notes): Clock | undefined {
  const { start, zone, months = USUAL_MONTHS } = sections;
  const clock = clockOf(
    { ...(start === undefined ? {} : { start }), ...(zone === undefined ? {} : { zone }), hours: 1 },
    notes,
  );
  if (clock === undefined) return undefined;
  return { ...clock, end: monthsLater(clock.start, clock.zone, months) };
}

function habitsOf({ habits = USUAL_HABITS }: WinterSections, span: Clock, notes: Notes): Habit[] {
  return habits.flatMap((habit, i): Habit[] => {
    if (habit.do === "always_on") return [{ do: "always-on" }];
    if (habit.do === "planned") return [{ do: "planned", chance: habit.chance ?? USUAL_CHANCE }];
    const { lead_h, from, until } = habit;
    const daily = from !== undefined || until !== undefined;
    if (daily === (lead_h !== undefined) || (from === undefined) !== (until === undefined)) {
      fault(notes, ["habits", i], "either lead_h, or from and until", habit);
      return [];
    }
    if (lead_h !== undefined) return [{ do: "clock", lead: lead_h * SECONDS_OF_HOUR }];
    if (from === undefined || until === undefined) return [];
    if (!(from < until)) {
      fault(notes, ["habits", i, "until"], `later than from, ${from}`, until);
      return [];
    }
    const on = dailyTimes(from, span);
    const off = dailyTimes(until, span).filter((t) => t > (on[0] ?? Number.POSITIVE_INFINITY));
    return [{ do: "daily", on: on.slice(0, off.length), off, times: { from, until } }];
  });
}

function againstOf(
  { against, against_habit }: WinterSections,
  kits: readonly KitChoice[],
  habits: readonly Habit[],
  notes: Notes,
): { kit: number; habit: number } {
  const kit = against === undefined ? 0 : kits.findIndex(({ name }) => name === against);
  if (kit < 0 && kits.length > 0)
    fault(notes, ["against"], `one of ${kits.map(({ name }) => name).join(", ")}`, against);
  const wanted = against_habit?.replace("_", "-");
  const matches = (habit: Habit) => habit.do === wanted || (habit.do === "daily" && wanted === "clock");
  const habit = wanted === undefined ? 0 : habits.findIndex(matches);
  if (habit < 0) fault(notes, ["against_habit"], "a habit of the study", against_habit);
  return { kit, habit };
}
