import type { BasePlanDocument, StampDocument } from "../../index.js";
import type { Style } from "../style.js";
import { lanes } from "./base-lanes.js";
import { assumed, cared, clock, DEFERENCE, day, list, percent, wrapped } from "./words.js";

type Row = BasePlanDocument["aircraft"][number];

/** A base plan for who works on the base: the night as lanes, what to do in order, then why. */
export function baseText(plan: BasePlanDocument, style: Style): string[] {
  const { colors, width } = style;
  const last = plan.aircraft.reduce((a, b) => (a.departure.at_h > b.departure.at_h ? a : b)).departure;
  return [
    ...wrapped(answerOf(plan), width).map((line) => colors.bold(line)),
    ...wrapped(occasionOf(plan), width),
    "",
    colors.bold(`  ${"".padEnd(NAME)}plug in    unplug   start   chance  wanted   kWh  where`),
    ...plan.aircraft.map((row) => rowText(row, last, plan, style)),
    "",
    ...lanes(plan, style),
    ...list(
      "Why",
      plan.aircraft.flatMap((row) => row.explanation),
      style,
    ),
    ...list(
      "Would help (each tried, over fewer cases)",
      plan.lifts.map((lift) => liftText(lift, last)),
      style,
    ),
    ...list("To do", tasks(plan), style),
    "",
    ...wrapped(comparison(plan), width),
    ...list(
      "Not planned",
      plan.not_planned.map((name) => `${name}: no departure is wanted`),
      style,
    ),
    ...assumed(plan.assumptions, style),
    ...list(
      "Doubtful input",
      plan.warnings.map((w) => `${w.path}: expected ${w.expected}, received ${w.received}`),
      style,
    ),
    ...cared(plan.cautions, style),
    "",
    ...wrapped(DEFERENCE, width),
  ];
}

const NAME = 9;

function answerOf({ aircraft, status, message, joint_chance }: BasePlanDocument): string {
  const together = aircraft.length === 1 ? "" : `; all together ${percent(joint_chance)}`;
  if (status === "all-ready") {
    return aircraft.length === 1
      ? "Ready in time."
      : `All ${aircraft.length} aircraft ready in time${together}.`;
  }
  const missed = aircraft.filter((row) => row.status === "missed").length;
  return `${missed} of ${aircraft.length} ${missed === 1 ? "is" : "are"} ${message}${together}.`;
}

function occasionOf({ name, start, zone, members }: BasePlanDocument): string {
  return `${name} from ${day(start)}, ${start.time.slice(11, 16)}, times in ${zone}. Chances over ${members} drawn cases under one weather.`;
}

function rowText(row: Row, day: StampDocument, plan: BasePlanDocument, { colors, width }: Style): string {
  const mark = row.status === "ready" ? colors.green("ok") : colors.red("!!");
  const cells = [
    row.name.slice(0, NAME - 2).padEnd(NAME - 2),
    (row.plug_in === null ? "none" : clock(row.plug_in, day)).padEnd(11),
    (row.unplug === null ? "" : clock(row.unplug, day)).padEnd(9),
    clock(row.departure, day).padEnd(8),
    percent(row.chance).padEnd(8),
    percent(row.wanted_chance).padEnd(7),
    row.energy_kwh.p50.toFixed(1).padStart(5),
  ];
  const text = cells.join("");
  return `${mark} ${text}  ${placesOf(row, plan, width - text.length - 5)}`.trimEnd();
}

function placesOf({ circuit, cart, hangar }: Row, { circuits }: BasePlanDocument, most: number): string {
  const named = circuits.find((c) => c.id === circuit)?.name;
  const time = (stamp: StampDocument) => stamp.time.slice(11, 16);
  const stay =
    hangar === null ? undefined : `bay ${hangar.in === null ? "" : time(hangar.in)}-${time(hangar.out)}`;
  const places = [named, cart, stay].filter((place) => place !== undefined && place !== null).join(", ");
  return places.length > most ? `${places.slice(0, most - 3)}...` : places;
}

function liftText({ text, rescues }: BasePlanDocument["lifts"][number], day: StampDocument): string {
  const who = rescues.map(
    ({ name, chance, plug_in }) =>
      `${name} ready with ${percent(chance)}${plug_in === null ? "" : `, plugged in at ${clock(plug_in, day)}`}`,
  );
  return `${text}: ${who.join("; ")}`;
}

const DEEDS = {
  plug_in: "plug in",
  unplug: "unplug",
  move_in: "move into the hangar:",
  move_out: "pull out of the hangar:",
} as const;

/** What people do, each day under its date. */
function tasks({ aircraft, tasks, start }: BasePlanDocument): string[] {
  const names = new Map(aircraft.map(({ id, name }) => [id, name]));
  return tasks.map((task) => {
    const where = task.do.startsWith("move") ? "" : `, ${task.where}`;
    const who = task.by === "crew" ? " (its crew)" : "";
    return `${clock(task, start)} ${DEEDS[task.do]} ${names.get(task.aircraft) ?? task.aircraft}${where}${who}`;
  });
}

function comparison({ totals, alone_totals, aircraft }: BasePlanDocument): string {
  const missed = (n: number) => (n === 0 ? "none missed" : `${n} of ${aircraft.length} missed`);
  return (
    `Together: ${totals.heater_h.toFixed(1)} heater hours, ${totals.energy_kwh.toFixed(1)} kWh, wet inside ` +
    `${totals.wet_h.toFixed(1)} h, ${missed(totals.missed)}. If each had the base to itself: ` +
    `${alone_totals.heater_h.toFixed(1)} heater hours, ${alone_totals.energy_kwh.toFixed(1)} kWh, ${missed(alone_totals.missed)}.`
  );
}
