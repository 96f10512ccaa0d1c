import { GAS_CONSTANT_VAPOUR, LATENT_HEAT_FUSION, STEFAN_BOLTZMANN } from "../properties/index.js";
import { KELVIN_OF_ZERO_CELSIUS } from "../units/index.js";
import { airFilm, type FilmConditions } from "./air-film.js";
import { diffusivityVapour } from "./evaporation.js";
import { dryPath, evaporationFluxStefanTube, type Gap, waterInGap } from "./gap.js";
import type { Surroundings } from "./panel-rows.js";
import { saturationPressureAtSurface } from "./saturation.js";
import {
  HEAT_CAPACITY_WATER,
  LATENT_HEAT_VAPORISATION,
  newLayerRates,
  writeLayerRates,
} from "./wet-layer.js";

/** Rows of a gap's state after `first`: temperature of the fitting [K], ice and water per mouth [kg/m2]. */
export const GAP_ROW = { temp: 0, ice: 1, water: 2 } as const;
export const GAP_ROWS = 3;

export interface GapSettings {
  readonly gap: Gap;
  readonly conditions: FilmConditions;
  readonly transferFactor: number;
  readonly evaporation: (convection: number, windSpeed: number) => number;
}

export interface GapModel {
  /** [kg/(m2 s)] vapour out of the mouth, of the last call. */
  readonly fluxes: { vapour: number };
  /** Rows at `temp` [K], the water frozen when that is below 0 °C. */
  initial(temp: number): Float64Array;
  /** Writes the three rows at `first`; `shut` [0..1] is how far snow still lies over the mouth. */
  writeRates(y: Float64Array, first: number, around: Surroundings, shut: number, dydt: Float64Array): void;
}

/** [m] height of a fitting, [-] its emissivity: painted or dull metal. Project judgement. */
const HEIGHT = 0.05;
const EMISSIVITY = 0.8;
/** [kg/m2] per mouth below which the last water thins out, 10 µm. Project judgement. */
const LAST_WATER = 0.01;

export function gapModel(settings: GapSettings): GapModel {
  const { gap, conditions, transferFactor, evaporation } = settings;
  const { pressure } = conditions;
  const film = airFilm("side", { alongWind: HEIGHT, stillAir: HEIGHT }, conditions);
  const diffusivity = diffusivityVapour(conditions);
  const layer = newLayerRates();
  const fluxes = { vapour: 0 };
  return {
    fluxes,
    initial(temp) {
      const column = waterInGap(gap);
      const frozen = temp < KELVIN_OF_ZERO_CELSIUS;
      return Float64Array.of(temp, frozen ? column : 0, frozen ? 0 : column);
    },
    writeRates(y, first, around, shut, dydt) {
      const temp = y[first + GAP_ROW.temp];
      const ice = Math.max(0, y[first + GAP_ROW.ice]);
      const water = Math.max(0, y[first + GAP_ROW.water]);
      const column = ice + water;
      const convection = transferFactor * film(temp - around.tempAir, around.windSpeed);
      const tempFar = 0.5 * (around.tempAbove + around.tempBelow);
      const radiation = EMISSIVITY * STEFAN_BOLTZMANN * (tempFar ** 4 - temp ** 4);
      const outside = evaporation(convection, around.windSpeed) * GAS_CONSTANT_VAPOUR * temp;
      const path = dryPath(gap, column, diffusivity / outside);
      const surface = saturationPressureAtSurface(temp);
      const leaving =
        evaporationFluxStefanTube(surface, around.pressureVapour, path, temp, pressure, diffusivity) *
        (1 - shut);
      // Vapour that comes in condenses; what leaves is shared between ice and water as they lie.
      const share = 1 / (column + LAST_WATER);
      const fromIce = leaving > 0 ? leaving * ice * share : temp < KELVIN_OF_ZERO_CELSIUS ? leaving : 0;
      const fromWater = leaving > 0 ? leaving * water * share : temp < KELVIN_OF_ZERO_CELSIUS ? 0 : leaving;
      writeLayerRates(temp, ice, water, 0, 0, layer);
      const latent =
        -LATENT_HEAT_FUSION * layer.melting -
        LATENT_HEAT_VAPORISATION * (fromIce + fromWater) -
        LATENT_HEAT_FUSION * fromIce;
      const heat = convection * (around.tempAir - temp) + radiation + latent / gap.outerPerMouth;
      const capacity = gap.heatCapacity + (HEAT_CAPACITY_WATER * column) / gap.outerPerMouth;
      dydt[first + GAP_ROW.temp] = heat / capacity;
      dydt[first + GAP_ROW.ice] = -layer.melting - fromIce;
      dydt[first + GAP_ROW.water] = layer.melting - fromWater;
      fluxes.vapour = fromIce + fromWater;
    },
  };
}
