import { STEFAN_BOLTZMANN } from "../properties/index.js";
import { airFilm, type FaceSize, type FilmConditions } from "./air-film.js";
import type { Panel } from "./panel.js";
import type { PanelFluxes, Surroundings } from "./panel-rows.js";
import {
  layerHeatCapacity,
  newLayerRates,
  vapourEnthalpy,
  waterEnthalpy,
  writeLayerRates,
} from "./wet-layer.js";

export interface FaceSettings {
  readonly panel: Panel;
  readonly conditions: FilmConditions;
  /** [-] multiplies every convection coefficient. */
  readonly transferFactor: number;
  /** [kg/(m2 s Pa)] from the convection coefficient [W/(m2 K)] and the wind [m/s]. */
  readonly evaporation: (convection: number, windSpeed: number) => number;
  /** [kg/m2] water a face holds; more runs off. */
  readonly waterHeld: number;
}

/** Fluxes of all faces since `clear`. */
export interface FaceSums extends PanelFluxes {
  /** [W/m2] enthalpy that comes with the vapour, less what runs off with the water. */
  enthalpy: number;
}

/** The outer faces of a panel: what each exchanges with the air and the sky, and what becomes of the water on it. */
export interface PanelFaces {
  readonly sums: FaceSums;
  clear(): void;
  /** The heat [W/m2] onto an outer face and its evaporation coefficient [kg/(m2 s Pa)], valid until the next call. */
  exchange(side: "up" | "down", temp: number, mass: number, dry: number, around: Surroundings): FaceExchange;
  /**
   * Rates of a face's three rows from `first` on, given the heat [W/m2] that reaches it but for its own phase changes.
   * @param bare [J/(m2 K)] heat capacity without what lies on it
   */
  writeRates(
    y: Float64Array,
    first: number,
    bare: number,
    heat: number,
    pressureVapour: number,
    coefficient: number,
    dydt: Float64Array,
  ): void;
}

interface FaceExchange {
  convection: number;
  radiation: number;
  evaporation: number;
}

/** [-] of water, ice and frost (0.95 to 0.98; Incropera et al., Table A.11, from memory). */
export const EMISSIVITY_WET = 0.97;
/** [kg/m2] of deposit that hides half of a dry skin from the long-wave: water is opaque at 10 µm within 20 µm (from memory). */
const OPAQUE_HALF = 0.02;
/** [s] in which excess water runs off. Project judgement. */
const DRAINING = 120;

export function createPanelFaces(settings: FaceSettings): PanelFaces {
  const { transferFactor, evaporation, waterHeld } = settings;
  const size = panelFaceSize(settings.panel);
  const filmUp = airFilm("up", size, settings.conditions);
  const filmDown = airFilm("down", size, settings.conditions);
  const layer = newLayerRates();
  const sums: FaceSums = { convection: 0, radiation: 0, vapour: 0, runOff: 0, enthalpy: 0 };
  const exchanged: FaceExchange = { convection: 0, radiation: 0, evaporation: 0 };
  return {
    sums,
    clear() {
      sums.convection = 0;
      sums.radiation = 0;
      sums.vapour = 0;
      sums.runOff = 0;
      sums.enthalpy = 0;
    },
    exchange(side, temp, mass, dry, around) {
      const difference = temp - around.tempAir;
      const film =
        side === "up" ? filmUp(difference, around.windSpeed) : filmDown(difference, around.windSpeed);
      const coefficient = transferFactor * film;
      const wet = Math.max(0, mass);
      const emissivity = dry + (EMISSIVITY_WET - dry) * (wet / (wet + OPAQUE_HALF));
      const tempFar = side === "up" ? around.tempAbove : around.tempBelow;
      exchanged.convection = coefficient * (around.tempAir - temp);
      exchanged.radiation = emissivity * STEFAN_BOLTZMANN * (tempFar ** 4 - temp ** 4);
      exchanged.evaporation = evaporation(coefficient, around.windSpeed);
      sums.convection += exchanged.convection;
      sums.radiation += exchanged.radiation;
      return exchanged;
    },
    writeRates(y, first, bare, heat, pressureVapour, coefficient, dydt) {
      const temp = y[first];
      const ice = y[first + 1];
      const water = y[first + 2];
      writeLayerRates(temp, ice, water, pressureVapour, coefficient, layer);
      const runOff = Math.max(0, water - waterHeld) / DRAINING;
      const vapour = layer.vapourToIce + layer.vapourToWater;
      dydt[first] = (heat + layer.heat) / (bare + layerHeatCapacity(ice, water));
      dydt[first + 1] = layer.vapourToIce - layer.melting;
      dydt[first + 2] = layer.vapourToWater + layer.melting - runOff;
      sums.vapour += vapour;
      sums.runOff += runOff;
      sums.enthalpy += vapour * vapourEnthalpy(temp) - runOff * waterEnthalpy(temp);
    },
  };
}

export function panelFaceSize({ chord, span }: Panel): FaceSize {
  return { alongWind: chord, stillAir: (chord * span) / (2 * (chord + span)) };
}
