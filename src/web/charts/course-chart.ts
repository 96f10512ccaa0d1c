import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { app } from "../data/app.svelte.js";
import { settings } from "../data/settings.svelte.js";
import { clockText } from "../units/times.js";
import { numberText } from "../units/units.js";
import type { Courses, Tone } from "./types.js";

const VARIABLES: Readonly<Record<Tone, string>> = {
  ink: "--ink",
  warm: "--heat",
  cool: "--now",
  calm: "--window",
  soft: "--ink-soft",
};

/** Draws courses with bands, marks, a limit and logged points into `box`. */
export function drawCourses(box: HTMLElement, width: number, input: Courses): uPlot {
  const page = getComputedStyle(document.documentElement);
  const color = (tone: Tone) => page.getPropertyValue(VARIABLES[tone]).trim();
  const zone = app.view?.zone ?? "UTC";
  const ink = color("ink");
  const rule = page.getPropertyValue("--rule").trim();
  const font = `13px ${page.fontFamily}`;
  const seconds = input.times.map((t) => t / 1000);
  const columns: number[][] = [];
  const series: uPlot.Series[] = [{}];
  const bands: uPlot.Band[] = [];
  for (const { mid, low, high, tone, dash, width: thick } of input.series) {
    if (low !== undefined && high !== undefined) {
      const at = series.length;
      series.push(
        { stroke: "transparent", points: { show: false } },
        { stroke: "transparent", points: { show: false } },
      );
      columns.push([...high], [...low]);
      bands.push({ series: [at, at + 1], fill: veil(color(tone)) });
    }
    series.push({ stroke: color(tone), width: thick, dash: [...dash], points: { show: false } });
    columns.push([...mid]);
  }
  const axis: uPlot.Axis = {
    stroke: ink,
    font,
    grid: { stroke: rule, width: 1 },
    ticks: { stroke: rule, width: 1 },
  };
  box.replaceChildren();
  return new uPlot(
    {
      width,
      height: HEIGHT,
      series,
      bands,
      legend: { show: false },
      cursor: { show: false },
      scales: { x: { time: true }, y: { range: (_u, min, max) => padded(min, max, input.limit) } },
      axes: [
        {
          ...axis,
          space: 56,
          size: 32,
          values: (_u, splits) => splits.map((t) => clockText(t * 1000, zone)),
          incrs: INCREMENTS,
        },
        { ...axis, size: 44, values: (_u, splits) => splits.map((v) => numberText(v, settings.units)) },
      ],
      hooks: { draw: [(u) => drawBeside(u, input, color, font)] },
    },
    [seconds, ...columns] as uPlot.AlignedData,
    box,
  );
}

/** [px] */
const HEIGHT = 260;
/** [s] steps of the time axis, so that hours stay whole. */
const INCREMENTS = [900, 1800, 3600, 7200, 10_800, 21_600, 43_200];

function padded(min: number, max: number, limit: number | undefined): [number, number] {
  const low = Math.min(min, limit ?? min);
  const high = Math.max(max, limit ?? max);
  const pad = Math.max(2, (high - low) * 0.06);
  return [low - pad, high + pad];
}

function drawBeside(u: uPlot, input: Courses, color: (tone: Tone) => string, font: string): void {
  const { ctx, bbox } = u;
  const scale = devicePixelRatio;
  ctx.save();
  ctx.font = font.replace(/^(\d+)px/, (_, size) => `${Number(size) * scale}px`);
  ctx.textBaseline = "top";
  ctx.textAlign = "left";
  let nextRow = 0;
  for (const { at, label, tone } of input.marks ?? []) {
    const x = u.valToPos(at / 1000, "x", true);
    if (x < bbox.left - 1 || x > bbox.left + bbox.width + 1) continue;
    ctx.strokeStyle = color(tone);
    ctx.fillStyle = color(tone);
    ctx.lineWidth = 2 * scale;
    ctx.setLineDash([]);
    line(ctx, x, bbox.top, x, bbox.top + bbox.height);
    const width = ctx.measureText(label).width;
    const left = x + width + 6 * scale > bbox.left + bbox.width ? x - width - 4 * scale : x + 4 * scale;
    ctx.fillText(label, left, bbox.top + (nextRow % 3) * 15 * scale);
    nextRow++;
  }
  if (input.limit !== undefined) {
    const y = u.valToPos(input.limit, "y", true);
    ctx.strokeStyle = color("ink");
    ctx.lineWidth = 1.5 * scale;
    ctx.setLineDash([3 * scale, 4 * scale]);
    line(ctx, bbox.left, y, bbox.left + bbox.width, y);
  }
  ctx.setLineDash([]);
  for (const { at, value } of input.points ?? []) {
    ctx.beginPath();
    ctx.arc(u.valToPos(at / 1000, "x", true), u.valToPos(value, "y", true), 4.5 * scale, 0, 2 * Math.PI);
    ctx.fillStyle = color("ink");
    ctx.fill();
  }
  ctx.restore();
}

function line(ctx: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number): void {
  ctx.beginPath();
  ctx.moveTo(x1, y1);
  ctx.lineTo(x2, y2);
  ctx.stroke();
}

/** The colour, nearly transparent; the page's colours are all written #rrggbb. */
function veil(color: string): string {
  return /^#[0-9a-f]{6}$/i.test(color) ? `${color}2e` : color;
}
