import type { RollOutDocument, StampDocument } from "../../index.js";
import type { Style } from "../style.js";
import { mass, massValue, tenthsWithUnit } from "./airframe-text.js";
import { clock, fact } from "./words.js";

type Refrozen = RollOutDocument["middle"]["film"];
type Minutes = RollOutDocument["skin_freezing_min"];

/** [kg/m2] below which a skin counts as clear and dry, and a gap as dry, as in the times above. */
const CLEAR = 0.005;
const GAP_DRY = 0.02;

/** What follows the roll-out. */
export function rollOutFacts(rollOut: RollOutDocument, start: StampDocument, style: Style): string[] {
  const { at, members, take_off, state, skin_freezing_min, fittings_freezing_min, middle, wettest } = rollOut;
  const { film_kg_per_m2: film, gap_water_kg_per_m2: gaps } = state;
  const pair = ({ p50, p95 }: typeof film) => `${mass(p50)} (wettest 1 in 20: ${massValue(p95)})`;
  const snow = state.snow_kg_per_m2.p95 >= CLEAR ? `; snow or ice on it ${pair(state.snow_kg_per_m2)}` : "";
  const outside = "not within 6 h of take-off";
  return [
    "",
    style.colors.bold(
      `Out at ${clock(at, start)}, take-off ${clock(take_off, start)}, over ${members} cases`,
    ),
    ...fact(
      "Leaves with",
      `skin ${tenthsWithUnit(state.skin_c, style)}, inside ${tenthsWithUnit(state.inside_c, style)}, fittings ${tenthsWithUnit(state.fittings_c, style)}; film ${pair(film)}; in gaps ${pair(gaps)} of mouth${snow}`,
      style,
    ),
    ...fact(
      "To freezing",
      `skin ${minutes(skin_freezing_min, outside)}, fittings ${minutes(fittings_freezing_min, outside)}; a wet skin settles at ${tenthsWithUnit(rollOut.wet_bulb_c, style)}`,
      style,
    ),
    ...fact(
      "Film freezes",
      refrozenText(middle.film, wettest.film, dryness(film, CLEAR), rollOut, style),
      style,
    ),
    ...fact(
      "Gaps freeze",
      refrozenText(middle.gaps, wettest.gaps, dryness(gaps, GAP_DRY), rollOut, style),
      style,
    ),
    ...climbFact(rollOut, style),
    ...fallingFact(rollOut, style),
  ];
}

/** "after 2 min (1.5 to 3)" */
function minutes({ p05, p50, p95 }: Minutes, never: string): string {
  const shown = (value: number | null) => (value === null ? never : value.toFixed(value < 9.5 ? 1 : 0));
  if (p50 === null) return never;
  if (p95 === 0) return "already";
  return `after ${shown(p50)} min (${shown(p05)} to ${shown(p95)})`;
}

interface Dryness {
  readonly middle: boolean;
  readonly wettest: boolean;
}

function dryness({ p50, p95 }: RollOutDocument["state"]["film_kg_per_m2"], limit: number): Dryness {
  return { middle: p50 < limit, wettest: p95 < limit };
}

function refrozenText(
  middle: Refrozen,
  wettest: Refrozen,
  dry: Dryness,
  { climb, members }: RollOutDocument,
  { values }: Style,
): string {
  const tell = ({ verdict, at_take_off, in_climb }: Refrozen) => {
    const chances = [
      `by take-off ${values.risk({ share: at_take_off, members })}`,
      ...(climb === null ? [] : [`after the climb ${values.risk({ share: in_climb, members })}`]),
    ];
    return `${verdict === "none" ? "not expected" : verdict} (${chances.join(", ")})`;
  };
  return `middle case: ${dry.middle ? "dry" : tell(middle)}; wettest 1 in 20: ${dry.wettest ? "dry" : tell(wettest)}`;
}

function climbFact({ climb }: RollOutDocument, style: Style): string[] {
  if (climb === null) return [];
  const { elevation_m, freezing_level_m, cruise_m, cruise_c, coldest_c, fittings_freezing_min } = climb;
  const level =
    freezing_level_m === null
      ? "above the cruise"
      : freezing_level_m <= elevation_m
        ? "at the ground"
        : altitude(freezing_level_m);
  const coldest = coldest_c < cruise_c ? `, coldest on the way ${tenthsWithUnit(coldest_c, style)}` : "";
  const fittings = minutes(fittings_freezing_min, "not within half an hour after the climb");
  return fact(
    "Climb",
    `freezing level ${level}; ${tenthsWithUnit(cruise_c, style)} at ${altitude(cruise_m)}${coldest}; fittings below freezing ${fittings} from take-off`,
    style,
  );
}

function altitude(metres: number): string {
  return `${metres.toFixed(0)} m (${(Math.round(metres / METRES_OF_FOOT / 100) * 100).toFixed(0)} ft)`;
}

const METRES_OF_FOOT = 0.3048;

function fallingFact({ melts_what_falls, cool_indoors_min, state }: RollOutDocument, style: Style): string[] {
  if (cool_indoors_min === null) return [];
  const text = melts_what_falls
    ? `melts on a skin of ${tenthsWithUnit(state.skin_c, style)} and freezes on: open the doors first, skin at freezing ${minutes(cool_indoors_min, "not within 6 h")}`
    : "the skin is at or below freezing: snow does not melt on it";
  return fact("What falls", text, style);
}
