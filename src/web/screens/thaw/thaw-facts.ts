import { bestRemedies, DRY_SURELY, type ThawRemedy, thawRemedies } from "../../../documents/index.js";
import type { Said, Words } from "../../words/index.svelte.js";
import type { Answer } from "../../worker/protocol.js";

type Outlook = Answer<"thaw">;
type Band = Outlook["gaps_dry"];

/** What sentences need of the reader. */
export interface Reader {
  readonly w: Words;
  readonly say: Said;
}

/** May it leave when it is to, else when it may; in the order and words of the command line. */
export function thawVerdict(outlook: Outlook, { w, say }: Reader): string {
  const { roll_out, gaps_dry, horizon_h, members } = outlook;
  const odds = (share: number) => countedOdds(share, members, say);
  if (roll_out !== null) {
    const { clear_chance, dry_chance } = roll_out;
    const when = say.at(roll_out.at);
    if (clear_chance < DRY_SURELY) return w.thaw.notClearAt(when, odds(clear_chance), odds(dry_chance));
    return (dry_chance < DRY_SURELY ? w.thaw.notDryAt : w.thaw.dryAt)(when, odds(dry_chance));
  }
  if (gaps_dry.p95 !== null) return w.thaw.dryFrom(say.at(gaps_dry.p95), say.odds(DRY_SURELY));
  return w.thaw.notDry(say.span(horizon_h), odds(gaps_dry.share));
}

/** The worse of film and gaps in the wettest cases: what is left there decides. */
export function worstRefreeze({ roll_out }: Outlook): "none" | "possible" | "likely" | undefined {
  if (roll_out === null) return undefined;
  const all = [roll_out.wettest.film.verdict, roll_out.wettest.gaps.verdict];
  return all.includes("likely") ? "likely" : all.includes("possible") ? "possible" : "none";
}

/** [kg/m2] of loose snow worth a broom, as in the trials. */
const WORTH_BRUSHING = 0.5;

/** The facts below the verdict, each a label and a short sentence. */
export function thawFacts(outlook: Outlook, reader: Reader): [label: string, text: string][] {
  const { w, say } = reader;
  const t = w.thaw;
  const worst = worstRefreeze(outlook);
  const { roll_out, horizon_h, members } = outlook;
  const surely = ({ p95, share }: Band) =>
    p95 === null ? t.within(countedOdds(share, members, say), say.span(horizon_h)) : t.by(say.at(p95));
  return [
    [t.mayLeave, leaving(outlook, reader) + t.freeControls],
    [t.weakest, t.weakestPoints[outlook.weakest]],
    [t.brushFirst, brushing(outlook, reader)],
    [t.help, helping(outlook, reader)],
    [t.skinClear, t.thenDry(surely(outlook.skin_clear), surely(outlook.skin_dry))],
    [t.gapsThawed, t.thenDry(surely(outlook.gaps_thawed), surely(outlook.gaps_dry))],
    ...(roll_out === null || worst === undefined
      ? []
      : [[t.freezesAgain, t.freezes[worst](say.at(roll_out.at))] satisfies [string, string]]),
    [t.somebody, handwork(outlook, reader)],
  ];
}

function leaving({ gaps_dry: { p50, p95 }, horizon_h }: Outlook, { w, say }: Reader): string {
  if (p95 === null) return w.thaw.leaveNot(say.span(horizon_h));
  return w.thaw.leaveFrom(say.at(p95)) + (p50 === null ? "" : w.thaw.leaveHalf(say.at(p50)));
}

function brushing(outlook: Outlook, { w, say }: Reader): string {
  const { snow_kg_per_m2: snow, brushable_kg_per_m2: loose } = outlook;
  if (loose > WORTH_BRUSHING) return w.thaw.brushYes(say.number(loose, 1), say.number(snow, 1));
  return snow > 0 ? w.thaw.brushNo : w.thaw.brushNothing;
}

function helping(outlook: Outlook, reader: Reader): string {
  const remedies = thawRemedies(outlook);
  const best = bestRemedies(remedies);
  if (best.length === 0) return reader.w.thaw.nothingHelps(remedies.length);
  return best.map((remedy) => remedyText(remedy, outlook, reader)).join("; ");
}

function handwork(outlook: Outlook, { w }: Reader): string {
  const { brush, wipe, blow } = w.thaw.handwork;
  const { snow_kg_per_m2: snow, brushable_kg_per_m2: loose } = outlook;
  const work = [...(loose > WORTH_BRUSHING ? [brush] : []), ...(snow > 0 ? [wipe] : []), blow];
  return work.join(", ") + w.thaw.feel;
}

/** One thing that was tried, with its chance. */
export function remedyText(remedy: ThawRemedy, outlook: Outlook, { w, say }: Reader): string {
  const t = w.thaw;
  const chance = countedOdds(remedy.chance, outlook.trials.members, say);
  switch (remedy.kind) {
    case "change": {
      const { id, text, set_c, heater_kw } = remedy.change;
      const temp = set_c === undefined ? "" : say.temp(set_c);
      const kw = heater_kw === undefined ? "" : say.number(heater_kw);
      return t.remedy(t.changes[id]?.(temp, kw) ?? say.told(text), chance);
    }
    case "longer":
      if (remedy.hours === null) return t.longerNot(say.span(remedy.longest));
      return t.remedy(t.longer(say.needed(remedy.hours)), chance);
    case "mild":
      return remedy.leave === null
        ? t.mildNot(say.at(remedy.until))
        : t.remedy(t.mild(say.at(remedy.leave)), chance);
  }
}

/** A share of drawn cases, no surer than their number allows. */
export function countedOdds(share: number, members: number, say: Said): string {
  return say.odds(Math.min(share, 1 - 1 / members));
}
