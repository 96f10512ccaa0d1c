import type { LearningDocument } from "../../index.js";
import type { Style } from "../style.js";
import { assumed, clock, day, fact, list, ofHundred, wrapped } from "./words.js";

/** What a log taught, for an owner: what changed, what is still open, what to read next. */
export function learningText(learning: LearningDocument, style: Style): string[] {
  const { name, aircraft, log, untold, suspicious, probes, assumptions } = learning;
  return [
    ...wrapped(headline(learning, style), style.width).map((line) => style.colors.bold(line)),
    ...wrapped(`${name} (${aircraft.name}), from ${log.readings} readings (${log.origin}).`, style.width),
    "",
    ...contradictionList(learning, style),
    ...multiplierTable(learning, style),
    ...list("The log did not show", untold.map(style.say), style),
    ...list(
      "Check these: so far off that a probe, an event or the kit may not be as described",
      suspicious.map(style.say),
      style,
    ),
    "",
    style.colors.bold("Probes: reading minus model"),
    ...probes.flatMap((p) =>
      wrapped(
        `${p.name}${coolingText(p)}: off by ${style.values.difference(p.offset_k)}, follows in ${Math.round(p.lag_s)} s; fits to ${style.values.difference(p.rms_k)}, at worst ${style.values.difference(p.worst_k)}; ${ofHundred(p.coverage)} within the 9 in 10 band`,
        style.width,
        "- ",
      ),
    ),
    ...missFact(learning, style),
    "",
    ...nextFacts(learning, style),
    ...columnList(learning, style),
    ...list(
      "Left out of the log, or doubtful",
      log.findings.map(
        (f) =>
          `${f.place}: ${f.kind}, expected ${f.expected}, received ${f.received}${f.rejected ? "" : " (kept)"}`,
      ),
      style,
    ),
    ...assumed(assumptions, style),
  ];
}

/** Readings that were not averaged away. */
function contradictionList({ contradictions }: LearningDocument, style: Style): string[] {
  if (contradictions.length === 0) return [];
  const lines = contradictions.map(({ probe, readings, at, reading_c, model_c }) => {
    const [read, said] = [style.values.temp(reading_c), style.values.temp(model_c)];
    return `${probe}, ${clock(at, at)} on ${day(at)}: ${read} where the model says ${said} (${readings} readings)`;
  });
  return [
    ...list("Contradict the model: is it the probe, its place, or the model?", lines, style).slice(1),
    "",
  ];
}

function coolingText({ cooling_since: since }: LearningDocument["probes"][number]): string {
  return since === undefined ? "" : `, cooling since ${clock(since, since)}`;
}

/** What each column was taken for; what has nothing to do with temperatures in one line. */
function columnList({ log: { columns, engine } }: LearningDocument, style: Style): string[] {
  const used = columns.filter(({ as }) => as !== "not-used");
  const of = (why: string) => columns.flatMap((c) => (c.why === why ? [c.column] : []));
  const [open, others, otherEngine] = [of("open"), of("other-quantity"), of("other-engine")];
  const together = new Map<string, string[]>();
  for (const { column, as, unit, unit_by, group } of used) {
    const inUnit = unit === undefined ? "" : `, °${unit.toUpperCase()}`;
    const by = unit_by === undefined ? "" : " by their values";
    const use = `${as.replace(/[_-]/g, " ")}${inUnit}${by}${group === undefined ? "" : ", the mean of all"}`;
    together.set(use, [...(together.get(use) ?? []), column]);
  }
  const lines = [
    ...[...together].map(([use, of]) => `${of.join(", ")}: ${use}`),
    ...(open.length > 0 ? [`left out, its name tells no place: ${open.join(", ")}`] : []),
    ...(engine === undefined
      ? []
      : [`engine ${engine} of two; left out: ${otherEngine.join(", ")} (--log-engine ${3 - engine})`]),
    ...(others.length > 0 ? [`no temperatures: ${others.join(", ")}`] : []),
  ];
  return list('Columns, as taken. Wrong? --column "NAME=PART", =not-used; --log-unit c or f', lines, style);
}

/** A model that misses by more than usual is more often a wrong description than a strange aircraft. */
function missFact({ discrepancy_scale }: LearningDocument, style: Style): string[] {
  if (discrepancy_scale <= 1) return [];
  const text = `The model misses these readings by ${discrepancy_scale.toFixed(1)} times as much as usual: check events and probe places.`;
  return ["", ...wrapped(text, style.width)];
}

function headline({ multipliers }: LearningDocument, style: Style): string {
  const taught = multipliers.filter((m) => m.left < 0.8);
  if (taught.length === 0)
    return "The log taught nothing worth naming. Log more parts, through a plug-in and an unplugging.";
  const best = [...taught].sort((a, b) => a.left - b.left).slice(0, 3);
  return `Learned ${taught.length} of ${multipliers.length} numbers of this aircraft. Most of all: ${best.map((m) => style.say(m.label)).join("; ")}.`;
}

const LABEL_WIDTH = 50;

function multiplierTable({ multipliers }: LearningDocument, style: Style): string[] {
  const heading = `${"times the catalogue value".padEnd(LABEL_WIDTH)}${"value".padStart(7)}${"9 in 10".padStart(14)}${"open".padStart(7)}`;
  return [
    style.colors.bold(heading),
    ...multipliers.map(({ label: said, multiplier, within, left }) => {
      const label = style.say(said);
      const band = `${(multiplier / within).toFixed(2)}..${(multiplier * within).toFixed(2)}`;
      const short = label.length < LABEL_WIDTH ? label : `${label.slice(0, LABEL_WIDTH - 3)}..`;
      return `${short.padEnd(LABEL_WIDTH)}${multiplier.toFixed(2).padStart(7)}${band.padStart(14)}${`${Math.round(100 * left)} %`.padStart(7)}`;
    }),
  ];
}

function nextFacts({ next_readings }: LearningDocument, style: Style): string[] {
  const [best, second] = next_readings.readings;
  if (best === undefined) return [];
  const words = (r: typeof best) =>
    `${r.part.replace("_", " ")} at ${clock(r.at, r.at)} on ${day(r.at)}: to ±${style.values.difference(r.sd_after_k)}`;
  const text = [best, ...(second === undefined ? [] : [second])].map(words).join("; ");
  return fact(
    "Read next",
    `the crankshaft at departure is known to ±${style.values.difference(next_readings.sd_k)}. One more reading helps most here: ${text}`,
    style,
  );
}
