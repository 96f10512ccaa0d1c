/** Steps in which heat may begin: step k at `origin + k * width` [s since the start]; the start lies in step 0. */
export interface PlugInGrid {
  readonly origin: number;
  readonly width: number;
}

/** [s] finer than anybody plugs in. */
export const PLUG_IN_STEP = 300;

/** Steps that begin at whole multiples of the width by the clock, so that a plan made a little later has the same steps. */
export function plugInGrid(start: number, width = PLUG_IN_STEP): PlugInGrid {
  // Adding 0 turns -0 into 0.
  return { origin: -(((start % width) + width) % width) + 0, width };
}

/** The first time of a step, not before the start [s]. */
export function timeOf({ origin, width }: PlugInGrid, step: number): number {
  return Math.max(0, origin + step * width);
}

/** The step that a time lies in. */
export function stepAt({ origin, width }: PlugInGrid, t: number): number {
  return Math.floor((t - origin) / width);
}

/** The step at whose beginning a time lies, or the next one; the start begins step 0. */
export function stepFrom({ origin, width }: PlugInGrid, t: number): number {
  return t <= 0 ? 0 : Math.ceil((t - origin) / width);
}
