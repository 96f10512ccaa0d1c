import type { FirstScreenFindings, Label } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

const LABELS: Readonly<Record<Label, string>> = {
  "heat-on": "Heat is on",
  "plug-in": "Plug in",
  unplug: "Unplug",
  after: "Then",
  chance: "Chance",
  weakest: "Weakest point",
  stay: "Stay with it",
  choice: "Your choice",
  "quarter-more": "15 min more",
  best: "Best",
  why: "Why",
  "look-first": "Look first",
  "not-used": "Not used",
  "would-help": "Would help",
  "ready-now": "Ready now",
  engine: "Engine",
  "cover-by": "Cover on by",
  lasts: "It lasts",
  run: "Run it",
  somebody: "Somebody",
  longest: "Longest",
  "by-itself": "By itself",
  "may-leave": "May leave",
  "brush-first": "Brush first",
  "skin-clear": "Skin clear",
  "gaps-thawed": "Gaps thawed",
  "freezes-again": "Freezes again",
  "somebody-must": "Somebody must",
  tonight: "Tonight",
  "warm-through": "Warm through",
  "costs-start": "Costs a start",
  inside: "Inside",
  "more-money": "More money",
  "not-advised": "Not advised",
  "best-chance": "Best chance",
  ready: "Ready",
  costs: "Costs",
  time: "Time",
  heat: "Heat",
};

const ACTS = { "covers-off": "covers off", "pull-out": "pull out" } as const;

const ENGINE = {
  readings: "as read",
  air: "nobody said: taken as cold as the air (say when it was shut down)",
} as const;
const COVER = { none: "", on: ", covered", off: ", nothing on the cowl" } as const;

const NO_RUN = {
  "no-return": "say when you are back, then runs are tried",
  "not-needed": "not needed",
  covers: "not needed with covers on",
  unsure: "no: no start is sure now",
  "too-little": "no run reaches it",
} as const;

const DRY_LAST = {
  snow: "snow or ice that is not off in time",
  skin: "the skin: melt water on it dries last",
  gaps: "hinge gaps: the water in them dries last",
} as const;

const NO_DEARER = {
  "no-price": "not known: its price is missing",
  cases: "no dearer kit here makes more cases ready",
  winter: "no dearer kit here is ready more often or costs less a winter",
} as const;

const RULES = {
  "outdoors-only": "a burner never runs in a hangar (carbon monoxide, fire)",
  "engine-too-small": "too big for this engine",
  rejected: "engine makers reject it",
  "longest-on": "on beyond its longest time",
  "always-on": "it has no end",
} as const;

