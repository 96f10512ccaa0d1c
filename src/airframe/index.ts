export { type AirFilm, airFilm, type FaceSize, type Facing, type FilmConditions } from "./air-film.js";
export { AIRFRAME_CAUTIONS, type Caution, inOrderOfNeed } from "./caution.js";
export {
  type Climb,
  coldestBelow,
  freezingLevel,
  type Sounding,
  type TemperatureProfile,
  temperatureProfile,
} from "./climb.js";
export type { Band, BandSeries, Ensemble, TimeBand } from "./ensemble.js";
export { type EvaporationBand, evaporationBetween, vapourPerHeatTransfer } from "./evaporation.js";
export { CHANCE_LIKELY, CHANCE_POSSIBLE, FROST_COUNTED } from "./frost-statistics.js";
export {
  capillaryColumn,
  evaporationFluxStefanTube,
  type Gap,
  gapDryingTime,
  HINGE_GAP,
  waterInGap,
} from "./gap.js";
export {
  AIR_CHANGE_USUAL,
  type BoxHangar,
  boxHangar,
  COMBUSTION_VAPOUR,
  type Hangar,
  type OutsideAir,
} from "./hangar.js";
export { powerToHold } from "./hangar-model.js";
export {
  type FaceFrost,
  type FrostReport,
  type FrostRequest,
  type FrostResult,
  type FrostSeries,
  type FrostVerdict,
  nightFrost,
} from "./night-frost.js";
export { nightSkyEmissivity, nightSkyTemperature, type SkyBand } from "./night-sky.js";
export { PANELS, type Panel, type PanelInside, panelWithFuel, WING_COVERS, type WingCover } from "./panel.js";
export {
  type ClimbOutlook,
  type RefreezeChance,
  type RefreezeReport,
  type RefreezeRequest,
  type RefreezeResult,
  refreezeCheck,
} from "./refreeze.js";
export type { RefreezeSeries, StretchSeries } from "./refreeze-statistics.js";
export {
  densityOfSnow,
  type MeltSurroundings,
  type MeltTerms,
  meltTerms,
  type SnowKind,
  snowMass,
} from "./snow-cover.js";
export {
  FILM_LEFT,
  type ThawReport,
  type ThawRequest,
  type ThawResult,
  type ThawSeries,
  thawAndDry,
} from "./thaw.js";
export { GAP_LIMIT, heldBySkin, SKIN_LIMIT, type ThawTimes } from "./thaw-statistics.js";
export { WORTH_BRUSHING } from "./thaw-words.js";
export { OPEN_SITE, type WingSite } from "./wing-weather.js";
