import type { Installation } from "../description.js";
import type { Cover, Heater } from "../kit.js";
import { COVERS } from "./covers.js";
import { BATTERY_BLANKET_60 } from "./heaters/battery-blanket.js";
import { DUCTED_ELECTRIC_1500, DUCTED_FUEL_12000 } from "./heaters/ducted-air.js";
import { IMMERSION_250 } from "./heaters/immersion.js";
import { IN_COWL_400 } from "./heaters/in-cowl.js";
import { SUMP_PADS } from "./heaters/sump-pad.js";
import { WHOLE_ENGINE_SETS } from "./heaters/whole-engine.js";
import { FOUR_CARBURETTOR_160 } from "./installations/four-carburettor-160.js";
import { FOUR_INJECTED_200 } from "./installations/four-injected-200.js";
import { FOUR_LIGHT_100 } from "./installations/four-light-100.js";
import { LIQUID_LIGHT_100 } from "./installations/liquid-light-100.js";
import { RADIAL_NINE_360 } from "./installations/radial-nine-360.js";
import { SIX_CARBURETTOR_230 } from "./installations/six-carburettor-230.js";
import { SIX_INJECTED_300 } from "./installations/six-injected-300.js";
import { TWO_LIGHT_60 } from "./installations/two-light-60.js";

export const INSTALLATIONS: readonly Installation[] = [
  TWO_LIGHT_60,
  FOUR_LIGHT_100,
  FOUR_CARBURETTOR_160,
  FOUR_INJECTED_200,
  SIX_CARBURETTOR_230,
  SIX_INJECTED_300,
  LIQUID_LIGHT_100,
  RADIAL_NINE_360,
];

export const HEATERS: readonly Heater[] = [
  ...SUMP_PADS,
  IMMERSION_250,
  ...WHOLE_ENGINE_SETS,
  IN_COWL_400,
  DUCTED_ELECTRIC_1500,
  DUCTED_FUEL_12000,
  BATTERY_BLANKET_60,
];

export { COVERS };

export const installationById = (id: string): Installation => found("installation", INSTALLATIONS, id);
export const heaterById = (id: string): Heater => found("heater", HEATERS, id);
export const coverById = (id: string): Cover => found("cover", COVERS, id);

function found<T extends { readonly id: string }>(what: string, list: readonly T[], id: string): T {
  const entry = list.find((e) => e.id === id);
  if (entry === undefined) {
    throw new RangeError(`unknown ${what}: ${id} (expected one of ${list.map((e) => e.id).join(", ")})`);
  }
  return entry;
}
