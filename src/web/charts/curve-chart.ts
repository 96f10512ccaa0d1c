import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";

export interface Curve {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** The point that is spoken of. */
  readonly at: { readonly x: number; readonly y: number };
  /** How numbers stand on the axes. */
  readonly number: (value: number) => string;
  readonly isLog: boolean;
}

/** Draws one curve over a plain axis, with a mark at the point spoken of. */
export function drawCurve(box: HTMLElement, width: number, curve: Curve): uPlot {
  const page = getComputedStyle(document.documentElement);
  const read = (name: string) => page.getPropertyValue(name).trim();
  const axis: uPlot.Axis = {
    stroke: read("--ink"),
    font: `13px ${page.fontFamily}`,
    grid: { stroke: read("--rule"), width: 1 },
    ticks: { stroke: read("--rule"), width: 1 },
    values: (_u, splits) => splits.map((v) => (v === null ? "" : curve.number(v))),
  };
  box.replaceChildren();
  return new uPlot(
    {
      width,
      height: 240,
      legend: { show: false },
      cursor: { show: false },
      scales: { x: { time: false }, y: curve.isLog ? { distr: 3 } : {} },
      series: [{}, { stroke: read("--ink"), width: 2.5, points: { show: false } }],
      axes: [
        { ...axis, size: 32 },
        { ...axis, size: 66 },
      ],
      hooks: { draw: [(u) => drawPoint(u, curve.at, read("--now"))] },
    },
    [[...curve.x], [...curve.y]],
    box,
  );
}

function drawPoint(u: uPlot, at: Curve["at"], color: string): void {
  const x = u.valToPos(at.x, "x", true);
  const y = u.valToPos(at.y, "y", true);
  const { ctx } = u;
  ctx.save();
  ctx.strokeStyle = color;
  ctx.fillStyle = color;
  ctx.lineWidth = 2 * devicePixelRatio;
  ctx.beginPath();
  ctx.moveTo(x, u.bbox.top);
  ctx.lineTo(x, u.bbox.top + u.bbox.height);
  ctx.stroke();
  ctx.beginPath();
  ctx.arc(x, y, 6 * devicePixelRatio, 0, 2 * Math.PI);
  ctx.fill();
  ctx.restore();
}
