import { cowlOpenings, ventilationConductance } from "./cowl.js";
import type { Installation } from "./description.js";
import { heaterBlows } from "./heater-network.js";
import type { Kit } from "./kit.js";
import { fixed, type LinkRule } from "./link-rule.js";
import type { PartName } from "./parts.js";
import { coefficientInsideCowl, coefficientOnBody } from "./surfaces.js";

/** Engine surfaces to the air under the cowl. */
export function surfaceLinks({ bodies }: Installation, kit: Kit): LinkRule[] {
  const surfaces: [PartName, number, number][] = [
    ["sump", bodies.sump.area_m2, bodies.sump.height_m],
    ["crankcase", bodies.crankcase.area_m2, bodies.crankcase.height_m],
    ["barrels", bodies.barrels.area_m2, bodies.barrels.height_m],
    ["heads_front", bodies.heads.area_m2 / 2, bodies.heads.height_m],
    ["heads_rear", bodies.heads.area_m2 / 2, bodies.heads.height_m],
    ["accessories", bodies.accessories.area_m2, bodies.accessories.height_m],
  ];
  if (bodies.coolant !== undefined)
    surfaces.push(["coolant", bodies.coolant.area_m2, bodies.coolant.height_m]);
  return surfaces.map(([part, area, height]) => {
    const still = area * coefficientOnBody(height);
    return {
      link: {
        name: `${part}-cowl_air`,
        from: part,
        to: "cowl_air",
        law: "free-convection",
        parameters: ["engine_to_cowl_air"],
      },
      conductance: (configuration) => still * heaterBlows(kit, configuration),
    };
  });
}

export function cowlLinks({ cowl }: Installation, kit: Kit): LinkRule[] {
  const inside = cowl.skin_area_m2 * coefficientInsideCowl(cowl);
  return [
    {
      link: {
        name: "cowl_air-cowl_skin",
        from: "cowl_air",
        to: "cowl_skin",
        law: "free-convection",
        parameters: ["cowl_skin_loss"],
      },
      conductance: (configuration) => inside * heaterBlows(kit, configuration),
    },
    fixed(
      {
        name: "cowl_skin-surroundings",
        from: "cowl_skin",
        to: "cowl_surroundings",
        law: "conduction",
        parameters: ["cowl_skin_loss"],
        factorInput: "skin_conductance",
      },
      1,
    ),
    {
      link: {
        name: "cowl_air-outside_air",
        from: "cowl_air",
        to: "outside_air",
        law: "ventilation",
        parameters: ["ventilation"],
        windInput: "wind_draught",
      },
      conductance: (configuration) => ventilationConductance(cowl, cowlOpenings(cowl, kit, configuration)),
    },
    {
      // The front cylinders stand in the draught of the inlets.
      link: {
        name: "heads_front-outside_air",
        from: "heads_front",
        to: "outside_air",
        law: "ventilation",
        parameters: ["ventilation"],
        windInput: "wind_draught",
      },
      conductance: (configuration) =>
        FRONT_DRAUGHT_SHARE * ventilationConductance(cowl, cowlOpenings(cowl, kit, configuration)),
    },
    fixed(
      {
        name: "hub-outside_air",
        from: "hub",
        to: "outside_air",
        law: "conduction",
        parameters: ["hub_loss"],
        factorInput: "hub_conductance",
      },
      1,
    ),
  ];
}

/** Share of the cooling draught's heat taken straight from the front heads; project judgement. */
const FRONT_DRAUGHT_SHARE = 0.015;

export function batteryLinks({ battery }: Installation): LinkRule[] {
  const link = (to: "cowl_air" | "outside_air", wPerK: number): LinkRule =>
    fixed(
      { name: `battery-${to}`, from: "battery", to, law: "conduction", parameters: ["battery_links"] },
      wPerK,
    );
  return [link("cowl_air", battery.cowl_w_per_k), link("outside_air", battery.outside_w_per_k)];
}
