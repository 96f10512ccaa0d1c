import { heatCapacityIceYen, LATENT_HEAT_FUSION } from "../properties/index.js";
import { checkedNetwork, type Network, type NetworkValues, type Part } from "../thermal/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import type { Configuration } from "./configuration.js";
import { batteryLinks, cowlLinks, surfaceLinks } from "./cowl-links.js";
import type { Installation } from "./description.js";
import { linkWithSpread, sourceWithSpread } from "./heat-spread.js";
import { heaterLinks, heaterParts, heaterSources } from "./heater-network.js";
import { INPUT_NAMES } from "./inputs.js";
import type { Kit } from "./kit.js";
import { fixed, type LinkRule } from "./link-rule.js";
import { oilFilmFactor, oilHeatCapacity } from "./oil-store.js";
import type { ParameterName } from "./parameters.js";
import type { PartName } from "./parts.js";

/** The heat network of an installation with its kit, and its numbers in any configuration. */
export interface InstallationNetwork {
  readonly network: Network;
  readonly valuesIn: (configuration: Configuration) => NetworkValues;
}

/**
 * Builds the network of engine, cowl, propeller, battery and heater elements.
 * @param snowOnCowl [kg/m2] snow or ice lying on the cowl skin: it has to melt before the skin gets warmer than 0 °C.
 * That it also insulates is left out, which is the cautious side.
 */
export function installationNetwork(
  installation: Installation,
  kit: Kit,
  snowOnCowl = 0,
): InstallationNetwork {
  if (!(snowOnCowl >= 0))
    throw new RangeError(`invalid snowOnCowl: ${snowOnCowl} (expected 0 or more kg/m2)`);
  const links = [
    ...engineLinks(installation),
    ...surfaceLinks(installation, kit),
    ...cowlLinks(installation, kit),
    ...batteryLinks(installation),
    ...kit.heaters.flatMap((heater) =>
      heaterLinks(heater, installation).map((rule) => linkWithSpread(rule, heater)),
    ),
  ];
  const sources = kit.heaters.flatMap((heater) =>
    heaterSources(heater).map((rule) => sourceWithSpread(rule, heater)),
  );
  const network = checkedNetwork({
    parts: [...engineParts(installation, snowOnCowl), ...kit.heaters.flatMap(heaterParts)],
    inputs: INPUT_NAMES,
    links: links.map((rule) => rule.link),
    sources: sources.map((rule) => rule.source),
  });
  return {
    network,
    valuesIn: (configuration) => ({
      conductance: Float64Array.from(links, (rule) => rule.conductance(configuration)),
      power: Float64Array.from(sources, (rule) => rule.power(configuration)),
    }),
  };
}

function engineParts(installation: Installation, snowOnCowl: number): Part[] {
  const { bodies, oil, cowl, propeller, battery } = installation;
  const metal = (name: PartName, heatCapacity: number): Part => ({
    name,
    heatCapacity,
    parameter: "heat_stores",
  });
  const parts: Part[] = [
    metal("sump", bodies.sump.heat_capacity_j_per_k),
    { name: "oil", ...oilHeatCapacity(oil) },
    metal("crankcase", bodies.crankcase.heat_capacity_j_per_k),
    metal("crankshaft", bodies.crankshaft.heat_capacity_j_per_k),
    metal("barrels", bodies.barrels.heat_capacity_j_per_k),
    metal("heads_front", bodies.heads.heat_capacity_j_per_k / 2),
    metal("heads_rear", bodies.heads.heat_capacity_j_per_k / 2),
    metal("accessories", bodies.accessories.heat_capacity_j_per_k),
    metal("hub", propeller.hub_heat_capacity_j_per_k),
    { name: "cowl_air", heatCapacity: COWL_AIR_HEAT_CAPACITY },
    cowlSkin(cowl, snowOnCowl),
    { name: "battery", heatCapacity: battery.heat_capacity_j_per_k },
  ];
  if (bodies.coolant !== undefined) parts.push(metal("coolant", bodies.coolant.heat_capacity_j_per_k));
  return parts;
}

function cowlSkin(cowl: Installation["cowl"], snowOnCowl: number): Part {
  const skin = { name: "cowl_skin", heatCapacity: cowl.skin_heat_capacity_j_per_k };
  if (snowOnCowl === 0) return skin;
  const mass = snowOnCowl * cowl.skin_area_m2;
  return {
    ...skin,
    heatCapacity: skin.heatCapacity + mass * heatCapacityIceYen(kelvinFromCelsius(0)),
    latentHeat: mass * LATENT_HEAT_FUSION,
  };
}

/** [J/K] about 0.4 m3 of air with hoses, baffle seals and other light things in it; it follows at once either way; project judgement. */
const COWL_AIR_HEAT_CAPACITY = 1500;

function engineLinks({ contacts, oil, bodies }: Installation): LinkRule[] {
  const metal = (from: PartName, to: PartName, parameter: ParameterName, wPerK: number): LinkRule =>
    fixed({ name: `${from}-${to}`, from, to, law: "conduction", parameters: [parameter] }, wPerK);
  const film = oilFilmFactor(oil.oil_id);
  // Through oil films, drain paths and vapour in the case: livelier as the oil thins.
  const inside = (to: PartName, wPerK: number): LinkRule =>
    fixed(
      { name: `oil-${to}`, from: "oil", to, law: "conduction", parameters: ["oil_inside"], filmFactor: film },
      wPerK,
    );
  const links: LinkRule[] = [
    fixed(
      {
        name: "sump-oil",
        from: "sump",
        to: "oil",
        law: "free-convection",
        parameters: ["oil_film"],
        filmFactor: film,
      },
      contacts.sump_oil_w_per_k,
    ),
    metal("sump", "crankcase", "sump_joint", contacts.sump_crankcase_w_per_k),
    inside("crankcase", contacts.oil_crankcase_w_per_k),
    inside("crankshaft", contacts.oil_crankshaft_w_per_k),
    metal("crankcase", "crankshaft", "journals", contacts.crankcase_crankshaft_w_per_k),
    metal("crankcase", "barrels", "flanges", contacts.crankcase_barrels_w_per_k),
    metal("barrels", "heads_front", "flanges", contacts.barrels_heads_w_per_k / 2),
    metal("barrels", "heads_rear", "flanges", contacts.barrels_heads_w_per_k / 2),
    metal("crankcase", "accessories", "accessory_mounts", contacts.crankcase_accessories_w_per_k),
    metal("crankshaft", "hub", "hub_loss", contacts.crankshaft_hub_w_per_k),
  ];
  if (bodies.coolant !== undefined) {
    const toHeads = (contacts.coolant_heads_w_per_k ?? 0) / 2;
    links.push(
      metal("coolant", "heads_front", "flanges", toHeads),
      metal("coolant", "heads_rear", "flanges", toHeads),
      metal("coolant", "barrels", "flanges", contacts.coolant_barrels_w_per_k ?? 0),
    );
  }
  return links;
}
