import { STEFAN_BOLTZMANN } from "../properties/index.js";
import { type AirFilm, airFilm, type FaceSize, type FilmConditions } from "./air-film.js";
import { type Panel, requireCover, requirePanel, type WingCover } from "./panel.js";
import { PANEL_ROW, type PanelFluxes, ROWS_BARE, ROWS_COVERED, type Surroundings } from "./panel-rows.js";
import { saturationPressureAtSurface } from "./saturation.js";
import {
  faceEnthalpy,
  layerHeatCapacity,
  newLayerRates,
  vapourEnthalpy,
  waterEnthalpy,
  writeLayerRates,
} from "./wet-layer.js";

export interface PanelSettings {
  readonly panel: Panel;
  readonly cover?: WingCover | undefined;
  readonly conditions: FilmConditions;
  /** [-] multiplies every convection coefficient. */
  readonly transferFactor: number;
  /** [kg/(m2 s Pa)] from the convection coefficient [W/(m2 K)] and the wind [m/s]. */
  readonly evaporation: (convection: number, windSpeed: number) => number;
  /** [kg/m2] water a face holds; more runs off. */
  readonly waterHeld: number;
}

export interface PanelModel {
  readonly size: number;
  /** Fluxes of the last `writeRates`. */
  readonly fluxes: PanelFluxes;
  /** State with everything at `temp` [K] but the inside at `tempInside` [K]; on top `ice`, on both faces `water` [kg/m2]. */
  initial(temp: number, tempInside: number, lying: { ice?: number; water?: number }): Float64Array;
  /** Writes d/dt of the panel's rows, which stand first in `y` and `dydt`; the caller's own may follow. */
  writeRates(y: Float64Array, around: Surroundings, dydt: Float64Array): void;
  /** [J/m2] enthalpy from water at 0 °C. */
  enthalpy(y: Float64Array): number;
}

/** [-] of water, ice and frost (0.95 to 0.98; Incropera et al., Table A.11, from memory). */
export const EMISSIVITY_WET = 0.97;
/** [kg/m2] of deposit that hides half of a dry skin from the long-wave: water is opaque at 10 µm within 20 µm (from memory). */
const OPAQUE_HALF = 0.02;
/** [s] in which excess water runs off. Project judgement. */
const DRAINING = 120;

