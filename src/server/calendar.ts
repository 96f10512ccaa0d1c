import ical, { ICalAlarmType, type ICalCalendar } from "ical-generator";
import type { AircraftState, BaseState, EventOf } from "../logbook/index.js";
import { english, sayIn } from "../words/index.js";

// The calendar that phones subscribe to (RFC 5545): when to plug in, when to unplug, when it leaves. All times in UTC,
// so that no program has to guess a zone.

const ENGLISH = sayIn("en", { temp: "c", wind: "mps" }, english);

/** [s] the alarm comes before plugging in. Project judgement. */
const ALARM = 15 * 60;
/** [ms] that plugging in and unplugging take up in the calendar. */
const SHORT = 15 * 60e3;

const CAUTION =
  "Look at heater, cord and plug before and after plugging in, and do not leave a heater alone where its maker or the fire code says not to. The aircraft's handbook, the engine maker and local code decide; the propeller is not to be touched for this.";

/** What the calendar has to know of an event beyond what it says. */
export interface Written {
  /** Sequence of the store, which grows with every change of plan. */
  readonly sequence: number;
  /** [ms] since 1970 UTC. */
  readonly received: number;
}

export function calendarText(
  state: BaseState | undefined,
  writtenOf: (eventId: string) => Written | undefined,
  now: number,
): string {
  const calendar = ical({
    name: calendarName(state?.setUp.name ?? "base"),
    prodId: { company: "Soakline", product: "base", language: "EN" },
    ttl: 900,
  });
  for (const aircraft of state?.aircraft.values() ?? []) addAircraft(calendar, aircraft, writtenOf, now);
  return calendar.toString();
}

function addAircraft(
  calendar: ICalCalendar,
  { setUp, departures, plan }: AircraftState,
  writtenOf: (eventId: string) => Written | undefined,
  now: number,
): void {
  const name = oneLine(setUp.name);
  for (const { id, departure } of departures) {
    const answer = plan?.of === id ? plan : undefined;
    const written = writtenOf(answer?.id ?? id);
    const entry = (what: string, start: number, lasts: number, summary: string, description: string) =>
      calendar.createEvent({
        // The same departure keeps its entries through every change of plan: programs move them instead of adding.
        id: `${what}.${id}@soakline`,
        sequence: written?.sequence ?? 0,
        stamp: new Date(written?.received ?? now),
        start: new Date(start),
        end: new Date(start + lasts),
        summary,
        description,
      });

    entry("departure", departure, 60 * 60e3, `${name}: departure`, departureText(answer));
    if (answer === undefined || answer.plug_in === null) continue;
    const plugIn = entry(
      "plug-in",
      Date.parse(answer.plug_in),
      SHORT,
      `${name}: plug in ${oneLine(answer.heaters.join(", "))}`,
      `${oneLine(english(answer.message))}\n${CAUTION}`,
    );
    plugIn.createAlarm({
      type: ICalAlarmType.display,
      trigger: ALARM,
      description: `${name}: plug in in 15 minutes`,
    });
    entry("unplug", Date.parse(answer.unplug), SHORT, `${name}: unplug`, CAUTION);
  }
}

function departureText(plan: EventOf<"plan-issued"> | undefined): string {
  if (plan === undefined) return "No plan yet.";
  const { odds } = ENGLISH;
  return `${oneLine(english(plan.message))}\nChance that it is ready: ${odds(plan.chance)}; weakest point: ${oneLine(plan.weakest).replaceAll("-", " ")}.`;
}

/** Names come from people: without control characters none can begin a line of its own in the file. */
function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, " ").trim();
}

/** The library escapes every text but the calendar's name. */
function calendarName(name: string): string {
  return `Soakline: ${oneLine(name).replace(/[\\;,]/g, "\\$&")}`;
}
