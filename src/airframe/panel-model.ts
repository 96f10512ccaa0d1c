import { requireCover, requirePanel, type WingCover } from "./panel.js";
import { createPanelFaces, type FaceSettings } from "./panel-faces.js";
import { PANEL_ROW, type PanelFluxes, ROWS_BARE, ROWS_COVERED, type Surroundings } from "./panel-rows.js";
import { saturationPressureAtSurface } from "./saturation.js";
import { faceEnthalpy } from "./wet-layer.js";

export interface PanelSettings extends FaceSettings {
  readonly cover?: WingCover | undefined;
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

export function panelModel(settings: PanelSettings): PanelModel {
  const { panel, cover } = settings;
  requirePanel(panel);
  if (cover !== undefined) requireCover(cover);
  const faces = createPanelFaces(settings);
  const { sums } = faces;
  const { inside } = panel;
  const row = PANEL_ROW;

  /** A face that meets the air itself. */
  function writeBare(
    side: "up" | "down",
    y: Float64Array,
    around: Surroundings,
    fromInside: number,
    dydt: Float64Array,
  ): void {
    const first = side === "up" ? row.tempUpper : row.tempLower;
    const heatCapacity = side === "up" ? panel.heatCapacityUpper : panel.heatCapacityLower;
    const mass = y[first + 1] + y[first + 2];
    const onFace = faces.exchange(side, y[first], mass, panel.emissivity, around);
    const heat = onFace.convection + onFace.radiation + fromInside;
    faces.writeRates(y, first, heatCapacity, heat, around.pressureVapour, onFace.evaporation, dydt);
  }

  /** The cover meets the air; the upper face under it, the cover's inside. */
  function writeCoveredUpper(
    { emissivity, resistance, heatCapacity, vapourLeak }: WingCover,
    y: Float64Array,
    around: Surroundings,
    fromInside: number,
    dydt: Float64Array,
  ): void {
    const { pressureVapour } = around;
    const outer = y[row.tempCover];
    const mass = y[row.iceCover] + y[row.waterCover];
    const { convection, radiation, evaporation } = faces.exchange("up", outer, mass, emissivity, around);
    const through = (y[row.tempUpper] - outer) / resistance;
    const heat = convection + radiation + through;
    faces.writeRates(y, row.tempCover, heatCapacity, heat, pressureVapour, evaporation, dydt);
    // The cover's cold inside catches the vapour first; what comes in by seams and edges stands above that.
    const caught = Math.min(pressureVapour, saturationPressureAtSurface(outer));
    const under = caught + vapourLeak * (pressureVapour - caught);
    const heatUpper = fromInside - through;
    faces.writeRates(y, row.tempUpper, panel.heatCapacityUpper, heatUpper, under, evaporation, dydt);
  }

  return {
    size: cover === undefined ? ROWS_BARE : ROWS_COVERED,
    fluxes: sums,
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
      faces.clear();
      const within = y[row.tempInside];
      const fromInsideUp = inside.coefficientUpper * (within - y[row.tempUpper]);
      const fromInsideDown = inside.coefficientLower * (within - y[row.tempLower]);
      if (cover === undefined) writeBare("up", y, around, fromInsideUp, dydt);
      else writeCoveredUpper(cover, y, around, fromInsideUp, dydt);
      writeBare("down", y, around, fromInsideDown, dydt);
      dydt[row.tempInside] = -(fromInsideUp + fromInsideDown) / inside.heatCapacity;
      dydt[row.vapourTaken] = sums.vapour;
      dydt[row.ranOff] = sums.runOff;
      dydt[row.heatTaken] = sums.convection + sums.radiation + sums.enthalpy;
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
