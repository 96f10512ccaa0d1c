import type { FilmConditions } from "./air-film.js";
import { evaporationBetween, vapourPerHeatTransfer } from "./evaporation.js";
import type { Gap } from "./gap.js";
import { GAP_ROWS, gapModel } from "./gap-model.js";
import type { Hangar, OutsideAir } from "./hangar.js";
import { HANGAR_ROW, HANGAR_SUMS, hangarModel } from "./hangar-model.js";
import type { Panel } from "./panel.js";
import { panelModel } from "./panel-model.js";
import { PANEL_ROW, PANEL_SUMS, panelScales } from "./panel-rows.js";
import { LATENT_HEAT_VAPORISATION } from "./wet-layer.js";

/** One member of a thaw: aircraft, gap and hangar, with this member's numbers. */
export interface ThawMember {
  readonly panel: Panel;
  /** [m2] plan area of the aircraft, which carries `snow` [kg/m2] on top. */
  readonly area: number;
  readonly snow: number;
  /** [kg/m2] of water a face holds when the rest has run off or been wiped. */
  readonly film: number;
  readonly gap: Gap;
  readonly hangar: Hangar;
  readonly outside: OutsideAir;
  readonly relativeHumidity: number | undefined;
  /** [K] */
  readonly tempAircraft: number;
  readonly tempInside: number;
  readonly conditions: FilmConditions;
  readonly transferFactor: number;
  /** Standard normal: where between and around the evaporation laws. */
  readonly evaporationDraw: number;
  readonly airChangeFactor: number;
}

/** The system of one member: rows of the panel, then of the gap from `gap` on, then of the hangar from `hangar` on. */
export interface ThawModel {
  readonly initial: Float64Array;
  readonly scales: Float64Array;
  /** Rows that nothing depends on. */
  readonly sums: readonly number[];
  readonly gap: number;
  readonly hangar: number;
  derivative(t: number, y: Float64Array, dydt: Float64Array): void;
  /** [Pa] vapour pressure in the hangar. */
  pressureVapour(y: ArrayLike<number>): number;
}

/** [kg/m2] of snow under which half of a gap's mouth is shut. Project judgement. */
const SHUT_HALF = 0.1;

export function thawModel(member: ThawMember): ThawModel {
  const { conditions, area, transferFactor } = member;
  const perHeat = vapourPerHeatTransfer(conditions);
  const evaporation = (convection: number, windSpeed: number) => {
    const { middle, logSd } = evaporationBetween(perHeat * convection, windSpeed, LATENT_HEAT_VAPORISATION);
    return middle * Math.exp(logSd * member.evaporationDraw);
  };
  const panel = panelModel({
    panel: member.panel,
    conditions,
    transferFactor,
    evaporation,
    waterHeld: member.film,
  });
  const gap = gapModel({ gap: member.gap, conditions, transferFactor, evaporation });
  const hangar = hangarModel({
    hangar: member.hangar,
    outside: member.outside,
    puddleArea: area,
    airChangeFactor: member.airChangeFactor,
    conditions,
    evaporation,
  });
  const gapFirst = panel.size;
  const hangarFirst = gapFirst + GAP_ROWS;
  const mouth = member.gap.length * member.gap.width;
  const around = { tempAir: 0, pressureVapour: 0, windSpeed: hangar.airSpeed, tempAbove: 0, tempBelow: 0 };
  const toHangar = { convection: 0, radiation: 0, vapour: 0, runOff: 0 };

  const initial = Float64Array.of(
    ...panel.initial(member.tempAircraft, member.tempInside, { ice: member.snow }),
    ...gap.initial(member.tempAircraft),
    ...hangar.initial(member.relativeHumidity),
  );
  const scales = new Float64Array(initial.length).fill(1);
  scales.set(panelScales(panel.size));
  scales.fill(0.01, gapFirst + 1, hangarFirst);
  // Grams per square metre of aircraft matter, so tens of grams in all; heater energy in megajoules.
  scales.fill(0.01 * area, hangarFirst + HANGAR_ROW.vapour, hangarFirst + HANGAR_ROW.heat);
  scales[hangarFirst + HANGAR_ROW.heat] = 1e6;

  return {
    initial,
    scales,
    sums: [...PANEL_SUMS, ...HANGAR_SUMS.map((row) => hangarFirst + row)],
    gap: gapFirst,
    hangar: hangarFirst,
    pressureVapour: (y) => hangar.pressureVapour(y, hangarFirst),
    derivative(_, y, dydt) {
      around.tempAir = y[hangarFirst + HANGAR_ROW.tempAir];
      around.pressureVapour = hangar.pressureVapour(y, hangarFirst);
      around.tempAbove = y[hangarFirst + HANGAR_ROW.tempShell];
      around.tempBelow = around.tempAbove;
      panel.writeRates(y, around, dydt);
      const snow = Math.max(0, y[PANEL_ROW.iceUpper]);
      gap.writeRates(y, gapFirst, around, snow / (snow + SHUT_HALF), dydt);
      toHangar.convection = -area * panel.fluxes.convection;
      toHangar.radiation = -area * panel.fluxes.radiation;
      toHangar.vapour = -area * panel.fluxes.vapour + mouth * gap.fluxes.vapour;
      toHangar.runOff = area * panel.fluxes.runOff;
      hangar.writeRates(y, hangarFirst, toHangar, dydt);
    },
  };
}
