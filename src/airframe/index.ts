export { type Caution, inOrderOfNeed } from "./caution.js";
export type { Climb, Sounding } from "./climb.js";
export type { Band, BandSeries, Ensemble, TimeBand } from "./ensemble.js";
export { type Gap, HINGE_GAP, waterInGap } from "./gap.js";
export { AIR_CHANGE_USUAL, boxHangar, COMBUSTION_VAPOUR, type Hangar, type OutsideAir } from "./hangar.js";
export { powerToHold } from "./hangar-model.js";
export { type FaceFrost, type FrostRequest, type FrostResult, nightFrost } from "./night-frost.js";
export { PANELS, type Panel, panelWithFuel, WING_COVERS, type WingCover } from "./panel.js";
export {
  type RefreezeChance,
  type RefreezeReport,
  type RefreezeRequest,
  type RefreezeResult,
  refreezeCheck,
} from "./refreeze.js";
export { snowMass } from "./snow-cover.js";
export { FILM_LEFT, type ThawRequest, type ThawResult, thawAndDry } from "./thaw.js";
export { SKIN_LIMIT } from "./thaw-statistics.js";
export { WORTH_BRUSHING } from "./thaw-words.js";
export { OPEN_SITE, type WingSite } from "./wing-weather.js";
