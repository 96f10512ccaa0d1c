import { radiantExchange } from "../properties/index.js";
import { KELVIN_OF_ZERO_CELSIUS } from "../units/index.js";
import { airFilm, type FilmConditions } from "./air-film.js";
import { evaporationBetween, vapourPerHeatTransfer } from "./evaporation.js";
import { hangarModel } from "./hangar-model.js";
import { EMISSIVITY_WET, panelFaceSize } from "./panel-faces.js";
import { type MeltTerms, meltTerms } from "./snow-cover.js";
import type { ThawRequest } from "./thaw.js";
import { LATENT_HEAT_VAPORISATION } from "./wet-layer.js";

/** Melt rates of snow at 0 °C on the upper skin in the hangar as it is at roll-in, with everything in the middle. */
export function meltAtStart(request: ThawRequest, conditions: FilmConditions): MeltTerms {
  const { panel, hangar, outside, relativeHumidity, area } = request;
  const perHeat = vapourPerHeatTransfer(conditions);
  const evaporation = (convection: number, windSpeed: number) =>
    evaporationBetween(perHeat * convection, windSpeed, LATENT_HEAT_VAPORISATION).middle;
  const room = hangarModel({
    hangar,
    outside,
    puddleArea: area,
    airChangeFactor: 1,
    conditions,
    evaporation,
  });
  const state = room.initial(relativeHumidity);
  const [tempAir, tempShell] = state;
  const film = airFilm("up", panelFaceSize(panel), conditions);
  const convection = film(KELVIN_OF_ZERO_CELSIUS - tempAir, room.airSpeed);
  return meltTerms({
    tempAir,
    pressureVapour: room.pressureVapour(state, 0),
    convection,
    evaporation: evaporation(convection, room.airSpeed),
    radiation: -radiantExchange(KELVIN_OF_ZERO_CELSIUS, tempShell, EMISSIVITY_WET),
  });
}
