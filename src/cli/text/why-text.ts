import { type Explanation, fahrenheitFromCelsius } from "../../index.js";
import type { Style } from "../style.js";
import { bareTemperature, fact, unitOf, wrapped } from "./words.js";

const ROWS = 12;
const AXIS_WIDTH = 10;

/** One question of the teaching page in the terminal: answer, equation, source, curve. */
export function whyText(explanation: Explanation, tempC: number, style: Style): string[] {
  const { title, sentence, equation, source } = explanation;
  return [
    style.colors.bold(style.say(title)),
    ...wrapped(style.say(sentence), style.width),
    "",
    ...plot(explanation, tempC, style),
    "",
    ...fact("Equation", equation, style),
    ...fact("Source", source, style),
  ];
}

/** The answer against temperature; on a logarithmic scale where it spans more than two decades. */
function plot(explanation: Explanation, tempC: number, style: Style): string[] {
  const { x_c } = explanation.plot;
  const { y, unit } = answersIn(explanation, style);
  const columns = style.width - AXIS_WIDTH;
  const logarithmic = Math.min(...y) > 0 && Math.max(...y) > 100 * Math.min(...y);
  const shown = logarithmic ? y.map(Math.log10) : y;
  const low = Math.min(...shown);
  const high = Math.max(...shown);
  const size = high > low ? high - low : 1;
  const cells = Array.from({ length: ROWS }, () => new Array<string>(columns).fill(" "));
  const rowOf = (value: number) => Math.round(((high - value) / size) * (ROWS - 1));
  for (let x = 0; x < columns; x++) {
    const i = Math.round((x * (x_c.length - 1)) / (columns - 1));
    cells[rowOf(shown[i])][x] = "*";
  }
  const here = x_c.findIndex((c) => c >= tempC);
  const at = Math.max(0, Math.round((here * (columns - 1)) / (x_c.length - 1)));
  cells[rowOf(shown[Math.max(0, here)])][at] = "X";
  const bar = style.unicode ? "│" : "|";
  const valueAt = (row: number) => {
    const value = high - (row * size) / (ROWS - 1);
    return Number((logarithmic ? 10 ** value : value).toPrecision(2)).toString();
  };
  const first = x_c[0];
  const last = x_c[x_c.length - 1];
  const degrees = unitOf("c", style);
  const right = `${bareTemperature(last, style)} ${degrees}`;
  const left = bareTemperature(first, style).padEnd(Math.floor((columns - 1) / 2));
  const ends = `${left}${bareTemperature((first + last) / 2, style)}`;
  return [
    `${unit.padStart(AXIS_WIDTH - 2)}${logarithmic ? "  (logarithmic)" : ""}`,
    ...cells.map((row, r) => {
      const label = r % 3 === 0 || r === ROWS - 1 ? valueAt(r) : "";
      return `${label.padStart(AXIS_WIDTH - 2)} ${bar}${row.join("")}`.trimEnd();
    }),
    `${" ".repeat(AXIS_WIDTH)}${ends.padEnd(columns - right.length)}${right}`,
    `${" ".repeat(AXIS_WIDTH)}X at ${bareTemperature(tempC, style)} ${degrees}`,
  ];
}

/** The answers and their unit as the user reads them. */
function answersIn({ unit, plot: { y } }: Explanation, style: Style): { y: readonly number[]; unit: string } {
  const isFahrenheit = style.units === "f";
  if (unit === "°C") return { y: isFahrenheit ? y.map(fahrenheitFromCelsius) : y, unit: unitOf("c", style) };
  if (unit === "K") return { y: isFahrenheit ? y.map((k) => 1.8 * k) : y, unit: unitOf("k", style) };
  return { y, unit };
}