export function panelModel(settings: PanelSettings): PanelModel {
  const { panel, cover, conditions, transferFactor, evaporation, waterHeld } = settings;
  requirePanel(panel);
  if (cover !== undefined) requireCover(cover);
  const size = panelFaceSize(panel);
  const filmUp = airFilm("up", size, conditions);
  const filmDown = airFilm("down", size, conditions);
  const layer = newLayerRates();
  const fluxes: PanelFluxes = { convection: 0, radiation: 0, vapour: 0, runOff: 0 };
  const faceHeat = { convection: 0, radiation: 0 };
  let enthalpyRate = 0;
  const { inside } = panel;
  const row = PANEL_ROW;

  /** Convection and radiation on one outer face; returns the convection coefficient. */
  function exchange(
    temp: number,
    mass: number,
    dry: number,
    film: AirFilm,
    around: Surroundings,
    tempFar: number,
  ): number {
    const coefficient = transferFactor * film(temp - around.tempAir, around.windSpeed);
    const wet = Math.max(0, mass);
    const emissivity = dry + (EMISSIVITY_WET - dry) * (wet / (wet + OPAQUE_HALF));
    faceHeat.convection = coefficient * (around.tempAir - temp);
    faceHeat.radiation = emissivity * STEFAN_BOLTZMANN * (tempFar ** 4 - temp ** 4);
    fluxes.convection += faceHeat.convection;
    fluxes.radiation += faceHeat.radiation;
    return coefficient;
  }

  /** Rates of a face's three rows, given the heat that reaches it but for its own phase changes. */
  function writeFace(
    y: Float64Array,
    first: number,
    bare: number,
    heat: number,
    pressureVapour: number,
    coefficient: number,
    dydt: Float64Array,
  ): void {
    const temp = y[first];
    const ice = y[first + 1];
    const water = y[first + 2];
    writeLayerRates(temp, ice, water, pressureVapour, coefficient, layer);
    const runOff = Math.max(0, water - waterHeld) / DRAINING;
    const vapour = layer.vapourToIce + layer.vapourToWater;
    dydt[first] = (heat + layer.heat) / (bare + layerHeatCapacity(ice, water));
    dydt[first + 1] = layer.vapourToIce - layer.melting;
    dydt[first + 2] = layer.vapourToWater + layer.melting - runOff;
    fluxes.vapour += vapour;
    fluxes.runOff += runOff;
    enthalpyRate += vapour * vapourEnthalpy(temp) - runOff * waterEnthalpy(temp);
  }

  return {
    size: cover === undefined ? ROWS_BARE : ROWS_COVERED,
    fluxes,
    initial(temp, tempInside, { ice = 0, water = 0 }) {
      const y = new Float64Array(cover === undefined ? ROWS_BARE : ROWS_COVERED);
      y[row.tempUpper] = temp;
      y[row.iceUpper] = ice;
      y[row.waterUpper] = water;
      y[row.waterLower] = water;
      y[row.tempLower] = temp;
      y[row.tempInside] = tempInside;
      if (cover !== undefined) y[row.tempCover] = temp;
      return y;
    },
    writeRates(y, around, dydt) {
      const { pressureVapour, windSpeed } = around;
      fluxes.convection = 0;
      fluxes.radiation = 0;
      fluxes.vapour = 0;
      fluxes.runOff = 0;
      enthalpyRate = 0;
      const upper = y[row.tempUpper];
      const lower = y[row.tempLower];
      const within = y[row.tempInside];
      const fromInsideUp = inside.coefficientUpper * (within - upper);
      const fromInsideDown = inside.coefficientLower * (within - lower);

      if (cover === undefined) {
        const mass = y[row.iceUpper] + y[row.waterUpper];
        const film = exchange(upper, mass, panel.emissivity, filmUp, around, around.tempAbove);
        const heat = faceHeat.convection + faceHeat.radiation + fromInsideUp;
        const vapour = evaporation(film, windSpeed);
        writeFace(y, row.tempUpper, panel.heatCapacityUpper, heat, pressureVapour, vapour, dydt);
      } else {
        const outer = y[row.tempCover];
        const mass = y[row.iceCover] + y[row.waterCover];
        const film = exchange(outer, mass, cover.emissivity, filmUp, around, around.tempAbove);
        const through = (upper - outer) / cover.resistance;
        const heat = faceHeat.convection + faceHeat.radiation + through;
        const vapour = evaporation(film, windSpeed);
        writeFace(y, row.tempCover, cover.heatCapacity, heat, pressureVapour, vapour, dydt);
        // The cover's cold inside catches the vapour first; what comes in by seams and edges stands above that.
        const caught = Math.min(pressureVapour, saturationPressureAtSurface(outer));
        const under = caught + cover.vapourLeak * (pressureVapour - caught);
        const heatUpper = fromInsideUp - through;
        writeFace(y, row.tempUpper, panel.heatCapacityUpper, heatUpper, under, vapour, dydt);
      }
      const mass = y[row.iceLower] + y[row.waterLower];
      const film = exchange(lower, mass, panel.emissivity, filmDown, around, around.tempBelow);
      const heat = faceHeat.convection + faceHeat.radiation + fromInsideDown;
      const vapour = evaporation(film, windSpeed);
      writeFace(y, row.tempLower, panel.heatCapacityLower, heat, pressureVapour, vapour, dydt);

      dydt[row.tempInside] = -(fromInsideUp + fromInsideDown) / inside.heatCapacity;
      dydt[row.vapourTaken] = fluxes.vapour;
      dydt[row.ranOff] = fluxes.runOff;
      dydt[row.heatTaken] = fluxes.convection + fluxes.radiation + enthalpyRate;
    },
    enthalpy(y) {
      const face = (first: number, bare: number) => faceEnthalpy(y[first], y[first + 1], y[first + 2], bare);
      return (
        face(row.tempUpper, panel.heatCapacityUpper) +
        face(row.tempLower, panel.heatCapacityLower) +
        faceEnthalpy(y[row.tempInside], 0, 0, inside.heatCapacity) +
        (cover === undefined ? 0 : face(row.tempCover, cover.heatCapacity))
      );
    },
  };
}

export function panelFaceSize({ chord, span }: Panel): FaceSize {
  return { alongWind: chord, stillAir: (chord * span) / (2 * (chord + span)) };
}
