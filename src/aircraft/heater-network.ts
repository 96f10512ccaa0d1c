import type { Part } from "../thermal/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import type { Configuration } from "./configuration.js";
import type { Installation } from "./description.js";
import type { Heater, Kit } from "./kit.js";
import type { LinkRule, SourceRule } from "./link-rule.js";
import { oilFilmFactor } from "./oil-store.js";
import { elementPart } from "./parts.js";

/** One part per element, so that its surface temperature is known. */
export function heaterParts(heater: Heater): Part[] {
  return heater.elements.map((element) => ({
    name: elementPart(heater.id, element.name),
    heatCapacity: element.heat_capacity_j_per_k,
  }));
}

export function heaterLinks(heater: Heater, installation: Installation): LinkRule[] {
  const links = heater.elements.flatMap((element): LinkRule[] => {
    const part = elementPart(heater.id, element.name);
    const contact: LinkRule = {
      link: {
        name: `${part}-${element.target}`,
        from: part,
        to: element.target,
        law: element.in_oil ? "free-convection" : "conduction",
        parameters: ["heater_contact"],
        ...(element.in_oil ? { filmFactor: oilFilmFactor(installation.oil.oil_id) } : {}),
      },
      conductance: () => element.contact_w_per_k,
    };
    if (element.back_w_per_k === 0) return [contact];
    const back: LinkRule = {
      link: {
        name: `${part}-cowl_air`,
        from: part,
        to: "cowl_air",
        law: "free-convection",
        parameters: ["engine_to_cowl_air"],
      },
      conductance: () => element.back_w_per_k,
    };
    return element.target === "cowl_air" ? [contact] : [contact, back];
  });
  const duct = heater.duct;
  if (duct !== undefined) {
    links.push({
      link: {
        name: `heater:${heater.id}:duct-cowl_air`,
        from: "supply_air",
        to: "cowl_air",
        law: "conduction",
        parameters: ["heater_power"],
      },
      conductance: ({ heatersOn }) =>
        heatersOn.has(heater.id) ? duct.flow_m3_per_s * AIR_HEAT_PER_VOLUME : 0,
    });
  }
  return links;
}

/** [J/m3K] density times heat capacity of dry air at 0 °C and 101325 Pa: 1.292 kg/m3 x 1006 J/kgK (ISO 2533 gas constant). */
export const AIR_HEAT_PER_VOLUME = 1.292 * 1006;

export function heaterSources(heater: Heater): SourceRule[] {
  return heater.elements.map((element) => {
    const part = elementPart(heater.id, element.name);
    const { limiter } = element;
    return {
      source: {
        name: part,
        part,
        parameters: ["heater_power"],
        ...(limiter === undefined
          ? {}
          : {
              limiter: {
                senses: limiter.senses === "element" ? part : limiter.senses,
                setPoint: kelvinFromCelsius(limiter.set_c),
                width: limiter.width_k,
              },
            }),
      },
      power: ({ heatersOn }) => (heatersOn.has(heater.id) ? element.power_w : 0),
    };
  });
}

/** Factor on the parts' exchange with the air under the cowl while fans blow there [1]. */
export function heaterBlows(kit: Kit, { heatersOn }: Configuration): number {
  return kit.heaters.reduce((most, h) => (heatersOn.has(h.id) ? Math.max(most, h.stirring ?? 1) : most), 1);
}
