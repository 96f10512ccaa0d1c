import {
  conductivityAir,
  convectionCoefficient,
  kinematicViscosityAir,
  nusseltRoundJet,
  prandtlAir,
} from "../properties/index.js";
import type { Part } from "../thermal/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import type { Configuration } from "./configuration.js";
import type { Installation } from "./description.js";
import type { Duct, Heater, Kit } from "./kit.js";
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
  if (heater.duct !== undefined) links.push(...ductLinks(heater.id, heater.duct, installation));
  return links;
}

/**
 * The share of the flow that comes to the temperature of the sump it strikes, where its hose is pointed there, and the rest
 * that mixes into the air under the cowl. That the spent share leaves as warm as the sump is left out: some hundredths of
 * the power.
 */
function ductLinks(id: string, duct: Duct, installation: Installation): LinkRule[] {
  const flow = duct.flow_m3_per_s * AIR_HEAT_PER_VOLUME;
  const struck = shareLeftOnSump(duct, installation);
  const link = (to: "cowl_air" | "sump", share: number): LinkRule => ({
    link: {
      name: `heater:${id}:duct-${to}`,
      ...{ from: "supply_air", to, law: "conduction", parameters: ["heater_power"] },
    },
    conductance: ({ heatersOn }) => (heatersOn.has(id) ? share * flow : 0),
  });
  return struck === 0 ? [link("cowl_air", 1)] : [link("cowl_air", 1 - struck), link("sump", struck)];
}

/** How far the flow comes towards the sump's temperature on its way past it [0..1]: a jet on a surface. */
function shareLeftOnSump({ flow_m3_per_s, nozzle_m }: Duct, { bodies }: Installation): number {
  if (nozzle_m === undefined) return 0;
  const speed = flow_m3_per_s / ((Math.PI / 4) * nozzle_m ** 2);
  const reynolds = (speed * nozzle_m) / kinematicViscosityAir(JET_TEMP);
  const radius = Math.sqrt(bodies.sump.area_m2 / Math.PI);
  const narrowness = Math.min(0.2, Math.max(0.063, nozzle_m / (2 * radius)));
  const nusselt = nusseltRoundJet(reynolds, prandtlAir(JET_TEMP), JET_GAP, narrowness);
  const onSump = convectionCoefficient(nusselt, conductivityAir(JET_TEMP), nozzle_m) * bodies.sump.area_m2;
  return -Math.expm1(-onSump / (flow_m3_per_s * AIR_HEAT_PER_VOLUME));
}

/** [K] air of a jet, midway between hot hose and cold sump: its properties vary little. */
const JET_TEMP = kelvinFromCelsius(40);
/** Nozzle to sump in nozzle diameters: a hose's end held in the cowl's outlet; project judgement. */
const JET_GAP = 4;

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
