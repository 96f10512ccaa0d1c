import { HEATERS, type Heater } from "../../src/aircraft/index.js";
import type { AnswerDocument } from "../../src/documents/answer-document.js";
import { isTooSmall } from "../../src/planning/index.js";
import { english } from "../../src/words/index.js";
import { type Advice, heatSpans, isInside, isInsideBy, STAMP, trueHeater } from "./heat-spans.js";
import { changesOf } from "./replay.js";

/** [h] a heater that was on too long has to rest before it is a new go; project judgement. */
const REST = 1;
const HOT_AIR_LEAST = 0.5;

/** Never 1: no heater is planned beyond its own limits. */
export function heatersWithinLimits(advice: Advice): string[] {
  const { read, plan } = advice;
  const spans = heatSpans(advice);
  const found: string[] = [];
  for (const span of spans) {
    const { heater, from, to, isPlanned, isKept } = span;
    const { id, longest_on_h, least_on_h, runs } = heater;
    if (!isPlanned && !isKept) continue;
    const before = spans.find(
      (s) => s !== span && s.heater === heater && s.to <= from && from - s.to < REST - STAMP,
    );
    const hours = to - (before?.from ?? from);
    if (hours > longest_on_h + STAMP)
      found.push(`${id} on for ${hours.toFixed(2)} h, at most ${longest_on_h} h`);
    if (isPlanned && to - from < least_on_h - STAMP) {
      found.push(`${id} on for ${(to - from).toFixed(2)} h, at least ${least_on_h} h`);
    }
    if (runs === "outdoors" && isInside(advice, from, to)) found.push(`${id} on in the hangar`);
    if (isTooSmall(read.scenario.installation, heater)) found.push(`${id} on an engine too small for it`);
  }
  for (const { id, attended, least_on_h, longest_on_h } of plan.heaters) {
    const heater = trueHeater(id);
    if (attended !== heater.attended) found.push(`${id} said as ${attended ? "" : "not "}attended`);
    if (least_on_h !== heater.least_on_h || longest_on_h !== heater.longest_on_h)
      found.push(`${id} with other limits`);
    if (isTooSmall(read.scenario.installation, heater))
      found.push(`${id} listed for an engine too small for it`);
  }
  for (const heater of spans.filter((s) => s.isPlanned || s.isKept).map((s) => s.heater)) {
    if (!plan.heaters.some(({ id }) => id === heater.id)) found.push(`${heater.id} runs and is not listed`);
  }
  return found;
}

/** Never 1: no plug-in is shown for comparison or for choice that the heaters' limits forbid. */
export function shownWithinLimits(advice: Advice): string[] {
  const { plan } = advice;
  const shown = [
    plan.lines.least.plug_in,
    plan.lines.warm_through.plug_in,
    ...plan.curve.map((e) => e.plug_in),
    ...plan.late.map((e) => e.plug_in),
    ...plan.habits.map((e) => e.plug_in),
  ].flatMap((stamp) => stamp?.at_h ?? []);
  const heaters = plan.heaters.map(({ id }) => trueHeater(id)).filter((h) => !isOnAlready(advice, h));
  return shown.flatMap((from) =>
    heaters.flatMap((heater) =>
      beyond((a, b) => isInside(advice, a, b), heater, from, plan.unplug.at_h).map(
        (text) => `shown: ${text}`,
      ),
    ),
  );
}

function isOnAlready({ plan }: Advice, { id }: Heater): boolean {
  return plan.heating?.stays_on === true && plan.heating.heaters.includes(id);
}

function beyond(
  inside: (from: number, to: number) => boolean,
  { id, least_on_h, longest_on_h, runs }: Heater,
  from: number,
  to: number,
): string[] {
  const hours = to - from;
  return [
    ...(hours > longest_on_h + STAMP ? [`${id} for ${hours.toFixed(2)} h, at most ${longest_on_h} h`] : []),
    ...(hours < least_on_h - STAMP ? [`${id} for ${hours.toFixed(2)} h, at least ${least_on_h} h`] : []),
    ...(runs === "outdoors" && inside(from, to) ? [`${id} in the hangar`] : []),
  ];
}

