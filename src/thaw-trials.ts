import { FILM_LEFT, type ThawRequest, thawAndDry } from "./airframe/index.js";
import { type DryTimes, LEFT_BY_BRUSHING, type ReadThaw, type ThawTrials } from "./documents/index.js";

/** What can be done in a hangar, tried one at a time on the middle case; undefined when a run fails. */
export function thawTrials(read: ReadThaw): ThawTrials | undefined {
  const { ensemble: _, ...middle } = read.request;
  const asIs = dryTimesOf(middle);
  const changes = changesFor(read).map(({ id, text, change }) => {
    const times = dryTimesOf({ ...middle, ...change });
    return times && { id, text, ...times };
  });
  const all = changes.filter((change) => change !== undefined);
  return asIs === undefined || all.length < changes.length ? undefined : { asIs, changes: all };
}

interface Change {
  readonly id: string;
  readonly text: string;
  readonly change: Partial<ThawRequest>;
}

/** [m/s] of a good floor fan over the aircraft, and from which one counts as having a fan. Project judgement. */
const FAN = 3;
const FAN_ENOUGH = 1;
/** [K] by which one might turn the heating up. */
const WARMER = 5;
/** [-] of the water in gaps that compressed air leaves behind. Project judgement. */
const LEFT_BY_BLOWING = 0.2;
/** [kg/m2] of snow worth a broom. Project judgement. */
const WORTH_BRUSHING = 0.5;

function changesFor({ request, document }: ReadThaw): Change[] {
  const { hangar, film, gap, snow } = request;
  const wiped = { film: FILM_LEFT.wiped };
  const blown = { gap: { ...gap, fill: gap.fill * LEFT_BY_BLOWING } };
  const brushable = snow > WORTH_BRUSHING && document.snow?.kind !== "ice" && !document.snow?.brushed;
  return [
    ...(brushable
      ? [{ id: "brush", text: "loose snow brushed off first", change: { snow: snow * LEFT_BY_BRUSHING } }]
      : []),
    { id: "blow", text: "gaps blown out once thawed", change: blown },
    ...(film > FILM_LEFT.wiped
      ? [
          { id: "wipe", text: "skin wiped with cloths", change: wiped },
          { id: "wipe-and-blow", text: "skin wiped and gaps blown out", change: { ...wiped, ...blown } },
        ]
      : []),
    ...(hangar.fanSpeed < FAN_ENOUGH
      ? [{ id: "fan", text: `a fan, ${FAN} m/s over it`, change: { hangar: { ...hangar, fanSpeed: FAN } } }]
      : []),
    ...(hangar.floorSwept
      ? []
      : [{ id: "sweep", text: "floor swept dry", change: { hangar: { ...hangar, floorSwept: true } } }]),
    ...(hangar.heaterPower > 0
      ? [
          {
            id: "warmer",
            text: `hangar ${WARMER} K warmer`,
            change: { hangar: { ...hangar, tempSet: Math.min(HOTTEST_SETTING, hangar.tempSet + WARMER) } },
          },
        ]
      : []),
  ];
}

/** [K] highest setting of a hangar that is looked at. */
const HOTTEST_SETTING = 313.15;

function dryTimesOf(request: ThawRequest): DryTimes | undefined {
  const { result } = thawAndDry(request);
  return (
    result && {
      skinDry: result.skinDry.middle,
      gapsDry: result.gapsDry.middle,
      allDry: result.allDry.middle,
    }
  );
}
