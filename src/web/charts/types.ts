export type Tone = "ink" | "warm" | "cool" | "calm" | "soft";

/** One line with its band, in the unit shown. */
export interface ChartSeries {
  readonly name: string;
  readonly mid: readonly number[];
  readonly low?: readonly number[];
  readonly high?: readonly number[];
  readonly tone: Tone;
  /** Empty for an unbroken line; lines differ by their strokes, not by colour alone. */
  readonly dash: readonly number[];
  readonly width: number;
}

/** An upright line at a time. */
interface ChartMark {
  readonly at: number;
  readonly label: string;
  readonly tone: Tone;
}

export interface Courses {
  readonly series: readonly ChartSeries[];
  /** [ms] */
  readonly times: readonly number[];
  readonly marks?: readonly ChartMark[];
  readonly limit?: number | undefined;
  readonly points?: readonly { readonly at: number; readonly value: number }[];
}
