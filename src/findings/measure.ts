/** A value in the unit that documents give it: °C, K, rpm, percent, times, of 100, pieces. */
export interface Measure {
  value: number;
  unit: "c" | "k" | "rpm" | "percent" | "ratio" | "index" | "count";
}
