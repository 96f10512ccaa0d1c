import type { SaidCaution } from "../../findings/index.js";
import type { BasePlanDocument, StampDocument } from "../../index.js";
import type { Style } from "../style.js";
import { lanes } from "./base-lanes.js";
import { type Opening, screen } from "./opening.js";
import { clock, closing, day, list, odds, percent, wrapped } from "./words.js";

type Row = BasePlanDocument["aircraft"][number];

/** A base plan for who works on the base: what each aircraft does and why not; behind it the night as lanes and tasks. */
export function baseText(plan: BasePlanDocument, style: Style): string[] {
  const last = lastOf(plan);
  const table = [HEADING, ...plan.aircraft.flatMap((row) => aircraftLines(row, last, style))];
  const [lift] = plan.lifts;
  const opening: Opening = {
    verdict: verdictOf(plan),
    about: aboutOf(plan),
    table,
    facts: lift === undefined ? [] : [["Would help", liftText(lift, last, style)]],
    cautions: [],
  };
  const room = SCREEN - screen(opening, () => [], { ...style, all: false }).length;
  const cautions = fittingIn(plan.cautions, room, style);
  return screen({ ...opening, cautions }, () => details(plan, style), style);
}

/** [lines] of a first screen. */
const SCREEN = 24;

/** Cautions that fit in so many lines, three at most, the gravest first. */
function fittingIn(cautions: readonly SaidCaution[], room: number, style: Style): SaidCaution[] {
  const kept: SaidCaution[] = [];
  let left = room;
  for (const caution of cautions) {
    const lines = wrapped(style.say(caution), style.width, "! ", "  ").length;
    if (lines > left || kept.length === 3) continue;
    kept.push(caution);
    left -= lines;
  }
  return kept;
}

function details(plan: BasePlanDocument, style: Style): string[] {
  const last = lastOf(plan);
  return [
    style.colors.bold(`  ${"".padEnd(NAME)}plug in    unplug   start   chance  warm    kWh  where`),
    ...plan.aircraft.map((row) => rowText(row, last, plan, style)),
    "",
    ...lanes(plan, style),
    ...list(
      "Why",
      plan.aircraft.flatMap((row) => row.explanation.map(style.say)),
      style,
    ),
    ...list(
      "Would help (each tried, over fewer cases)",
      plan.lifts.map((lift) => liftText(lift, last, style)),
      style,
    ),
    ...list("To do", tasks(plan), style),
    "",
    ...wrapped(comparison(plan), style.width),
    ...list(
      "Not planned",
      plan.not_planned.map((name) => `${name}: no departure is wanted`),
      style,
    ),
    ...closing({ ...plan, assumptions: [countedText(plan), ...plan.assumptions] }, style),
  ];
}

const NAME = 9;
const INDENT = "          ";
const HEADING = `${INDENT}start, heat, chance, minutes from covers off, weakest point`;

function lastOf({ aircraft }: BasePlanDocument): StampDocument {
  return aircraft.reduce((a, b) => (a.departure.at_h > b.departure.at_h ? a : b)).departure;
}

function verdictOf({ aircraft, joint_chance }: BasePlanDocument): string {
  const missed = aircraft.filter((row) => row.status === "missed").map(({ name }) => name);
  const together = aircraft.length === 1 ? "" : `; all together ${odds(joint_chance)}`;
  if (missed.length > 0) {
    const ready = aircraft.length - missed.length;
    return `${ready} of ${aircraft.length} ready in time${together}. Not ready: ${missed.join(", ")}.`;
  }
  return aircraft.length === 1 ? "Ready in time." : `All ${aircraft.length} ready in time${together}.`;
}

function aboutOf({ name, start, zone }: BasePlanDocument): string {
  return `${name}, from ${day(start)}, ${start.time.slice(11, 16)}, ${zone}`;
}

function countedText({ members }: BasePlanDocument): string {
  return `Chances are counted over ${members} drawn cases under one weather.`;
}

/** What it does, in a line; below it what that hangs on, or why it is not ready. */
function aircraftLines(row: Row, last: StampDocument, style: Style): string[] {
  const { name, departure, chance, explanation, status } = row;
  const mark = status === "ready" ? style.colors.green("ok") : style.colors.red("!!");
  const first = wrapped(
    `${clock(departure, last)} ${heatText(row, last)}, ${odds(chance)}`,
    style.width,
    `   ${name.slice(0, NAME - 3).padEnd(NAME - 2)}`,
    INDENT,
  );
  const below = status === "ready" ? readyText(row, last, style) : explanation.map(style.say).join(" ");
  return [`${mark}${first[0].slice(2)}`, ...first.slice(1), ...wrapped(below, style.width, INDENT, INDENT)];
}

/** Ways in and out of the hangar, and every time of heat. */
function heatText({ heat, hangar, status }: Row, last: StampDocument): string {
  const at = (stamp: StampDocument) => clock(stamp, last);
  const [first, ...more] = heat;
  const into = hangar?.in ? [`into the hangar ${at(hangar.in)}`] : [];
  const out = hangar === null ? [] : [`out of the hangar ${at(hangar.out)}`];
  if (first === undefined) {
    return [...into, status === "ready" ? "heat not required" : "no heat", ...out].join(", ");
  }
  const again = more.map(({ from, to }) => `again ${at(from)} to ${at(to)}`);
  return [...into, `plug in ${at(first.from)}, unplug ${at(first.to)}`, ...again, ...out].join(", ");
}

function readyText(row: Row, last: StampDocument, style: Style): string {
  const { cover_off, start_within_min, weakest, warm_weakest, aim, somebody_stays, warm_chance } = row;
  const covers = `covers off ${clock(cover_off, last)}`;
  const within = start_within_min === null ? covers : `${covers}, start within ${start_within_min} min`;
  const isWarm = aim === "warm-through";
  const point = `weakest point: ${shortTitle(style.say(isWarm ? warm_weakest : weakest))}`;
  const line = isWarm ? "warm through" : `${odds(warm_chance)} warm through`;
  return [within, line, point, ...(somebody_stays ? ["somebody must stay"] : [])].join("; ");
}

/** "cylinder heads, coldest, warm through": the part alone. */
function shortTitle(title: string): string {
  return title.split(",")[0];
}

function rowText(row: Row, day: StampDocument, plan: BasePlanDocument, { colors, width }: Style): string {
  const mark = row.status === "ready" ? colors.green("ok") : colors.red("!!");
  const cells = [
    row.name.slice(0, NAME - 2).padEnd(NAME - 2),
    (row.plug_in === null ? "none" : clock(row.plug_in, day)).padEnd(11),
    (row.unplug === null ? "" : clock(row.unplug, day)).padEnd(9),
    clock(row.departure, day).padEnd(8),
    percent(row.chance).padEnd(8),
    percent(row.warm_chance).padEnd(7),
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

function liftText(
  { text, rescues }: BasePlanDocument["lifts"][number],
  day: StampDocument,
  { say }: Style,
): string {
  const who = rescues.map(
    ({ name, chance, plug_in }) =>
      `${name} ready, ${odds(chance)}${plug_in === null ? "" : `, plugged in at ${clock(plug_in, day)}`}`,
  );
  return `${say(text)}: ${who.join("; ")}`;
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
