import { oilById } from "../../src/aircraft/index.js";
import { oilGradeAdvice } from "../../src/starting/index.js";
import { weatherAt } from "../../src/weather/index.js";
import { english } from "../../src/words/index.js";
import { type Advice, heatSpans, STAMP } from "./heat-spans.js";
import { changesOf, leftCovered, readyShares } from "./replay.js";

const MINUTE = 1 / 60;
type Window = NonNullable<Advice["plan"]["window"]>;
/** What is known of a plan before all of it is. */
type Answer = Pick<
  Advice["plan"],
  | "status"
  | "look_first"
  | "departure"
  | "wanted_chance"
  | "chance"
  | "warm_chance"
  | "lines"
  | "aim"
  | "too_hot"
>;

const isGreen = ({ status }: Pick<Answer, "status">) => status !== "not-reachable";

/**
 * One case of all: the window's edges are read between samples ten minutes apart, by straight lines in the margin, which
 * can be off by some seconds where a part cools fast, so that one case may fall on the other side.
 */
const tolerance = ({ plan }: Advice) => 1 / plan.members + 1e-9;

/** Never 2: in the window as planned, covers off and out of the hangar, the wanted share is ready; told by a replay. */
export function windowIsReady(advice: Advice): string[] {
  const { plan, read } = advice;
  const found: string[] = [];
  const moments = [plan.departure.at_h, ...momentsOf(plan.window)];
  if (!isGreen(plan) && plan.window === null) return found;
  const shares = readyShares(read, changesOf(plan.happenings), moments);
  moments.forEach((at, k) => {
    if (k === 0 && !isGreen(plan)) return;
    if (shares[k] < plan.wanted_chance - tolerance(advice))
      found.push(`at ${at.toFixed(3)} h ${shares[k]} are ready, not ${plan.wanted_chance}`);
  });
  if (Math.abs(shares[0] - plan.chance) > tolerance(advice))
    found.push(`at the departure ${shares[0]} are ready, said is ${plan.chance}`);
  if (plan.window !== null && plan.window.opens.sure.at_h < plan.cover_off.at_h - STAMP)
    found.push("the window opens before the covers are off");
  return found;
}

/** The same of the window should covers stay on. */
export function coveredWindowIsReady(advice: Advice): string[] {
  const { plan, read } = advice;
  if (plan.covered_window === null) return [];
  const moments = momentsOf(plan.covered_window);
  const shares = readyShares(read, leftCovered(plan, read.scenario.events), moments);
  return moments.flatMap((at, k) =>
    shares[k] < plan.wanted_chance - tolerance(advice)
      ? [`covered, at ${at.toFixed(3)} h ${shares[k]} are ready, not ${plan.wanted_chance}`]
      : [],
  );
}

function momentsOf(window: Window | null): number[] {
  if (window === null) return [];
  const opens = window.opens.sure.at_h;
  const closes = window.closes.sure.at_h;
  return [opens, (opens + closes) / 2, Math.max(opens, closes - MINUTE)];
}

/** Never 2: the minutes after covers off end with the window. */
export function startWithinTheWindow({ plan }: Advice): string[] {
  const { window, start_within_min: said, cover_off } = plan;
  if (window === null) return said === null ? [] : [`${said} min without a window`];
  const least = 60 * (window.closes.sure.at_h - cover_off.at_h);
  if (said === null) return ["a window without minutes"];
  return said > least + 1 || said < least - 1 ? [`${said} min, the window has ${least.toFixed(1)}`] : [];
}

/** Never 3: no tick below the wanted chance of all cases. */
export function ticksAreEarned({ plan }: { readonly plan: Answer }): string[] {
  const { wanted_chance: wanted, lines, aim } = plan;
  const found: string[] = [];
  if (isGreen(plan) && plan.chance < wanted)
    found.push(`${plan.status} with a chance of ${plan.chance}, not ${wanted}`);
  if (isGreen(plan) && aim === "warm-through" && plan.warm_chance < wanted)
    found.push(`warm through with ${plan.warm_chance}, not ${wanted}`);
  for (const [name, line] of Object.entries(lines)) {
    if (line.reached && line.chance < wanted)
      found.push(`line ${name} reached with ${line.chance}, not ${wanted}`);
  }
  if (isGreen(plan) && plan.too_hot.length > 0)
    found.push(`${plan.status} though too hot: ${plan.too_hot.join()}`);
  return found;
}