export const firstScreen: Phrases<FirstScreenFindings> = {
  label: ({ of }) => LABELS[of],
  "verdict-plug-in": ({ at, unplug, start, chance, is_off_first }, say) =>
    `${is_off_first ? "Unplug now: it has been on too long. Plug in again" : "Plug in"} ${at === null ? "now" : `at ${say.clock(at)}`}, ` +
    `unplug at ${say.clock(unplug)}, start at ${say.clock(start)}. Chance ${say.odds(chance)}.`,
  "verdict-heat-on": ({ unplug, start, chance }, say) =>
    `Heat is on. Unplug at ${say.clock(unplug)}, start at ${say.clock(start)}. Chance ${say.odds(chance)}.`,
  "verdict-no-heat": ({ start, chance }, say) =>
    `Start without heat at ${say.clock(start)}. Chance ${say.odds(chance)}.`,
  "verdict-not-required": ({ start, chance }, say) =>
    `Preheat not required. Start at ${say.clock(start)}. Chance ${say.odds(chance)}.`,
  "verdict-not-ready": ({ start, chance, wanted }, say) =>
    `Not ready at ${say.clock(start)}: ${say.odds(chance)} at best, ${say.odds(wanted)} wanted.`,
  "verdict-look-first": ({ what }, say) => `Look first. ${what.map(say.finding).join(" ")}`,
  "heat-on-for": ({ on_h, longest_on_h, wet_h, next, at }, say) => {
    const on =
      on_h === null
        ? "since when is not known"
        : `for ${say.span(on_h)} of at most ${say.span(longest_on_h)} in one go`;
    const wet = wet_h === null ? "" : `, inside wet or frosted ${say.span(wet_h)}`;
    const then = {
      stays: `stays on until ${say.clock(at)}`,
      off: "off now",
      "off-then-on": `off now, on again at ${say.clock(at)}`,
    };
    return `${on}${wet}; ${then[next]}`;
  },
  "plug-in-none": ({ is_required }) => (is_required ? "without heat" : "not required"),
  "plug-in-latest": ({ at, aim }, say) =>
    `${say.clock(at)} at the latest, for ${aim === "least" ? "the least that the maker asks" : "an engine warm through"}`,
  "unplug-at": ({ at, minutes }, say) => `${say.clock(at)}, ${minutes} min before the start`,
  "then-start": ({ acts, at, within_min, stays_h }, say) => {
    const left =
      stays_h === null
        ? `start within ${say.left(within_min)}`
        : `it stays ready for ${say.span(stays_h)} and more`;
    return acts.length === 0
      ? left
      : `${acts.map((act) => ACTS[act]).join(", ")} at ${say.clock(at)}, ${left}`;
  },
  "chance-both": ({ start, warm, is_put_right_first }, say) =>
    `${is_put_right_first ? "once that is put right: " : ""}${say.odds(start)} that it may be started, ${say.odds(warm)} warm through`,
  "weakest-point": ({ criterion, value, worst, limit, direction }, say) => {
    const [worse, sign] =
      direction === "at-most"
        ? ["more", "at most"]
        : [{ rpm: "slower", c: "colder" }[value.unit as string] ?? "less", "needed"];
    return `${say.finding(criterion)}: ${say.measure(value)}, 1 in 20 ${worse} than ${say.measure(worst)}; ${sign} ${say.measure(limit)}`;
  },
  "stay-with": ({ attended, is_heated }) =>
    attended.length > 0
      ? `somebody must, all the time: ${attended.join(", ")}`
      : `nobody has to${is_heated ? "; look at it once while it heats" : ""}`,
  "line-of-two": ({ line, reached, plug_in, chance, energy_kwh, is_planned }, say) => {
    const name = line === "least" ? "the least" : "warm through";
    const how =
      plug_in === null ? (reached ? "without heat" : "not without heat") : `plug in at ${say.clock(plug_in)}`;
    const kwh = plug_in === null ? "" : `, ${say.number(energy_kwh, 1)}\u00a0kWh`;
    return `${name}: ${how}, ${say.odds(chance)}${reached ? "" : " at best"}${kwh}${is_planned ? " (planned)" : ""}`;
  },
  "best-plug-in": ({ at }, say) => `plug in ${at === null ? "now" : `at ${say.clock(at)}`}`,
  "best-without": ({ stays_on, least_on_min }) =>
    stays_on
      ? "leave the heat on"
      : least_on_min === null
        ? "no heat can be used"
        : `too late to heat for ${least_on_min} min and make the checks`,
  "heater-basis": (basis) => {
    if (basis.kind === "estimated") return "estimated";
    if (basis.kind === "scaled") return `scaled from ${basis.from}`;
    return `measured on ${basis.runs} ${basis.runs === 1 ? "run" : "runs"}`;
  },
  "barred-heater": ({ heater, reason }) =>
    `${heater}: ${reason === "indoors" ? "a burner never runs in a hangar (carbon monoxide, fire)" : "too much heat for so small an engine"}`,
  "would-help": ({ remedy, chance, plug_in, attended }, say) =>
    `${say.finding(remedy)}: ${say.odds(chance)}${plug_in === null ? "" : `, plug in at ${say.clock(plug_in)}`}${attended ? "; somebody must stay" : ""}`,
  "nothing-helps": ({ tried }) => `nothing that was tried${tried === null ? "" : ` (${tried} things)`}`,
  "being-worked-out": () => "being worked out …",
  "verdict-away": ({ is_ready, back, covered, uncovered, is_covered }, say) => {
    const chances =
      covered === null
        ? `${say.odds(uncovered)} that it starts`
        : `${say.odds(covered)} that it starts with covers ${is_covered ? "left on" : "on now"}, ${say.odds(uncovered)} without`;
    return `${is_ready ? "Ready" : "Not ready"} when back at ${say.clock(back)}: ${chances}.`;
  },
  "verdict-away-now": ({ is_ready, chance, beside }, say) =>
    is_ready
      ? `Ready now: ${say.odds(chance)} that it starts. It lasts ${say.finding(beside)}.`
      : `Not ready now: ${say.odds(chance)} that it starts; weakest point: ${say.finding(beside)}.`,
  "ready-yes-no": ({ is_ready, chance }, say) => `${is_ready ? "yes" : "no"}, ${say.odds(chance)}`,
  "engine-from": ({ from, shut_down_h_ago, cover }, say) => {
    const shutDown =
      shut_down_h_ago === 0
        ? "just shut down from cruise"
        : `shut down ${say.span(shut_down_h_ago)} ago from cruise`;
    return (from === "shut-down" ? shutDown : ENGINE[from]) + COVER[cover];
  },
  "cover-on-by": ({ how, by, off_before_min, chance, is_covered }, say) => {
    const off = `, off ${off_before_min} min before the start`;
    switch (how) {
      case "none":
        return "none carried";
      case "on-already":
        return "on already";
      case "at-once":
        return "now: it cools fastest at first";
      case "not-needed":
        return "not needed, and of use all the same";
      case "by":
        if (is_covered) return `on already${off}: ${say.odds(chance)}`;
        return `${by === null ? "now" : `${say.clock(by)} at the latest`}${off}`;
      case "between-runs":
        return `${is_covered ? "on already" : "now"}, and again after each run`;
      case "too-little":
        return `not enough: ${say.odds(chance)} with covers ${is_covered ? "left on" : "on now"}`;
    }
  },
  "it-lasts": ({ covered, uncovered, chance }, say) => {
    const lasting = ({ sure_h, is_over }: typeof uncovered) =>
      sure_h <= 0 ? "no time" : `${is_over ? "over " : ""}${say.span(sure_h)}`;
    const both =
      covered === null ? lasting(uncovered) : `${lasting(covered)} covered, ${lasting(uncovered)} uncovered`;
    return `${both}, with a chance of ${say.odds(chance)}`;
  },
  "run-none": ({ why }) => NO_RUN[why],
  "run-engine": ({ starts, from, run_h, is_covered, chance }, say) => {
    const clocks = starts.map((start) => say.clock(start));
    const last = clocks[clocks.length - 1]!;
    const when =
      clocks.length > 1
        ? `${clocks.length} times ${say.span(run_h)}, at ${say.list(clocks)}`
        : from === null || say.clock(from) === last
          ? `${say.span(run_h)}, at ${last}`
          : `${say.span(run_h)}, begun from ${say.clock(from)} to ${last}`;
    return `${when}${is_covered ? ", covers on between" : ""}: ${say.odds(chance)}`;
  },
  "covers-on-by": ({ by, chance }, say) =>
    `covers on ${by === null ? "now" : `${say.clock(by)} at the latest`}: ${say.odds(chance)}`,
  "weakest-chance": ({ criterion, chance, when }, say) =>
    `${say.finding(criterion)}: ${say.odds(chance)} ${when === "now" ? "now" : when === "return" ? "at the return" : "at the return, covered"}`,
  "at-controls": ({ is_run }) => (is_run ? "must be at the controls while it runs" : "need not stay with it"),
  "longest-away": ({ back, is_covered, runs, run_h }, say) => {
    if (back === null) return "only now: nothing here keeps it";
    const how = [
      ...(is_covered ? ["covers on now"] : []),
      ...(runs === 0 ? [] : [`${runs} ${runs === 1 ? "run" : "runs"} of ${say.span(run_h)}`]),
    ];
    return `back by ${say.clock(back)}${how.length === 0 ? "" : `, with ${say.list(how)}`}; later, nothing here keeps it`;
  },
  "ready-by-itself": ({ at, looked_h }, say) =>
    at === null ? `not in the ${say.span(looked_h)} looked at` : `${say.clock(at)}, as the air warms`,
  "verdict-leave": ({ at, clear, dry, may }, say) => {
    if (may)
      return `May leave at ${say.clock(at)}: dry in ${say.counted(dry)} cases. Look and feel all the same.`;
    const ice = clear === null ? "" : `clear of snow and ice in ${say.counted(clear)} cases, `;
    return `Not to leave at ${say.clock(at)}: ${ice}dry in ${say.counted(dry)}${clear === null ? " cases" : ""}.`;
  },
  "verdict-leave-from": ({ at }, say) =>
    `May leave from ${say.clock(at)}: dry in 19 in 20 cases. Look and feel all the same.`,
  "verdict-not-dry": ({ horizon_h, dry }, say) =>
    `May not be dry in ${say.span(horizon_h)}: dry by then in ${say.counted(dry)} cases.`,
  "leave-from": ({ at, half, horizon_h }, say) => {
    const from = at === null ? `not within ${say.span(horizon_h)}` : `not before ${say.clock(at)}`;
    const cases = at === null || half === null ? "" : ` (half of the cases are dry by ${say.clock(half)})`;
    return `${from}${cases}; first move every control and the trim to their stops, and again before take-off`;
  },
  "dry-last": ({ what }) => DRY_LAST[what],
  "brush-off": ({ loose_kg_per_m2: loose, snow_kg_per_m2: snow }, say) => {
    if (loose > 0)
      return `yes: ${say.number(loose, 2)} of ${say.number(snow, 2)}\u00a0kg/m² come off with a broom, outside`;
    return snow > 0 ? "no more comes off with a broom; what is left must melt" : "no snow on it";
  },
  "was-tried": ({ what, chance }, say) => `${say.finding(what)}: ${say.counted(chance)}`,
  "longer-stay": ({ hours }, say) => `a stay of ${say.needed(hours)}`,
  "no-longer-stay": ({ longest_h }, say) => `a longer stay: not surely dry even after ${say.span(longest_h)}`,
  "into-mild-air": ({ at }, say) => `leaving into mild air at ${say.clock(at)}`,
  "no-mild-air": ({ until }, say) => `no mild air outside by ${say.clock(until)}`,
  "clear-then-dry": ({ clear, dry }, say) => {
    const surely = ({ at, horizon_h, ...counted }: typeof clear) =>
      at === null ? `in ${say.counted(counted)} cases within ${say.span(horizon_h)}` : `by ${say.clock(at)}`;
    return `${surely(clear)}; dry ${surely(dry)}`;
  },
  "freezes-again": ({ where, is_snow_left, is_wettest, outside, climb, melts_what_falls }, say) => {
    const falls = melts_what_falls ? "; what falls melts on the warm skin and freezes on" : "";
    if (where === null)
      return `${is_snow_left ? "snow or ice is still on it: it may not fly" : "not expected, even in the wettest cases: look and feel"}${falls}`;
    const risk = (counted: typeof outside) => (counted.share === 0 ? "no" : say.risk(counted));
    const up = climb === null ? "" : `, in the climb ${risk(climb)}`;
    return `${where.replaceAll("-", " ")}${is_wettest ? " in the wettest cases" : ""}: outside ${risk(outside)}${up}${falls}`;
  },
  "work-by-hand": ({ brush, wipe }) =>
    `${[...(brush ? ["brush"] : []), ...(wipe ? ["wipe"] : []), "blow out gaps"].join(", ")}; feel it all with the bare hand before take-off`,
  "verdict-kit": ({ kit, chance, cold, attended }, say) =>
    `${kit}: ready in ${say.odds(chance)} cases down to ${say.cold(cold)}; ${attended ? "somebody must stay" : "nobody has to stay"}.`,
  "verdict-colder": ({ kit, cold, attended }, say) =>
    `${kit} reaches ${cold === null ? "none of the cases" : say.cold(cold)}${attended ? ", but somebody must stay" : ""}.`,
  "verdict-no-kit": ({ chance }, say) =>
    `None of these kits makes it ready in ${say.odds(chance)} cases and may be recommended.`,
  "kit-tonight": ({ status, plug_in, unplug, start, chance }, say) => {
    const at = say.clock(start);
    if (status === "not-reachable") return `not ready at ${at}: ${say.odds(chance)} at best`;
    const begin = `start ${at}, chance ${say.odds(chance)}${status === "look-first" ? "; look first" : ""}`;
    if (plug_in !== null) return `plug in ${say.clock(plug_in)}, unplug ${say.clock(unplug)}, ${begin}`;
    return status === "not-required" ? `heat not required; ${begin}` : begin;
  },
  "kit-lead": ({ lead_h, cold }, say) =>
    lead_h === null
      ? `not required down to ${say.cold(cold)}`
      : `${say.needed(lead_h)} before the start at ${say.cold(cold)}`,
  "kit-warm": ({ cold }, say) =>
    cold === null
      ? "in none of the cases; only the least that the maker asks"
      : `${say.cold(cold)} and milder; colder only the least that the maker asks`,
  "kit-costs": ({ all, energy_kwh, energy, attended_h, attended, attended_per_h, currency, cold }, say) => {
    const time =
      attended_h === 0
        ? "nobody's time"
        : `${say.span(attended_h)} of somebody's time ${say.money({ amount: attended, currency }, 2)} (${say.money({ amount: attended_per_h, currency })} an hour)`;
    const heat = `${say.number(energy_kwh, 1)}\u00a0kWh${energy === null ? "" : ` ${say.money({ amount: energy, currency }, 2)}`}`;
    return `${all === null ? "" : `${say.money({ amount: all, currency }, 2)} `}at ${say.cold(cold)}: ${heat}, ${time}`;
  },
  "kit-inside": ({ wet_h }, say) =>
    `${say.number(wet_h, 1)} h wet or frosted before that start (for comparing only)`,
  "kit-weakest": ({ criterion, cold, chance }, say) =>
    `${say.finding(criterion)}: at ${say.cold(cold)} ready in ${say.odds(chance)}`,
  "kit-best-chance": ({ kit, chance, cold, criterion }, say) =>
    `${kit}: ${say.odds(chance)} at ${say.cold(cold)}, weakest point ${say.finding(criterion)}`,
  "dearer-none": ({ why }) => NO_DEARER[why],
  "dearer-kit": ({ kit, extra, cold, attended }, say) =>
    `${kit}, ${say.money(extra)} more, reaches ${cold === null ? "none of the cases" : say.cold(cold)}${attended ? ", but somebody must stay" : ""}`,
  "kit-not-advised": ({ kit, rule }) => `${kit}: ${RULES[rule]}`,
  "more-not-advised": ({ kits }) => `${kits} more`,
  "verdict-winter": ({ kit, habit, ready, wanted, cost, heat_kwh, attended_h }, say) => {
    const short = wanted === null ? "" : `, not the ${say.odds(wanted)} wanted`;
    const winter = cost === null ? `${say.brief(heat_kwh)}\u00a0kWh` : say.money(cost);
    const stay = attended_h === null ? "" : `; somebody must stay, ${say.brief(attended_h)} h`;
    return `${kit}, ${say.finding(habit)}: ready in ${say.odds(ready)} departures${short}, ${winter} a winter${stay}.`;
  },
  "verdict-other-kit": ({ kit, ready, cost, attended_h }, say) => {
    const time = attended_h === null ? "" : `, but takes ${say.brief(attended_h)} h of somebody's time`;
    return `${kit}: ${say.odds(ready)}${cost === null ? "" : `, ${say.money(cost)}`}${time}.`;
  },
  "verdict-no-habit": () => "None of these kits and habits may be recommended.",
  "winter-ready": ({ least, warm }, say) =>
    `${say.odds(least)} departures may start, ${say.odds(warm)} warm through`,
  "winter-costs": ({ all, heat, time, rest, currency }, say) =>
    `${say.money({ amount: all, currency })} a winter: heat ${say.number(heat)}, somebody's time ${say.number(time)}, missed departures and upkeep ${say.number(rest)}`,
  "winter-cost-unknown": () => "not counted: a price is missing",
  "winter-time": ({ attended_h, per_h }, say) =>
    `${say.brief(attended_h)} h of somebody standing by or plugging in, at ${say.money(per_h)} an hour`,
  "winter-heat": ({ heat_kwh, heater_h, longest_h, allowed_h }, say) =>
    `${say.brief(heat_kwh)}\u00a0kWh in ${say.brief(heater_h)} h, at most ${say.brief(longest_h)} h in one go${allowed_h === null ? "" : ` (${say.number(allowed_h)} h allowed)`}`,
  "winter-inside": ({ wet_h, frost_h }, say) =>
    `wet ${say.brief(wet_h)} h, frosted ${say.brief(frost_h)} h a winter (for comparing only)`,
  "winter-weakest": ({ criterion, share }, say) =>
    `${say.finding(criterion)}, too cold in ${say.odds(share)} departures`,
  "winter-weakest-none": () => "none: nothing kept it from a start",
  "winter-always-on": ({ longest_h, allowed_h, alone_h, wet_h }, say) => {
    const over =
      allowed_h === null
        ? "it has no end"
        : `${say.brief(longest_h)} h in one go, ${say.number(allowed_h)} h allowed`;
    const alone = alone_h === null ? "" : `; hot with nobody there ${say.brief(alone_h)} h`;
    return `always on: ${over}${alone}; inside wet ${say.brief(wet_h)} h`;
  },
  "dearer-winter": ({ kit, habit, extra, ready, cost }, say) =>
    `${kit}, ${say.finding(habit)}, ${say.money(extra)} more: ${say.odds(ready)}${cost === null ? "" : `, ${say.money(cost)} a winter`}`,
};