/** Never 1: what would help is held to the same limits, and says when somebody has to stay. */
export function remediesWithinLimits(advice: Advice): string[] {
  const { read, plan } = advice;
  const { installation } = read.scenario;
  const wished = plan.heaters.map(({ id }) => trueHeater(id));
  // Heat that stays on stays on beside what is tried.
  const kept = wished.filter((h) => isOnAlready(advice, h));
  return plan.remedies.flatMap(({ text: said, attended, plug_in }) => {
    const text = english(said);
    const found: string[] = [];
    const named = HEATERS.find(({ name }) => text === `heat with: ${name}`);
    const isHangar = /hangar/.test(text) && named === undefined;
    if (/heat with/.test(text) && named === undefined) found.push("a heater that nobody knows");
    // Inside a burner may not run, unless the scenario's own events bring the aircraft out again in time.
    const brought = changesOf(plan.happenings);
    if (isHangar) brought.unshift({ at: 0, change: { do: "move", to: "hangar" } });
    const inside = (from: number, to: number) => isInsideBy(read, brought, from, to);
    const mayRun = ({ runs }: Heater) =>
      !isHangar || runs === "anywhere" || !inside(plug_in?.at_h ?? 0, plan.unplug.at_h);
    const used = named === undefined ? wished.filter(mayRun) : [named];
    if (named !== undefined) {
      if (named.rejected !== undefined) found.push(`${named.id}, which makers reject`);
      if (isTooSmall(installation, named)) found.push(`${named.id} for an engine too small for it`);
      if (named.cylinders !== undefined && named.cylinders !== installation.cylinders)
        found.push(`${named.id} does not fit`);
    }
    if (plug_in === null) return named === undefined ? found : [...found, `${named.id} without a plug-in`];
    if ([...used, ...kept].some((h) => h.attended) !== attended)
      found.push(`${text}: attended is ${attended}`);
    const pause = Math.max(...used.map((h) => (h.procedure?.pause_min ?? 0) / 60), unplugBefore(advice));
    const unplug = plan.departure.at_h - pause;
    for (const heater of used.filter((h) => !isOnAlready(advice, h)))
      found.push(...beyond(inside, heater, plug_in.at_h, unplug));
    return found.map((what) => `remedy ${text}: ${what}`);
  });
}

/** [h] as wished. */
function unplugBefore({ read }: Advice): number {
  return (read.want?.wish.unplugBefore ?? 0) / 3600;
}

/** Never 6: hot air for half an hour at least, and a pause with the checks that makers ask for before cranking. */
export function hotAirAsMakersAsk(advice: Advice): string[] {
  const { plan } = advice;
  return heatSpans(advice).flatMap(({ heater, from, to, isPlanned, isKept, endsAsPlanned }) => {
    const { duct, procedure, id } = heater;
    if (duct === undefined || procedure === undefined) return [];
    const found: string[] = [];
    const claimed = plan.status === "ready" || plan.status === "not-required" || plan.status === "look-first";
    if ((isPlanned || (isKept && claimed)) && to - from < HOT_AIR_LEAST - STAMP)
      found.push(`${id}: hot air for ${(60 * (to - from)).toFixed(0)} min`);
    if ((isPlanned || isKept) && endsAsPlanned) {
      const pause = 60 * (plan.departure.at_h - to);
      // Where there are fewer minutes left than that, it goes off at once.
      if (pause < procedure.pause_min - 0.1 && to > STAMP)
        found.push(`${id}: a pause of ${pause.toFixed(1)} min`);
      const said = plan.heaters.find((h) => h.id === id)?.procedure;
      if (
        !said ||
        said.steps.map(english).join() !== procedure.steps.map(english).join() ||
        said.pause_min !== procedure.pause_min
      )
        found.push(`${id}: without its procedure`);
    }
    return found;
  });
}

/** Nothing is left on when the engine is started, but for what the scenario itself plugs in after the unplugging. */
export function nothingLeftOn(advice: Advice): string[] {
  const { plan } = advice;
  return heatSpans(advice)
    .filter(({ from, to }) => from < plan.unplug.at_h - STAMP && to > plan.unplug.at_h + STAMP)
    .map(({ heater }) => `${heater.id} is on after the unplugging`);
}

/** Never 1, of an answer that comes before the whole plan: its plug-ins keep to the limits of what is wanted and not barred. */
export function answerWithinLimits({ read }: Pick<Advice, "read">, answer: AnswerDocument): string[] {
  const barred = answer.barred.map(({ id }) => id);
  const wanted = (read.want?.heaters ?? []).filter((id) => !barred.includes(id)).map(trueHeater);
  const kept = answer.heating?.stays_on ? answer.heating.heaters : [];
  const shown = [answer.plug_in, answer.lines.least.plug_in, answer.lines.warm_through.plug_in];
  const unplug = answer.unplug.at_h;
  const inside = (from: number, to: number) => isInsideBy(read, read.scenario.events, from, to);
  return shown.flatMap((stamp) => {
    if (stamp === null) return [];
    return wanted.flatMap((heater) => {
      if (isTooSmall(read.scenario.installation, heater))
        return [`${heater.id} on an engine too small for it`];
      return kept.includes(heater.id) ? [] : beyond(inside, heater, stamp.at_h, unplug);
    });
  });
}
