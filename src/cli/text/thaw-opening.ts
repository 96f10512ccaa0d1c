import {
  bestRemedies,
  DRY_SURELY,
  type StampDocument,
  type ThawOutlookDocument,
  thawRemedies,
} from "../../index.js";
import type { Style } from "../style.js";
import { countedOdds, mass, massValue } from "./airframe-text.js";
import type { Opening } from "./opening.js";
import { freezesAgain } from "./roll-out-text.js";
import { remedyText } from "./thaw-remedy-text.js";
import { clock, day, span } from "./words.js";

type Times = ThawOutlookDocument["gaps_dry"];

/** The first screen of a thaw: may it leave, what decides, what to do first, what freezes again. */
export function thawOpening(outlook: ThawOutlookDocument, style: Style): Opening {
  const { name, panel, start, zone, members, snow_kg_per_m2, roll_out } = outlook;
  const load = snow_kg_per_m2 > 0 ? `with ${mass(snow_kg_per_m2)} of snow or ice` : "without snow";
  return {
    verdict: verdict(outlook),
    about: `${name}, ${panel}, in at ${clock(start, start)} on ${day(start)} ${load}; times in ${zone}, chances over ${members} cases.`,
    facts: [
      [
        "May leave",
        `${leaving(outlook)}; first move every control and the trim to their stops, and again before take-off`,
      ],
      ["Weakest point", WEAKEST[outlook.weakest]],
      ["Brush first", brushing(outlook)],
      ["Would help", helping(outlook, style)],
      ["Skin clear", `${surely(outlook.skin_clear, outlook)}; dry ${surely(outlook.skin_dry, outlook)}`],
      ["Gaps thawed", `${surely(outlook.gaps_thawed, outlook)}; dry ${surely(outlook.gaps_dry, outlook)}`],
      ...(roll_out === null ? [] : [["Freezes again", freezesAgain(roll_out)] as const]),
      ["Somebody must", handwork(outlook)],
    ],
    cautions: outlook.cautions,
  };
}

/** May it leave when it is to, else when it may. */
function verdict(outlook: ThawOutlookDocument): string {
  const { roll_out, gaps_dry, start, horizon_h, members } = outlook;
  if (roll_out !== null) {
    const at = clock(roll_out.at, start);
    const clear = countedOdds(roll_out.clear_chance, members);
    const dry = countedOdds(roll_out.dry_chance, members);
    if (roll_out.clear_chance < DRY_SURELY)
      return `Not to leave at ${at}: clear of snow and ice in ${clear} cases, dry in ${dry}.`;
    if (roll_out.dry_chance < DRY_SURELY) return `Not to leave at ${at}: dry in ${dry} cases.`;
    return `May leave at ${at}: dry in ${dry} cases. Look and feel all the same.`;
  }
  if (gaps_dry.p95 !== null)
    return `May leave from ${clock(gaps_dry.p95, start)}: dry in 19 in 20 cases. Look and feel all the same.`;
  return `May not be dry in ${span(horizon_h)}: dry by then in ${countedOdds(gaps_dry.share, members)} cases.`;
}

function leaving({ gaps_dry: { p50, p95 }, start, horizon_h }: ThawOutlookDocument): string {
  if (p95 === null) return `not within ${span(horizon_h)}`;
  const half = p50 === null ? "" : ` (half of the cases are dry by ${clock(p50, start)})`;
  return `not before ${clock(p95, start)}${half}`;
}

const WEAKEST: Readonly<Record<ThawOutlookDocument["weakest"], string>> = {
  snow: "snow or ice that is not off in time",
  skin: "the skin: melt water on it dries last",
  gaps: "hinge gaps: the water in them dries last",
};

/** [kg/m2] of loose snow worth a broom, as in the trials. */
const WORTH_BRUSHING = 0.5;

function brushing({ snow_kg_per_m2: snow, brushable_kg_per_m2: loose }: ThawOutlookDocument): string {
  if (loose > WORTH_BRUSHING)
    return `yes: ${massValue(loose)} of ${mass(snow)} come off with a broom, outside`;
  return snow > 0 ? "no more comes off with a broom; what is left must melt" : "no snow on it";
}

function helping(outlook: ThawOutlookDocument, style: Style): string {
  const all = thawRemedies(outlook);
  const best = bestRemedies(all);
  const fan = all.filter(
    (one) => one.kind === "change" && one.change.id === "fan" && one.chance > outlook.trials.as_is.chance,
  );
  if (best.length === 0) return `nothing that was tried (${all.length} things): see --all`;
  return [...new Set([...best, ...fan])].map((remedy) => remedyText(remedy, outlook, style)).join("; ");
}

/** When it has come in 95 % of the cases, else how often by the end. */
function surely({ p95, share }: Times, { start, horizon_h, members }: ThawOutlookDocument): string {
  const at = (stamp: StampDocument) => clock(stamp, start);
  return p95 === null ? `in ${countedOdds(share, members)} cases within ${span(horizon_h)}` : `by ${at(p95)}`;
}

function handwork({ snow_kg_per_m2: snow, brushable_kg_per_m2: loose }: ThawOutlookDocument): string {
  const first = loose > WORTH_BRUSHING ? ["brush"] : [];
  const then = snow > 0 ? ["wipe", "blow out gaps"] : ["blow out gaps"];
  return `${[...first, ...then].join(", ")}; feel it all with the bare hand before take-off`;
}
