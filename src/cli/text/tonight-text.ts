import type { DemoBase, PlanDocument } from "../../index.js";
import type { Style } from "../style.js";
import { planText } from "./plan-text.js";
import { bareTemperature, bareWind, clock, day, percent, unitOf, windUnit, wrapped } from "./words.js";

/** The night of a base: its weather, one line an aircraft, then the first aircraft in full. */
export function tonightText(base: DemoBase, plans: readonly PlanDocument[], style: Style): string[] {
  const [first] = plans;
  return [
    style.colors.bold(`${base.name}, night to ${day(first.departure)}, times in ${first.zone}`),
    ...wrapped(base.notice, style.width),
    "",
    ...weatherRows(base, first, style),
    "",
    style.colors.bold(`  ${"".padEnd(9)}plug in    unplug   start   chance      kWh  binds`),
    ...plans.map((plan) => baseLine(plan, style)),
    "",
    style.colors.bold(`${first.name} in full`),
    "",
    ...planText(first, style),
  ];
}

function baseLine(plan: PlanDocument, style: Style): string {
  const { name, plug_in, unplug, departure, chance, energy_kwh, status, criteria, weakest } = plan;
  const mark = status === "ready" ? style.colors.green("ok") : style.colors.red("!!");
  const cells = [
    name.padEnd(7),
    (plug_in === null ? "none" : clock(plug_in, departure)).padEnd(11),
    (plug_in === null ? "" : clock(unplug, departure)).padEnd(9),
    clock(departure, departure).padEnd(8),
    percent(chance).padEnd(9),
    energy_kwh.p50.toFixed(1).padStart(6),
    `  ${criteria.find((c) => c.id === weakest)?.title ?? weakest}`,
  ];
  return `${mark} ${cells.join("")}`.trimEnd();
}

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
