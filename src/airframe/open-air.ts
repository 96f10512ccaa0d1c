import type { FilmConditions } from "./air-film.js";
import { vapourPerHeatTransfer } from "./evaporation.js";
import type { Gap } from "./gap.js";
import { GAP_ROWS, gapModel } from "./gap-model.js";
import { integrate, type SmallSolution } from "./integrate.js";
import type { Panel } from "./panel.js";
import { panelModel } from "./panel-model.js";
import { PANEL_SUMS, panelScales, type Surroundings } from "./panel-rows.js";

/** Panel and gap of one member in the open; rows of the panel, then of the gap from `gap` on. */
export interface OpenAirModel {
  readonly rows: number;
  readonly gap: number;
  /** State at `temps` [K] with `film` [kg/m2] of water on both faces. */
  initial(temps: { skin: number; inside: number; gap: number }, film: number): Float64Array;
  /** Integrates from `initial` along `sampleTimes`, in surroundings written by `write`, which bend at `bends`. */
  run(
    initial: Float64Array,
    sampleTimes: Float64Array,
    write: (t: number, around: Surroundings) => void,
    bends?: readonly number[],
  ): SmallSolution;
}

export interface OpenAirSettings {
  readonly panel: Panel;
  readonly gap: Gap;
  readonly conditions: FilmConditions;
  readonly transferFactor: number;
}

/** [kg/m2] a face holds in the open. Project judgement, as FILM_LEFT.dripping. */
const WATER_HELD = 0.2;

export function openAirModel({ panel, gap, conditions, transferFactor }: OpenAirSettings): OpenAirModel {
  const perHeat = vapourPerHeatTransfer(conditions);
  const evaporation = (convection: number) => perHeat * convection;
  const skin = panelModel({ panel, conditions, transferFactor, evaporation, waterHeld: WATER_HELD });
  const slot = gapModel({ gap, conditions, transferFactor, evaporation });
  const first = skin.size;
  const rows = first + GAP_ROWS;
  const scales = new Float64Array(rows).fill(0.01);
  scales.set(panelScales(skin.size));
  scales[first] = 1;
  const around = { tempAir: 0, pressureVapour: 0, windSpeed: 0, tempAbove: 0, tempBelow: 0 };
  return {
    rows,
    gap: first,
    initial: (temps, film) =>
      Float64Array.of(...skin.initial(temps.skin, temps.inside, { water: film }), ...slot.initial(temps.gap)),
    run: (initial, sampleTimes, write, bends = []) =>
      integrate({
        initial,
        scales,
        sums: PANEL_SUMS,
        start: sampleTimes[0],
        sampleTimes,
        bends,
        derivative(t, y, dydt) {
          write(t, around);
          skin.writeRates(y, around, dydt);
          slot.writeRates(y, first, around, 0, dydt);
        },
      }),
  };
}
