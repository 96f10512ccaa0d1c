import { type CourseDocument, fahrenheitFromCelsius, localText } from "../../index.js";
import type { Style } from "../style.js";
import { bareTemperature, unitOf } from "./words.js";

/** What a chart shows: medians as letters, 5-95 % as a shade, outside air as dots. */
export interface Chart {
  readonly course: CourseDocument;
  /** [h] since the start. */
  readonly from_h: number;
  readonly to_h: number;
  /** [s] since epoch of the scenario's start. */
  readonly start: number;
  readonly zone: string;
  /** Moments named below the time axis by one letter. */
  readonly marks: readonly { readonly at_h: number; readonly letter: string; readonly label: string }[];
  /** [°C] drawn as a line: the least that is needed. */
  readonly limit_c?: number | undefined;
}

interface Line {
  readonly part: string;
  readonly letter: string;
  readonly label: string;
  readonly color: "yellow" | "cyan" | "magenta" | "blue";
  readonly band: boolean;
}

/** In the order of drawing: the later lie on top. */
const LINES: readonly Line[] = [
  { part: "outside_air", letter: ".", label: "outside air", color: "blue", band: false },
  { part: "heads", letter: "h", label: "coldest head", color: "magenta", band: true },
  { part: "crankshaft", letter: "c", label: "crankshaft", color: "cyan", band: true },
  { part: "oil", letter: "o", label: "oil", color: "yellow", band: true },
];

const MOST_ROWS = 20;
const AXIS_WIDTH = 7;

type Cell = { readonly text: string; readonly color?: Line["color"] | undefined };

/** Temperatures against local time. */
export function chartLines(chart: Chart, style: Style): string[] {
  const columns = style.width - AXIS_WIDTH;
  const hours = Array.from(
    { length: columns },
    (_, x) => chart.from_h + (x * (chart.to_h - chart.from_h)) / (columns - 1),
  );
  const scale = scaleOf(chart, hours, style);
  const cells: Cell[][] = Array.from({ length: scale.rows }, () =>
    Array.from({ length: columns }, () => ({ text: " " })),
  );
  drawLimit(cells, chart, scale, style);
  for (const line of LINES) drawBand(cells, chart, line, hours, scale, style);
  for (const line of LINES) drawMedian(cells, chart, line, hours, scale);
  const axis = style.unicode ? "│" : "|";
  const rows = cells.map((row, y) => {
    const label = y % 2 === 0 ? String(scale.labelOf(y)) : "";
    return `${label.padStart(AXIS_WIDTH - 2)} ${axis}${row.map((cell) => colored(cell, style)).join("")}`.trimEnd();
  });
  return [
    `${unitOf("c", style).padStart(AXIS_WIDTH - 2)}`,
    ...rows,
    ...timeAxis(chart, columns, style),
    ...legend(chart, style),
  ];
}

interface Scale {
  readonly rows: number;
  rowOf(celsius: number): number;
  /** In the user's unit. */
  labelOf(row: number): number;
}

/** Rows stand for round steps of the user's unit. */
function scaleOf({ course, limit_c }: Chart, hours: readonly number[], style: Style): Scale {
  const shown = (celsius: number) => (style.units === "f" ? fahrenheitFromCelsius(celsius) : celsius);
  const values = LINES.flatMap(({ part, band }) => {
    const { p05_c, p50_c, p95_c } = course.parts[part];
    return hours.flatMap((h) =>
      (band ? [p05_c, p95_c] : [p50_c]).map((series) => shown(valueAt(course, series, h))),
    );
  });
  if (limit_c !== undefined) values.push(shown(limit_c));
  const low = Math.min(...values);
  const high = Math.max(...values);
  const span = (step: number) => Math.ceil(high / step) - Math.floor(low / step);
  const step = STEPS.find((s) => span(s) < MOST_ROWS) ?? STEPS[STEPS.length - 1];
  const top = Math.ceil(high / step);
  return {
    rows: span(step) + 1,
    rowOf: (celsius) => top - Math.round(shown(celsius) / step),
    labelOf: (row) => (top - row) * step,
  };
}

/** [°C or °F] a row. */
const STEPS = [1, 2, 5, 10, 20];

