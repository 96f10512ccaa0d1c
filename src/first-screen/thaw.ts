import type { RollOutDocument, ThawOutlookDocument } from "../documents/index.js";
// By itself: the app's first view takes this file, and the whole folder would bring every schema into it.
import { bestRemedies, DRY_SURELY, type ThawRemedy, thawRemedies } from "../documents/thaw-remedies.js";
import { type Finding, finding } from "../findings/index.js";
import { type FirstScreen, fact } from "./screen.js";

type Times = ThawOutlookDocument["gaps_dry"];

/** [kg/m2] of loose snow worth a broom, as in the trials. */
const WORTH_BRUSHING = 0.5;

/** May it leave, what decides, what to do first, what freezes again. */
export function thawScreen(outlook: ThawOutlookDocument): FirstScreen {
  const { gaps_dry, skin_clear, skin_dry, gaps_thawed, horizon_h, members, roll_out, cautions } = outlook;
  const { snow_kg_per_m2, brushable_kg_per_m2: loose } = outlook;
  const isWorth = loose > WORTH_BRUSHING;
  const surely = ({ p95, share }: Times) => ({ at: p95?.time ?? null, horizon_h, share, members });
  const times = (clear: Times, dry: Times) =>
    finding("clear-then-dry", { clear: surely(clear), dry: surely(dry) });
  const half = gaps_dry.p50?.time ?? null;
  return {
    verdict: [verdictOf(outlook)],
    facts: [
      ...fact("may-leave", finding("leave-from", { at: gaps_dry.p95?.time ?? null, half, horizon_h })),
      ...fact("weakest", finding("dry-last", { what: outlook.weakest })),
      ...fact("brush-first", finding("brush-off", { loose_kg_per_m2: isWorth ? loose : 0, snow_kg_per_m2 })),
      ...fact("would-help", ...helping(outlook)),
      ...fact("skin-clear", times(skin_clear, skin_dry)),
      ...fact("gaps-thawed", times(gaps_thawed, gaps_dry)),
      ...(roll_out === null ? [] : fact("freezes-again", freezesAgain(roll_out))),
      ...fact("somebody-must", finding("work-by-hand", { brush: isWorth, wipe: snow_kg_per_m2 > 0 })),
    ],
    cautions,
  };
}

/** May it leave when it is to, else when it may. */
function verdictOf({ roll_out, gaps_dry, horizon_h, members }: ThawOutlookDocument): Finding {
  const counted = (share: number) => ({ share, members });
  if (roll_out === null) {
    return gaps_dry.p95 === null
      ? finding("verdict-not-dry", { horizon_h, dry: counted(gaps_dry.share) })
      : finding("verdict-leave-from", { at: gaps_dry.p95.time });
  }
  const { at, clear_chance, dry_chance } = roll_out;
  const clear = clear_chance < DRY_SURELY ? counted(clear_chance) : null;
  const may = clear === null && dry_chance >= DRY_SURELY;
  return finding("verdict-leave", { at: at.time, clear, dry: counted(dry_chance), may });
}

/** What helps most, and a fan where it helps at all: it is at hand. */
function helping(outlook: ThawOutlookDocument): Finding[] {
  const all = thawRemedies(outlook);
  const best = bestRemedies(all);
  const fan = all.filter(
    (one) => one.kind === "change" && one.change.id === "fan" && one.chance > outlook.trials.as_is.chance,
  );
  if (best.length === 0) return [finding("nothing-helps", { tried: all.length })];
  return [...new Set([...best, ...fan])].map((remedy) => triedLine(remedy, outlook));
}

/** One thing that was tried, with its chance. @example "a fan, 3 m/s over it: 6 in 10" */
export function triedLine(remedy: ThawRemedy, { trials }: ThawOutlookDocument): Finding {
  const tried = (what: Finding) =>
    finding("was-tried", { what, chance: { share: remedy.chance, members: trials.members } });
  switch (remedy.kind) {
    case "change":
      return tried(
        remedy.change.text.code === "together" ? finding("together", { changes: [] }) : remedy.change.text,
      );
    case "longer":
      return remedy.hours === null
        ? finding("no-longer-stay", { longest_h: remedy.longest })
        : tried(finding("longer-stay", { hours: remedy.hours }));
    case "mild":
      return remedy.leave === null
        ? finding("no-mild-air", { until: remedy.until.time })
        : tried(finding("into-mild-air", { at: remedy.leave.time }));
  }
}

/** [kg/m2] below which a skin counts as clear, as in the times. */
const CLEAR = 0.005;

/** What freezes again of the water that is left, by take-off and in the climb: the middle case, else the wettest. */
export function freezesAgain(rollOut: RollOutDocument): Finding {
  const { state, middle, wettest, members, climb, melts_what_falls } = rollOut;
  const fear = [middle, wettest].find(({ film, gaps }) => film.verdict !== "none" || gaps.verdict !== "none");
  const worst = (when: "at_take_off" | "in_climb") => ({
    share: fear === undefined ? 0 : Math.max(fear.gaps[when], fear.film[when]),
    members,
  });
  const where = () => {
    if (fear === undefined) return null;
    if (fear.film.verdict === "none") return "gaps";
    return fear.gaps.verdict === "none" ? "skin" : "gaps-and-skin";
  };
  return finding("freezes-again", {
    where: where(),
    is_snow_left: state.snow_kg_per_m2.p95 >= CLEAR,
    is_wettest: fear !== undefined && fear !== middle,
    outside: worst("at_take_off"),
    climb: climb === null ? null : worst("in_climb"),
    melts_what_falls,
  });
}

/** The worse of film and gaps in the wettest cases: what is left there decides. */
export function worstRefreeze({ roll_out }: ThawOutlookDocument): "none" | "possible" | "likely" | undefined {
  if (roll_out === null) return undefined;
  const all = [roll_out.wettest.film.verdict, roll_out.wettest.gaps.verdict];
  return all.includes("likely") ? "likely" : all.includes("possible") ? "possible" : "none";
}
