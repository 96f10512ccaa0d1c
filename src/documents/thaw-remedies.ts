import type { StampDocument } from "./result-schema.js";
import type { ThawOutlookDocument } from "./thaw-result-schema.js";

type Trial = ThawOutlookDocument["trials"]["changes"][number];

/** One thing that was tried for an aircraft that is not dry in time. */
export type ThawRemedy = { readonly chance: number; readonly helps: boolean } & (
  | { readonly kind: "change"; readonly change: Trial }
  | { readonly kind: "longer"; readonly hours: number | null; readonly longest: number }
  | { readonly kind: "mild"; readonly until: StampDocument; readonly leave: StampDocument | null }
);

/** [0..1] chance from which an aircraft counts as dry: the 95 % of the times that are told. */
export const DRY_SURELY = 0.95;
/** [-] more chance, and [h] sooner, from which something counts as help. Project judgement. */
const WORTH_CHANCE = 0.05;
const WORTH_HOURS = 0.25;

/** All that was tried, in the order of the effort, each with its chance; "nothing would help" is that none of them helps. */
export function thawRemedies({ trials, gaps_dry }: ThawOutlookDocument): ThawRemedy[] {
  const { as_is, changes, by, longest_h, mild_window } = trials;
  const never = longest_h;
  const changed = changes.map((change): ThawRemedy => {
    const sooner = (key: "gaps_dry_h" | "gaps_dry_surely_h") =>
      (as_is[key] ?? never) - (change[key] ?? never);
    const helps =
      change.chance - as_is.chance >= WORTH_CHANCE ||
      Math.max(sooner("gaps_dry_h"), sooner("gaps_dry_surely_h")) >= WORTH_HOURS;
    return { kind: "change", change, chance: change.chance, helps };
  });
  const hours = as_is.gaps_dry_surely_h;
  const isLate = hours === null || hours > by.at_h || gaps_dry.p95 === null || gaps_dry.p95.at_h > by.at_h;
  const longer: ThawRemedy = {
    kind: "longer",
    hours,
    longest: longest_h,
    chance: hours === null ? as_is.chance : DRY_SURELY,
    helps: hours !== null && isLate,
  };
  const window = mild_window?.window ?? null;
  const mild: ThawRemedy[] =
    mild_window === null
      ? []
      : [
          {
            kind: "mild",
            until: mild_window.looked_until,
            leave: window?.leave ?? null,
            chance: window?.chance ?? 0,
            helps: window !== null && window.chance - as_is.chance >= WORTH_CHANCE,
          },
        ];
  return [...changed, ...(isLate ? [longer, ...mild] : [])];
}

/** The two for a first screen: the least effort that is enough in time, else what helps most; and what waiting gives. */
export function bestRemedies(remedies: readonly ThawRemedy[]): ThawRemedy[] {
  const helpful = remedies.filter(({ helps }) => helps);
  const changes = helpful.filter(({ kind }) => kind === "change");
  const most = changes.reduce<ThawRemedy | undefined>(
    (best, one) => (best === undefined || one.chance > best.chance ? one : best),
    undefined,
  );
  const first = changes.find(({ chance }) => chance >= DRY_SURELY) ?? most;
  const other =
    helpful.find(({ kind, chance }) => kind === "mild" && chance >= DRY_SURELY) ??
    helpful.find(({ kind }) => kind === "longer") ??
    helpful.find(({ kind }) => kind === "mild");
  return [...(first === undefined ? [] : [first]), ...(other === undefined ? [] : [other])];
}
