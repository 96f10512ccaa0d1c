import { CAUTIONS, type Heater } from "../../src/aircraft/index.js";
import { START_CAUTIONS, tempBatteryLeast } from "../../src/starting/index.js";
import { english } from "../../src/words/index.js";
import { type Advice, isInside, runningHeaters, trueHeater } from "./heat-spans.js";
import { changesOf } from "./replay.js";

/** What a heater heats, as the cautions see it. */
const burns = ({ duct }: Heater) => duct?.energy === "fuel";
const onlyAir = ({ elements }: Heater) => elements.every(({ target }) => target === "cowl_air");
const onlyUnderOil = ({ elements, duct }: Heater) =>
  duct === undefined &&
  elements.length > 0 &&
  elements.every(({ target }) => target === "sump" || target === "oil");

/** Which heaters a caution belongs to. */
const NEEDS: readonly (readonly [string, string, (h: Heater) => boolean])[] = [
  ["carbon monoxide", english(CAUTIONS.carbonMonoxide), burns],
  ["fire", english(CAUTIONS.unattended), (h) => h.duct !== undefined],
  ["half-warm by air", english(CAUTIONS.superficial), onlyAir],
  ["half-warm by the sump", english(CAUTIONS.sumpOnly), onlyUnderOil],
  ["rejected by makers", english(CAUTIONS.inCowlRejected), (h) => h.rejected !== undefined],
];

/** A caution of kit stands where it applies, and nowhere else. */
export function cautionsBelong(advice: Advice): string[] {
  const { plan, read } = advice;
  const running = runningHeaters(advice);
  // A line that the owner may choose is heated with what the plan lists; the scenario may plug in after the departure.
  const isOffered = [plan.lines.least, plan.lines.warm_through].some((line) => line.plug_in !== null);
  const listed = isOffered ? plan.heaters.map(({ id }) => id) : [];
  const own = read.scenario.events.flatMap(({ change }) => (change.do === "plug-in" ? change.heaters : []));
  const most = [...new Set([...running, ...[...listed, ...own].map(trueHeater)])];
  const covers = coversBefore(advice);
  const isHangared = isInside(advice, 0, plan.departure.at_h);
  const said = (text: string) => plan.cautions.some((c) => english(c) === text);
  const found = NEEDS.flatMap(([name, text, applies]) => [
    ...(running.some(applies) && !said(text) ? [`missing: ${name}`] : []),
    ...(!most.some(applies) && said(text) ? [`without cause: ${name}`] : []),
  ]);
  for (const heater of running)
    for (const text of heater.cautions.map(english))
      if (!said(text) && (isHangared || text !== english(CAUTIONS.hangarVapour)))
        found.push(`missing of ${heater.id}: ${text}`);
  const removal = english(CAUTIONS.removeBeforeStart);
  const ever = [
    ...covers,
    ...read.scenario.events.flatMap(({ change }) => ("covers" in change ? change.covers : [])),
  ];
  if (covers.length > 0 && !said(removal)) found.push("missing: covers off before the start");
  if (ever.length === 0 && said(removal)) found.push("without cause: covers off before the start");
  const known = [...most, ...read.scenario.kit.covers.filter(({ id }) => ever.includes(id))];
  for (const text of plan.cautions.map(english)) {
    if (!known.some((k) => k.cautions.some((c) => english(c) === text))) found.push(`without cause: ${text}`);
  }
  return [...new Set(found)];
}

/** Covers on at some time before the departure. */
function coversBefore({ read, plan }: Advice): string[] {
  const put = changesOf(plan.happenings).flatMap(({ at, change }) =>
    change.do === "cover-on" && at <= plan.departure.at_h * 3600 ? change.covers : [],
  );
  return [...new Set([...read.scenario.initial.configuration.coversOn, ...put])];
}

/** Propeller: always. Battery: the acid may be ice below the freezing point of an empty one, and only in a lead battery. */
export function startCautionsBelong({ plan, read }: Advice): string[] {
  const { battery } = read.scenario.installation;
  const all = plan.start_briefing.notes.flatMap(({ cautions }) => cautions.map(english));
  const found: string[] = [];
  if (!all.includes(english(START_CAUTIONS.propeller))) found.push("missing: the propeller is live");
  if (!all.includes(english(START_CAUTIONS.noOilPressure))) found.push("missing: stop without oil pressure");
  const s = plan.course.time_h.findIndex((t) => Math.abs(t - plan.departure.at_h) < 1e-3);
  const kelvin = plan.course.parts.battery.p50_c[s] + 273.15;
  const isFitted = read.document.battery?.fitted !== false;
  const isLead = battery.chemistry === "lead-acid";
  const limit = isLead ? tempBatteryLeast(battery, 0) : 0;
  const said = all.includes(english(START_CAUTIONS.frozenBattery));
  // The course is kept to 0.01 K.
  if (isFitted && isLead && kelvin < limit - 0.02 && !said) found.push("missing: the battery may be frozen");
  if (said && (!isFitted || !isLead || kelvin > limit + 0.02)) found.push("without cause: a frozen battery");
  return found;
}

/** A burner warns of its gas, hot air of fire, air alone and oil alone of an engine half warm. */
export function cautionsOfCatalogue(heater: Heater): string[] {
  const carries = (text: string) => heater.cautions.some((c) => english(c) === text);
  return NEEDS.filter(([, text, applies]) => applies(heater) !== carries(text)).map(
    ([name]) => `${heater.id}: ${name}`,
  );
}
