import type { MeasuredRun } from "./measured-run.js";
import type { Population } from "./population.js";
import { type ReadingScore, type Summary, summaryOf } from "./score.js";
import { POPULATION } from "./unknowns.js";

/** [h] spans that are judged apart: just shut down, while heads fall below the oil, the slow tail. */
const SPANS = [
  { title: "up to 20 min", from: 0, to: 1 / 3 },
  { title: "20 min to 1 h", from: 1 / 3, to: 1 },
  { title: "1 to 3 h", from: 1, to: 3 },
  { title: "over 3 h", from: 3, to: 100 },
];
const PARTS = ["heads", "oil", "coolant"] as const;
const HEADER = [
  "| readings | number | occasions | in the 50 % band | in the 90 % band | median error, K | bias, K | width of the 90 % band, K | CRPS, K |",
  "|---|---|---|---|---|---|---|---|---|",
];

export interface Calibration {
  readonly runs: readonly MeasuredRun[];
  readonly population: Population;
  readonly withoutOccasion: readonly ReadingScore[];
  readonly withoutAircraft: readonly ReadingScore[];
}

/** docs/measured-runs.md: how often the bands held readings that the calibration did not know. */
export function reportPage({ runs, population, withoutOccasion, withoutAircraft }: Calibration): string {
  return [
    "# Measured engines",
    "",
    `${runs.length} runs of ${new Set(runs.map((run) => run.aircraft.id)).size} aircraft (\`data/measured-runs\`), each played by the nearest engine of the catalogue. What engines and`,
    "nights are like is calibrated on them; here every reading is foretold by a calibration that did not know it. A 90 % band",
    "should hold 90 of 100 readings, a 50 % band half of them. Bias is the middle of the band less the reading: below zero the",
    "model is too cold. Wind, covers and errors of the outside air that nobody recorded are drawn with the rest. Written by",
    "`npm run calibrate`.",
    "",
    "## Left out: the occasion (one night or flight)",
    "",
    ...HEADER,
    ...summaryRows(withoutOccasion),
    "",
    "## Left out: the aircraft, all its runs",
    "",
    ...HEADER,
    ...summaryRows(withoutAircraft),
    "",
    "CRPS is the continuous ranked probability score (Gneiting and Raftery 2007, equation 21): the error of a forecast that",
    "says how unsure it is, zero at best.",
    "",
    "## What the runs made of the judgement",
    "",
    "ln of each parameter's multiplier; the last column is what a plan for an aircraft without a log of its own draws from.",
    "",
    "| parameter | mean | mean known to | between aircraft | between nights | in all |",
    "|---|---|---|---|---|---|",
    ...POPULATION.map((name, p) => {
      const { mean, ofMean, betweenAircraft, betweenNights, sd } = population;
      return `| ${name.replaceAll("_", " ")} | ${[mean, ofMean, betweenAircraft, betweenNights, sd].map((of) => of[p].toFixed(2)).join(" | ")} |`;
    }),
    "",
    `Beside all that, readings are off by ${population.modelError.toFixed(1)} K.`,
    "",
    "<details><summary>Every reading, its occasion left out</summary>",
    "",
    "| run | part | after, h | read, °C | said, °C | width of the 90 % band, K | held |",
    "|---|---|---|---|---|---|---|",
    ...withoutOccasion.map(
      ({ run, reading, mid, width90, in90 }) =>
        `| ${run.run} | ${reading.part} | ${reading.at_h.toFixed(2)} | ${reading.c} | ${mid.toFixed(0)} | ${width90.toFixed(0)} | ${in90 ? "yes" : "no"} |`,
    ),
    "",
    "</details>",
    "",
  ].join("\n");
}

function summaryRows(scores: readonly ReadingScore[]): string[] {
  const rows = SPANS.flatMap(({ title, from, to }) =>
    PARTS.map((part): [string, ReadingScore[]] => [
      `${part}, cooling, ${title}`,
      scores.filter(
        ({ run, reading }) =>
          run.process === "cool-down" && reading.part === part && reading.at_h > from && reading.at_h <= to,
      ),
    ]),
  );
  return [
    summaryRow("all", scores),
    ...rows.filter(([, of]) => of.length > 0).map(([title, of]) => summaryRow(title, of)),
    summaryRow(
      "heating",
      scores.filter(({ run }) => run.process === "heat-up"),
    ),
  ];
}

function summaryRow(title: string, scores: readonly ReadingScore[]): string {
  const s: Summary = summaryOf(scores);
  const occasions = new Set(scores.map(({ run }) => run.occasion ?? run.run)).size;
  const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
  return `| ${title} | ${s.readings} | ${occasions} | ${percent(s.in50)} | ${percent(s.in90)} | ${s.medianError.toFixed(1)} | ${s.bias.toFixed(1)} | ${s.width90.toFixed(0)} | ${s.crps.toFixed(1)} |`;
}
