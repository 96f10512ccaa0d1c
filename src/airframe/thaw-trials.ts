import { type Finding, finding } from "../findings/index.js";
import { celsiusFromKelvin, SECONDS_OF_HOUR } from "../units/index.js";
import { powerToHold } from "./hangar-model.js";
import { type MildWindow, mildWindow } from "./mild-window.js";
import { FILM_LEFT, type ThawRequest, type ThawResult, thawAndDry } from "./thaw.js";
import { WORTH_BRUSHING } from "./thaw-notes.js";
import type { ThawStay } from "./thaw-stay.js";

/** When a trial's cases are dry [s from the start]: half of them, and 95 %; undefined where not within the longest stay. */
export interface TrialTimes {
  /** [0..1] of the cases that are dry by when it is wanted. */
  readonly chance: number;
  readonly skinDry: number | undefined;
  readonly gapsDry: number | undefined;
  readonly gapsDrySurely: number | undefined;
}

/** One thing done otherwise, and the heat it needs: what the hangar is held at [°C] by which heater [kW]. */
export interface ThawChange {
  readonly id: string;
  readonly text: Finding;
  readonly setC?: number;
  readonly heaterKw?: number;
}

export interface ThawTrial extends ThawChange {
  readonly times: TrialTimes;
}

/** The stay as the document has it, and with one thing done otherwise; `by` and `longest` are [s] from the start. */
export interface ThawTrials {
  readonly by: number;
  readonly longest: number;
  readonly members: number;
  readonly asIs: TrialTimes;
  readonly changes: readonly ThawTrial[];
  /** Undefined without a forecast. */
  readonly mild: MildWindow | undefined;
}

/** [s] longest stay that is looked at, where the document asks for less. */
const LONGEST = 72 * SECONDS_OF_HOUR;
/** [-] of the document's members, and fewest of them: each trial costs a whole stay. */
const MEMBERS_SHARE = 0.5;
const FEWEST_MEMBERS = 20;

/**
 * What can be done for an aircraft in a hangar, each tried with the model over the same drawn cases: one thing at a time,
 * all handwork, everything together, a longer stay and the next mild window. Undefined when a run fails or is stopped.
 */
export function thawTrials(stay: ThawStay, goesOn: (done: number) => boolean): ThawTrials | undefined {
  const { request, rollOut } = stay;
  const { duration, ensemble } = request;
  const by = rollOut?.at ?? duration;
  const members = Math.max(FEWEST_MEMBERS, Math.ceil(MEMBERS_SHARE * (ensemble?.members ?? 0)));
  const looked: ThawRequest = {
    ...request,
    duration: Math.max(LONGEST, duration),
    ensemble: { members, seed: ensemble?.seed ?? 1 },
  };
  const asIs = thawAndDry(looked).result;
  if (asIs === undefined) return undefined;
  const changes = changesFor(request);
  const tried: ThawTrial[] = [];
  for (const [i, { change, ...named }] of changes.entries()) {
    if (!goesOn(i / changes.length)) return undefined;
    const { result } = thawAndDry({ ...looked, ...change });
    if (result === undefined) return undefined;
    tried.push({ ...named, times: timesOf(result, by) });
  }
  const mild = stay.weather && mildWindow(stay, asIs, stay.weather);
  if (mild !== undefined && "remedy" in mild) return undefined;
  return { by, longest: looked.duration, members, asIs: timesOf(asIs, by), changes: tried, mild };
}

interface Change extends ThawChange {
  readonly change: Partial<ThawRequest>;
}

/** [m/s] of a good floor fan over the aircraft, and from which one counts as having a fan. Project judgement. */
const FAN = 3;
const FAN_ENOUGH = 1;
/** [K] by which one might turn the heating up. */
const WARMER = 5;
/** [K] least that a hangar is warmed to, and highest setting that is looked at. */
const WARM_ENOUGH = 283.15;
const HOTTEST_SETTING = 313.15;
/** [-] of the water in gaps that compressed air leaves behind. Project judgement. */
const LEFT_BY_BLOWING = 0.2;

