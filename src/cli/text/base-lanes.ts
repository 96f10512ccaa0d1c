import { type BasePlanDocument, localText } from "../../index.js";
import type { Style } from "../style.js";

/** [characters] of the names on the left. */
const NAMES = 10;

/** One lane an aircraft on a common time axis, the load of each circuit below. */
export function lanes(plan: BasePlanDocument, style: Style): string[] {
  const { unicode, colors, width } = style;
  const columns = width - NAMES - 1;
  const until = Math.min(plan.hours, Math.max(...plan.aircraft.map((row) => row.departure.at_h)) + 1);
  const spans = Array.from({ length: columns }, (_, x) => ({
    from: (x * until) / columns,
    to: ((x + 1) * until) / columns,
  }));
  const look = unicode
    ? { heat: "█", plugged: "·", hangar: "▁", start: "S", bar: "│" }
    : { heat: "#", plugged: ".", hangar: "_", start: "S", bar: "|" };
  const rows = plan.aircraft.map((row) => {
    const cells = spans.map(({ from, to }) => {
      const within = (a: number, b: number) => a < to && b > from;
      if (row.departure.at_h >= from && row.departure.at_h < to) return colors.bold(look.start);
      if (row.heat.some((h) => within(h.from.at_h, h.to.at_h))) return colors.yellow(look.heat);
      const { hangar, connected } = row;
      if (hangar !== null && within(hangar.in?.at_h ?? 0, hangar.out.at_h)) return colors.cyan(look.hangar);
      if (connected.some((c) => within(c.from.at_h, c.to.at_h))) return look.plugged;
      return " ";
    });
    return `${row.name.slice(0, NAMES - 1).padEnd(NAMES)}${look.bar}${cells.join("").trimEnd()}`;
  });
  const loads = plan.circuits.flatMap((circuit) => {
    const cells = spans.map(({ from, to }) => eighth(mostWithin(circuit, from, to), circuit.limit_a, style));
    const label = circuit.name.slice(0, NAMES - 1).padEnd(NAMES);
    return [`${label}${look.bar}${cells.join("").trimEnd()}`];
  });
  const used = plan.circuits.map(
    (c) =>
      `${c.name}: at most ${c.most_a.toFixed(1)} A of ${c.limit_a.toFixed(1)} A (breaker ${c.breaker_a} A), ${Math.max(...c.outlets_used)} of ${c.outlets} outlets`,
  );
  return [
    ...rows,
    ...axis(plan, until, columns, style),
    ...loads,
    `${" ".repeat(NAMES + 1)}${look.heat} heat  ${look.plugged} plugged in  ${look.hangar} in the hangar  ${look.start} start`,
    ...used.map((text) => `${" ".repeat(NAMES + 1)}${text}`.slice(0, width)),
  ];
}

/** [A] the most between two times. */
function mostWithin(
  { time_h, load_a }: BasePlanDocument["circuits"][number],
  from: number,
  to: number,
): number {
  return Math.max(
    0,
    ...load_a.filter((_, k) => time_h[k] < to && (time_h[k + 1] ?? Number.POSITIVE_INFINITY) > from),
  );
}

/** Part of what may be planned, as a bar, or in tenths. */
function eighth(load: number, limit: number, { unicode }: Style): string {
  if (load <= 0) return " ";
  const share = load / limit;
  if (unicode) return "▁▂▃▄▅▆▇█"[Math.min(7, Math.floor(share * 8))] ?? "█";
  return String(Math.min(9, Math.floor(share * 10)));
}

function axis(
  { start, zone }: BasePlanDocument,
  until: number,
  columns: number,
  { unicode }: Style,
): string[] {
  const epoch = Date.parse(start.time) / 1000;
  const step = [1, 2, 3, 4, 6, 12].find((h) => (until / h) * 7 <= columns) ?? 24;
  const ruler = new Array<string>(columns).fill(unicode ? "─" : "-");
  const labels = new Array<string>(columns + 3).fill(" ");
  for (let t = Math.ceil(epoch / 3600) * 3600; t <= epoch + until * 3600; t += 3600) {
    const text = localText(t, zone).slice(11, 16);
    if (!text.endsWith(":00") || Number(text.slice(0, 2)) % step !== 0) continue;
    const x = Math.min(columns - 1, Math.round((((t - epoch) / 3600) * columns) / until));
    ruler[x] = unicode ? "┴" : "+";
    const left = Math.min(x, columns - 4);
    if (labels.slice(left, left + 5).some((c) => c !== " ")) continue;
    for (let i = 0; i < 5; i++) labels[left + i] = text[i];
  }
  return [
    `${" ".repeat(NAMES)}${unicode ? "└" : "+"}${ruler.join("")}`,
    // Labels are centred on their marks, two columns to the left.
    `${" ".repeat(NAMES - 1)}${labels.join("")}`.trimEnd(),
  ];
}
