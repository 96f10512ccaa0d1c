import type { Said } from "../../findings/index.js";
import type { NowDocument } from "../../index.js";
import type { Style } from "../style.js";
import { criteriaTable } from "./criteria-text.js";
import { startFacts } from "./start-text.js";
import {
  assumed,
  bareTemperature,
  cared,
  clock,
  DEFERENCE,
  day,
  list,
  odds,
  unitOf,
  wrapped,
} from "./words.js";

const SAID: Readonly<Record<NowDocument["deviations"][number]["finding"], string>> = {
  "heater-not-heating": "the heater does not seem to heat",
  "cover-off": "the cover seems to be off",
  "other-place": "the aircraft does not seem to stand where the document says",
  "probe-out": "the probe seems to have come off its part",
};

/** Can I start? Every part now, also those no probe sees. */
export function nowText(now: NowDocument, style: Style): string[] {
  const { name, aircraft, at, zone, probes, deviations, criteria, assumptions, log_findings } = now;
  return [
    ...wrapped(answer(now, style), style.width).map((line) => style.colors.bold(line)),
    ...wrapped(
      `${name} (${aircraft.name}) at ${clock(at, at)} on ${day(at)}, times in ${zone}. Probes: ${probes.map((p) => `${p.name} on ${p.part}, ${p.readings} readings${p.left_aside > 0 ? ` (${p.left_aside} ignored)` : ""}`).join("; ")}.`,
      style.width,
    ),
    ...list(
      "Check this",
      [
        ...deviations.map(
          (d) =>
            `${SAID[d.finding]}${d.probe === undefined ? "" : ` (${d.probe})`}: chance ${odds(d.chance)}${d.believed ? "; the numbers below assume it" : ""}`,
        ),
        ...assumptions.filter(isContradiction).map(style.say),
      ],
      style,
    ),
    "",
    ...partsTable(now, style),
    "",
    ...criteriaTable(criteria, 0.9, style),
    ...startFacts(now.start_briefing, style),
    ...list(
      "Left out of the log, or doubtful",
      log_findings.map((f) => `${f.place}: ${f.kind}, expected ${f.expected}, received ${f.received}`),
      style,
    ),
    ...assumed(
      assumptions.filter((one) => !isContradiction(one)),
      style,
    ),
    ...cared(now.cautions, style),
    "",
    ...wrapped(DEFERENCE, style.width),
  ];
}

function isContradiction(said: Said): boolean {
  return typeof said === "object" && said.code === "reading-contradicts";
}

function answer({ chance, criteria, weakest, at }: NowDocument, { say }: Style): string {
  const short = say(criteria.find((c) => c.id === weakest)?.title ?? weakest);
  return `At ${clock(at, at)}: ready in ${odds(chance)} cases. Weakest point: ${short}.`;
}

function partsTable({ parts, probes }: NowDocument, style: Style): string[] {
  const seen = new Set(probes.map((p) => (p.part === "barrels" ? "cylinders" : p.part)));
  const heading = `${"part now".padEnd(34)}${"middle".padStart(8)}${"9 in 10".padStart(14)}  ${unitOf("c", style)}`;
  return [
    style.colors.bold(heading),
    ...Object.entries(parts).map(([part, { p05_c, p50_c, p95_c }]) => {
      const shown = (c: number) => bareTemperature(c, style);
      const mark = seen.has(part) ? "  probe" : "";
      const label = part === "cylinders" ? "barrels" : part.replace(/^heater:/, "").replaceAll("_", " ");
      return `${label.padEnd(34)}${shown(p50_c).padStart(8)}${`${shown(p05_c)}..${shown(p95_c)}`.padStart(14)}${mark}`;
    }),
  ];
}