/** Linear between the course's times. */
function valueAt({ time_h }: CourseDocument, series: readonly number[], hour: number): number {
  const next = time_h.findIndex((h) => h >= hour);
  if (next < 0) return series[series.length - 1];
  if (next === 0) return series[0];
  const share = (hour - time_h[next - 1]) / (time_h[next] - time_h[next - 1]);
  return series[next - 1] + share * (series[next] - series[next - 1]);
}

function drawLimit(cells: Cell[][], { limit_c }: Chart, scale: Scale, { unicode }: Style): void {
  if (limit_c === undefined) return;
  cells[scale.rowOf(limit_c)].fill({ text: unicode ? "┄" : "-" });
}

function drawBand(
  cells: Cell[][],
  { course }: Chart,
  line: Line,
  hours: readonly number[],
  scale: Scale,
  style: Style,
): void {
  if (!line.band) return;
  const { p05_c, p95_c } = course.parts[line.part];
  const text = style.unicode ? "░" : ":";
  hours.forEach((hour, x) => {
    const top = scale.rowOf(valueAt(course, p95_c, hour));
    const bottom = scale.rowOf(valueAt(course, p05_c, hour));
    for (let y = top; y <= bottom; y++) cells[y][x] = { text, color: line.color };
  });
}

function drawMedian(
  cells: Cell[][],
  { course }: Chart,
  line: Line,
  hours: readonly number[],
  scale: Scale,
): void {
  const { p50_c } = course.parts[line.part];
  hours.forEach((hour, x) => {
    cells[scale.rowOf(valueAt(course, p50_c, hour))][x] = { text: line.letter, color: line.color };
  });
}

function colored({ text, color }: Cell, { colors }: Style): string {
  return color === undefined ? text : colors[color](text);
}

function timeAxis(
  { from_h, to_h, start, zone, marks }: Chart,
  columns: number,
  { unicode }: Style,
): string[] {
  const column = (hour: number) => Math.round(((hour - from_h) / (to_h - from_h)) * (columns - 1));
  const step = [1, 2, 3, 4, 6, 12].find((h) => ((to_h - from_h) / h) * 7 <= columns) ?? 24;
  const ruler = new Array<string>(columns).fill(unicode ? "─" : "-");
  const labels = new Array<string>(columns + 2).fill(" ");
  const named = new Array<string>(columns).fill(" ");
  let written = -1;
  // Whole local hours: with daylight saving, their distance from the start may change on the way.
  for (
    let epoch = Math.ceil((start + from_h * 3600) / 3600) * 3600;
    epoch <= start + to_h * 3600;
    epoch += 3600
  ) {
    const text = localText(epoch, zone).slice(11, 16);
    if (!text.endsWith(":00") || Number(text.slice(0, 2)) % step !== 0) continue;
    const x = column((epoch - start) / 3600);
    ruler[x] = unicode ? "┴" : "+";
    // The row begins two columns before the axis, so that the first label can be centred too.
    const left = Math.min(x, columns - 3);
    if (left <= written) continue;
    written = left + 5;
    for (let i = 0; i < 5; i++) labels[left + i] = text[i];
  }
  for (const { at_h, letter } of marks) {
    const x = column(at_h);
    if (x >= 0 && x < columns) named[x] = letter;
  }
  const corner = unicode ? "└" : "+";
  const indent = " ".repeat(AXIS_WIDTH);
  return [
    `${" ".repeat(AXIS_WIDTH - 1)}${corner}${ruler.join("")}`,
    `${indent.slice(2)}${labels.join("")}`.trimEnd(),
    `${indent}${named.join("")}`.trimEnd(),
  ];
}

function legend({ marks, limit_c }: Chart, style: Style): string[] {
  const { colors, unicode } = style;
  const lines = [...LINES].reverse().map(({ letter, label, color }) => `${colors[color](letter)} ${label}`);
  const shade = `${unicode ? "░" : ":"} 5-95 %`;
  const need =
    limit_c === undefined ? [] : [`${unicode ? "┄" : "-"} needed ${bareTemperature(limit_c, style)}`];
  const moments = marks.filter(({ label }) => label !== "").map(({ letter, label }) => `${letter} ${label}`);
  const indent = " ".repeat(AXIS_WIDTH);
  return [`${indent}${[...lines, shade, ...need].join("  ")}`, `${indent}${moments.join("  ")}`.trimEnd()];
}