function changesFor(request: ThawRequest): Change[] {
  const { hangar, film, gap, snow, brushable = 0 } = request;
  const brush: Change[] =
    brushable > WORTH_BRUSHING
      ? [
          {
            id: "brush",
            text: finding("brush-snow", {}),
            change: { snow: snow - brushable, brushable: 0 },
          },
        ]
      : [];
  const wipe: Change[] =
    film > FILM_LEFT.wiped
      ? [{ id: "wipe", text: finding("wipe-skin", {}), change: { film: FILM_LEFT.wiped } }]
      : [];
  const blown = { ...gap, fill: gap.fill * LEFT_BY_BLOWING };
  const blow: Change = { id: "blow", text: finding("blow-gaps", {}), change: { gap: blown } };
  const fan: Change[] =
    hangar.fanSpeed < FAN_ENOUGH
      ? [
          {
            id: "fan",
            text: finding("run-fan", { speed_mps: FAN }),
            change: { hangar: { ...hangar, fanSpeed: FAN } },
          },
        ]
      : [];
  const sweep: Change[] = hangar.floorSwept
    ? []
    : [
        {
          id: "sweep",
          text: finding("sweep-floor", {}),
          change: { hangar: { ...hangar, floorSwept: true } },
        },
      ];
  const warm = warmerHangar(request);
  const hand = [...brush, ...wipe, blow];
  const all = [...hand, ...fan, ...sweep, ...warm];
  return [
    ...all,
    ...(hand.length > 1 ? [joined("by-hand", hand, request)] : []),
    ...(all.length > hand.length ? [joined("together", all, request)] : []),
  ];
}

/** Warmer air in the whole hangar; its heat never from a burner inside. */
function warmerHangar({ hangar, outside, pressure }: ThawRequest): Change[] {
  const setting = Math.min(HOTTEST_SETTING, Math.max(WARM_ENOUGH, hangar.tempSet + WARMER));
  if (setting <= hangar.tempSet) return [];
  const heaterPower = Math.max(
    hangar.heaterPower,
    Math.min(1e6, powerToHold(hangar, outside, setting, pressure)),
  );
  const heaterKw = Math.ceil(heaterPower / 1000);
  const more_kw = heaterPower > hangar.heaterPower ? heaterKw : null;
  const set_c = celsiusFromKelvin(setting);
  return [
    {
      id: "warmer",
      text: finding("warm-hangar", { set_c, more_kw }),
      setC: set_c,
      heaterKw,
      change: { hangar: { ...hangar, tempSet: setting, heaterPower, heaterVapour: 0 } },
    },
  ];
}

/** Several changes as one; what each changes of the hangar counts. */
function joined(id: "by-hand" | "together", parts: readonly Change[], { hangar }: ThawRequest): Change {
  const room = { ...hangar };
  const change: { -readonly [K in keyof ThawRequest]?: ThawRequest[K] } = {};
  for (const part of parts) {
    Object.assign(change, part.change);
    Object.assign(room, differing(part.change.hangar ?? hangar, hangar));
  }
  const changes = parts.map(({ text }) => text);
  return { id, text: finding(id, { changes }), change: { ...change, hangar: room } };
}

/** What of `changed` is not as in `from`. */
function differing(
  changed: ThawRequest["hangar"],
  from: ThawRequest["hangar"],
): Partial<ThawRequest["hangar"]> {
  const keys = Object.keys(changed) as (keyof ThawRequest["hangar"])[];
  return Object.fromEntries(
    keys.filter((key) => changed[key] !== from[key]).map((key) => [key, changed[key]]),
  );
}

function timesOf({ cases, skinDry, gapsDry }: ThawResult, by: number): TrialTimes {
  return {
    chance: cases.gapsDry.filter((time) => time <= by).length / cases.gapsDry.length,
    skinDry: skinDry.middle,
    gapsDry: gapsDry.middle,
    gapsDrySurely: gapsDry.high,
  };
}