/** Never 4: an engine that nobody read begins no warmer than the coldest recent air, and what is not known is said. */
export function nothingFlatters({ plan, read }: Advice): string[] {
  const { document, scenario } = read;
  const found: string[] = [];
  const { plugged_in = [], plugged_in_since, initial, place, weather } = document;
  if (plugged_in.length > 0 && plugged_in_since === undefined) {
    if (
      !plan.assumptions.some((text) => /Since when the heater has been on is not known/.test(english(text)))
    )
      found.push("nobody says that the time plugged in is unknown");
  }
  const isKnown =
    initial?.all_c !== undefined || initial?.shut_down_h_ago !== undefined || plugged_in_since !== undefined;
  if (isKnown || place !== "ramp") return found;
  const hoursOf = ({ at_h, time = "" }: { readonly at_h?: number; readonly time?: string }) =>
    at_h ?? (Date.parse(time) / 1000 - scenario.start) / 3600;
  const recent = (weather.points ?? [])
    .filter((p) => hoursOf(p) >= -6 && hoursOf(p) <= 0)
    .map((p) => p.air_c);
  recent.push(weatherAt(scenario.weather, scenario.start).tempAir - 273.15);
  const coldest = Math.min(...recent);
  // All cases share the offsets of a normal distribution: its middle over 20 drawn in even strips is within 0.3 sd of 0.
  const slack = 0.3 * scenario.initial.sd + 0.1;
  for (const part of ["oil", "crankcase", "crankshaft", "heads", "cylinders"]) {
    if (part === "oil" && initial?.oil_c !== undefined) continue;
    const celsius = plan.course.parts[part].p50_c[0];
    if (celsius > coldest + slack) found.push(`${part} begins at ${celsius} °C, the air was ${coldest} °C`);
  }
  if (!plan.assumptions.some((text) => /taken at .* the coldest air/.test(english(text))))
    found.push("nobody says what an engine without a reading is taken at");
  return found;
}

/** Never 8: no unlisted oil and no missing battery under a green headline. */
export function lookFirstBeforeGreen({
  plan,
  read,
}: {
  readonly plan: Answer;
  readonly read: Advice["read"];
}): string[] {
  const { scenario, document } = read;
  const departure = plan.departure.at_h * 3600;
  const { tempAir } = weatherAt(scenario.weather, scenario.start + departure);
  const reasons: string[] = [];
  if (document.battery?.fitted === false) reasons.push("no-battery");
  if (!oilGradeAdvice(oilById(scenario.installation.oil.oil_id), tempAir).listed)
    reasons.push("oil-unlisted");
  const found = reasons
    .filter((code) => !plan.look_first.some((f) => f.code === code && english(f.text).length > 0))
    .map((code) => `${code} is not said`);
  const isHeadline = plan.status === "ready" || plan.status === "not-required";
  if (isHeadline && reasons.length > 0) found.push(`${plan.status} in spite of ${reasons.join(", ")}`);
  if (plan.status === "look-first" && reasons.length === 0) found.push("look-first without a reason");
  return found;
}

/** Not required means without heat; where the least holds without heat none is planned; warm through takes no less heat. */
export function noNeedlessHeat(advice: Advice): string[] {
  const { plan, read } = advice;
  const { lines } = plan;
  const found: string[] = [];
  if (plan.status === "not-required" && plan.plug_in !== null) found.push("not required, and plugged in");
  const heated = heatSpans(advice).filter(({ to, from }) => to > STAMP && from < plan.departure.at_h);
  if (plan.status === "not-required" && heated.length > 0)
    found.push(`not required, by the heat of ${heated.map((s) => s.heater.id).join(", ")}`);
  if (lines.least.reached && lines.least.plug_in === null && plan.plug_in !== null)
    found.push("heated though the least holds without");
  if (plan.plug_in !== null && isGreen(plan)) {
    const unheated = changesOf(plan.happenings).filter(
      ({ at, change }) =>
        !(change.do === "plug-in" && Math.abs(at / 3600 - (plan.plug_in?.at_h ?? 0)) < STAMP) ||
        read.scenario.events.some((e) => e.at === at && e.change.do === "plug-in"),
    );
    const [share] = readyShares(read, unheated, [plan.departure.at_h]);
    if (share > plan.wanted_chance + tolerance(advice))
      found.push(`heated, though ${share} are ready without`);
  }
  const { least, warm_through: warm } = lines;
  if (least.reached && warm.reached) {
    if (warm.plug_in === null && least.plug_in !== null)
      found.push("warm through without heat, the least with");
    if (warm.plug_in !== null && least.plug_in !== null && warm.plug_in.at_h > least.plug_in.at_h + STAMP)
      found.push(`warm through at ${warm.plug_in.at_h} h, the least earlier at ${least.plug_in.at_h} h`);
  }
  return found;
}
