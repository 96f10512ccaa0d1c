import { type Band, bandOf } from "../numerics/index.js";
import { type Aim, type EnsembleState, gatingOf, judge, type Verdict } from "../readiness/index.js";
import { type HeatResponse, overheats, type ReadResponse } from "../response/index.js";
import { ENSEMBLE_TOLERANCE, type EnsembleRun } from "../simulation/index.js";
import { changeOfLastMinutes, type LastMinutes } from "./last-minutes.js";
import type { PlanRequest } from "./request.js";
import { type Carriers, spreadOver } from "./spread.js";
import { tightestMargins } from "./stay.js";
import { unplugTime } from "./timeline.js";

/** Where a first answer is read from. */
export interface Sources {
  /** Played in this situation. */
  readonly response: ReadResponse;
  /** All members, among them those of `response`, played in this situation or in one alike. */
  readonly past?: Past;
  /** A few of all members in this situation, to play the last minutes with. */
  readonly few: EnsembleRun;
  /** Which of all members the few are; where `response` has not all members, they are among its members. */
  readonly carriers: Carriers;
}

/** What all members did. */
export interface Past {
  readonly response: HeatResponse;
  readonly lastMinutes: LastMinutes;
}

/** [K] what happens between unplugging and the start moves the parts by a few kelvins; project judgement. */
const TAIL_TOLERANCE = 3 * ENSEMBLE_TOLERANCE;

/** All members with one plug-in, at unplugging and at the start, as far as what was played tells. */
export class FirstReading {
  /** Members that chances are counted over. */
  private readonly members: number;
  private readonly parts: readonly string[];
  private readonly unplug: number;
  private readonly gating;
  /** [K] at unplugging: of those played in this situation, and of all of them in it or in the one alike. */
  private readonly played: Float64Array;
  private readonly known: Float64Array;
  private readonly ofFew: Float64Array;
  /** [K] what the last minutes change of the few. */
  private drop: Float64Array;
  private readonly margins: Float64Array;
  private isHeated = false;

  constructor(
    private readonly request: PlanRequest,
    private readonly sources: Sources,
  ) {
    const { response, past, few } = sources;
    this.parts = response.parts;
    this.members = (past?.response ?? response).members;
    this.unplug = unplugTime(request);
    this.gating = {
      least: gatingOf(request.criteria, "least"),
      "warm-through": gatingOf(request.criteria, "warm-through"),
    };
    this.played = new Float64Array(this.parts.length * response.members);
    this.known = new Float64Array(this.parts.length * this.members);
    this.ofFew = new Float64Array(this.parts.length * few.members);
    this.drop = new Float64Array(this.ofFew.length);
    this.margins = new Float64Array(this.members);
  }

  /** @param plugIn [s]; undefined: nobody plugs in */
  read(plugIn: number | undefined): void {
    const { response, past } = this.sources;
    this.isHeated = plugIn !== undefined;
    response.temps(plugIn, this.unplug, this.played);
    if (past === undefined || past.response === response) this.known.set(this.played);
    else past.response.temps(plugIn, this.unplug, this.known);
  }

  /** The same, and plays its last minutes; they hold until others are played. */
  readWithLastMinutes(plugIn: number | undefined): void {
    this.read(plugIn);
    this.takeFew();
    this.drop = changeOfLastMinutes(this.sources.few, this.ofFew, this.request, TAIL_TOLERANCE);
  }

  atUnplug(): EnsembleState {
    const { parts, members, known, played } = this;
    if (this.sources.response.members === members) return { temps: known.slice(), parts, members };
    const temps = new Float64Array(known.length);
    spreadOver(played, known, this.sources.carriers, temps);
    return { temps, parts, members };
  }

  /** After the last minutes that were played last. */
  atStart(): EnsembleState {
    const { parts, members, known, ofFew, drop } = this;
    const temps = new Float64Array(known.length);
    const old = known.slice();
    this.sources.past?.lastMinutes.add(this.isHeated, this.unplug, old);
    this.takeFew();
    for (let k = 0; k < ofFew.length; k++) ofFew[k] += drop[k];
    spreadOver(ofFew, old, this.sources.carriers, temps);
    return { temps, parts, members };
  }

  /** Share of the members that are ready on a line. */
  readyShare(state: EnsembleState, aim: Aim): number {
    tightestMargins(this.gating[aim], state, this.margins);
    let ready = 0;
    for (const margin of this.margins) if (margin >= 0) ready++;
    return ready / this.members;
  }

  isTooHot(): boolean {
    return overheats(this.request.criteria, this.atUnplug());
  }

  /** The verdict on a plug-in after its own last minutes, and the heat [J] put in. */
  judged(plugIn: number | undefined): { readonly verdict: Verdict; readonly energy: Band } {
    const { response } = this.sources;
    this.readWithLastMinutes(plugIn);
    const energy = new Float64Array(response.members);
    if (plugIn !== undefined) response.energy(plugIn, this.unplug, energy);
    return {
      verdict: judge(this.request.criteria, this.atStart(), this.atUnplug()),
      energy: bandOf(energy),
    };
  }

  /** The few, out of those played in this situation. */
  private takeFew(): void {
    const { response, few, carriers } = this.sources;
    if (response.members === few.members) {
      this.ofFew.set(this.played);
      return;
    }
    for (let row = 0, k = 0; row < this.parts.length; row++) {
      for (const m of carriers.members) this.ofFew[k++] = this.played[row * response.members + m];
    }
  }
}

/** Each member's tightest margin at the start, in what was played before. */
export function pastMargins(
  { response, lastMinutes }: Past,
  request: PlanRequest,
  plugIn: number | undefined,
): Float64Array {
  const { parts, members } = response;
  const unplug = unplugTime(request);
  const temps = new Float64Array(parts.length * members);
  response.temps(plugIn, unplug, temps);
  lastMinutes.add(plugIn !== undefined, unplug, temps);
  const margins = new Float64Array(members);
  tightestMargins(gatingOf(request.criteria, "warm-through"), { temps, parts, members }, margins);
  return margins;
}
