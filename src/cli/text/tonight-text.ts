import { eachOnce } from "../../findings/index.js";
import { weakestLine } from "../../first-screen/index.js";
import type { DemoBase, PlanDocument } from "../../index.js";
import type { Style } from "../style.js";
import { screen } from "./opening.js";
import { planDetails } from "./plan-text.js";
import { bareTemperature, bareWind, clock, day, odds, unitOf, windUnit, wrapped } from "./words.js";

/** The night of a base: one verdict, its weather, two lines an aircraft; everything else of each behind it. */
export function tonightText(base: DemoBase, plans: readonly PlanDocument[], style: Style): string[] {
  const [first] = plans;
  // The first of each aircraft before the second of any.
  const ranked = [0, 1, 2].flatMap((rank) =>
    plans.flatMap((plan) => plan.first_cautions.slice(rank, rank + 1)),
  );
  return screen(
    {
      verdict: verdictOf(plans),
      about: `${base.name}, night to ${day(first.departure)}, ${first.zone}`,
      table: [
        ...weatherRows(base, first, style),
        "",
        HEADING,
        ...plans.flatMap((plan) => planRows(plan, style)),
      ],
      facts: [],
      cautions: eachOnce(ranked),
    },
    () => [
      ...wrapped(base.notice, style.width),
      ...plans.flatMap((plan) => [
        "",
        style.colors.bold(`${plan.name} in full`),
        ...planDetails(plan, style),
      ]),
    ],
    style,
  );
}

function isGo({ status }: PlanDocument): boolean {
  return status === "ready" || status === "not-required";
}

function verdictOf(plans: readonly PlanDocument[]): string {
  const late = plans.filter((plan) => !isGo(plan)).map(({ name }) => name);
  if (late.length === 0) return plans.length === 1 ? "Ready in time." : `All ${plans.length} ready in time.`;
  return `${plans.length - late.length} of ${plans.length} ready in time; not ${late.join(", ")}.`;
}

/** What to do in one line, and what it hangs on in the next. */
function planRows(plan: PlanDocument, style: Style): string[] {
  const { name, departure, plug_in, chance, look_first, heaters } = plan;
  const mark = isGo(plan) ? style.colors.green("ok") : style.colors.red("!!");
  const { happenings, start_within_min: within } = plan;
  const isCovered = within !== null && happenings.some((h) => h.do === "cover_off");
  const left = isCovered ? [`start within ${style.values.left(within)}`] : [];
  const act = [heatText(plan), ...left, odds(chance)].join(", ");
  const watched = heaters.some((h) => h.attended) && plug_in !== null ? "; somebody must stay" : "";
  const why =
    look_first.length > 0
      ? look_first.map(({ text }) => style.say(text)).join(" ")
      : // The weakest point without its limit.
        style.say(weakestLine(plan)).replace(/; .*$/, "");
  return [
    ...wrapped(`${clock(departure, departure)} ${act}`, style.width, `${mark} ${name.padEnd(7)}`, INDENT),
    ...wrapped(`${why}${watched}`, style.width, INDENT, INDENT),
  ];
}

function heatText({ status, plug_in, unplug, heating, departure }: PlanDocument): string {
  const at = (stamp: typeof departure) => clock(stamp, departure);
  if (status === "not-required") return "preheat not required";
  if (plug_in !== null) return `plug in ${at(plug_in)}, unplug ${at(unplug)}`;
  return heating?.stays_on ? `heat is on, unplug ${at(unplug)}` : "no heat can be used";
}

const HEADING = "          start, heat, minutes from covers off, chance, weakest point";

const INDENT = " ".repeat(10);

function weatherRows({ scenarios }: DemoBase, { start }: PlanDocument, style: Style): string[] {
  const points = scenarios[0].weather.points ?? [];
  const shown = points.filter((_, i) => i % 3 === 0);
  const hour = Number(start.time.slice(11, 13));
  const row = (label: string, cells: readonly string[]) =>
    `  ${label.padEnd(10)}${cells.map((c) => c.padStart(6)).join("")}`;
  return [
    row(
      "",
      shown.map((p) => `${String((hour + (p.at_h ?? 0)) % 24).padStart(2, "0")}:00`),
    ),
    row(
      `air ${unitOf("c", style)}`,
      shown.map((p) => bareTemperature(p.air_c, style)),
    ),
    row(
      `wind ${windUnit(style)}`,
      shown.map((p) => bareWind(p.wind_mps ?? 0, style)),
    ),
  ];
}
