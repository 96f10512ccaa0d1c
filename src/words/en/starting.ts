import type { StartingFindings } from "../../findings/index.js";
import type { Phrases, Say } from "../phrases.js";

const PARTS: Readonly<Record<StartingFindings["part"]["name"], string>> = {
  sump: "oil sump",
  oil: "oil",
  crankcase: "crankcase",
  crankshaft: "crankshaft and bearings",
  barrels: "cylinder barrels",
  heads_front: "front cylinder heads",
  heads_rear: "rear cylinder heads",
  accessories: "accessories",
  hub: "propeller hub",
  cowl_air: "air under the cowl",
  cowl_skin: "cowl skin",
  battery: "battery",
  coolant: "coolant",
};

const PARAMETERS: Readonly<Record<StartingFindings["parameter"]["name"], string>> = {
  heater_contact: "how well the heater is bonded to what it heats",
  heater_power: "power really drawn (supply voltage, element tolerance)",
  oil_film: "heat passing from the sump wall into the oil",
  sump_joint: "conduction from sump to crankcase",
  oil_inside: "oil, vapour and drain paths from oil to case and crankshaft",
  journals: "conduction through main bearings",
  flanges: "conduction from crankcase to barrels and heads",
  accessory_mounts: "conduction to accessories",
  engine_to_cowl_air: "heat from engine surfaces to the air under the cowl",
  cowl_skin_loss: "heat through cowl and cover",
  ventilation: "air leaking through inlets, outlet and under the cover",
  hub_loss: "heat through propeller hub and blades",
  battery_links: "heat between battery, cowl and outside",
  heat_stores: "heat capacity of the engine's metal",
};

const TITLES: Readonly<Record<StartingFindings["why-title"]["topic"], string>> = {
  "oil-viscosity": "How thick is the oil?",
  "oil-pressure": "How long until oil pressure?",
  "cranking-drag": "How hard is it to turn?",
  "cranking-power": "What is left of the battery?",
  "cranking-speed": "Does it turn fast enough?",
  "battery-freezing": "When does the battery freeze?",
  "fuel-vapour": "Does the fuel give a mixture that burns?",
  "bearing-clearance": "What is left of the main-bearing clearance?",
  "piston-clearance": "What room has the piston in its first minutes?",
  "frost-point": "At what skin temperature does frost begin?",
};

const BATTERIES = {
  flooded: "lead-acid, flooded",
  sealed: "lead-acid, sealed",
  lithium: "lithium iron phosphate",
} as const;

export const starting: Phrases<StartingFindings> = {
  part: ({ name }) => PARTS[name],
  parameter: ({ name }) => PARAMETERS[name],
  "with-source": ({ finding, source }, say) => `${say.finding(finding)} (${source})`,
  "oil-below-pour-point": ({ oil, temp_c, pour_point_c }, say) =>
    `${oil} at ${say.temp(temp_c)} is below its pour point (${say.temp(pour_point_c)}): it may not flow at all`,
  "oil-not-pumped": ({ oil, temp_c, limit_c }, say) =>
    `${oil} at ${say.temp(temp_c)} may not reach the pump: limit ${say.temp(limit_c)}`,
  "oil-too-stiff": ({ oil, temp_c, limit_c }, say) =>
    `${oil} at ${say.temp(temp_c)} is too stiff to crank by SAE J300: limit ${say.temp(limit_c)}`,
  "oil-fit": ({ oil, temp_c }, say) =>
    `${oil} at ${say.temp(temp_c)} can be pumped and cranked by SAE J300; the engine maker's preheat limit comes first`,
  "oil-pressure-never": () => "oil pressure may not come at all: the oil may not reach the pump",
  "oil-pressure-delay": ({ least_s, most_s, limit_s }, say) => {
    const range = `oil pressure may take ${say.number(least_s)} to ${say.number(most_s)} s`;
    return least_s > limit_s
      ? `${range}, and the engine is to be stopped after ${limit_s} s: heat it first`
      : `${range}; stop the engine after ${limit_s} s without`;
  },
  "oil-grade-listed": ({ grade, temp_c }, say) =>
    `SAE ${grade} is among the grades listed for ${say.temp(temp_c)}`,
  "oil-grade-unlisted": ({ grade, temp_c, listed }, say) =>
    `SAE ${grade} is not listed for ${say.temp(temp_c)}: ${listed.map((one) => `SAE ${one}`).join(", ")} are`,
  "propeller-clear": () => "look that it is clear, and call out, before anything is switched on",
  "starter-stalls": () => "the starter is not expected to turn the engine",
  "starter-slow": (turning, say) => `too slow to fire: about ${figuresOf(turning, say)}`,
  "starter-turns": (turning, say) => `the starter turns about ${figuresOf(turning, say)}`,
  "battery-absent": () => "no battery is in the aircraft: fit it warm and charged",
  "battery-frozen": (battery, say) => `${batteryAt(battery, say)} may be frozen`,
  "battery-cut-off": (battery, say) => `${batteryAt(battery, say)} gives nothing this cold`,
  "battery-power": ({ power, may_charge, ...battery }, say) =>
    `${batteryAt(battery, say)} gives ${say.percent(power)} of its warm cranking power${may_charge ? "" : " and takes no charge"}`,
  "fuel-too-lean": ({ temp_c }, say) =>
    `At ${say.temp(temp_c)} no priming gives a mixture that burns: warm cylinders and intake.`,
  "fuel-as-warm": ({ temp_c }, say) =>
    `At ${say.temp(temp_c)} the fuel evaporates as on a warm day: prime by the handbook.`,
  "fuel-more": ({ temp_c, ratio, too_much }, say) => {
    const amount = `At ${say.temp(temp_c)} about ${say.number(ratio, 1)} times as much fuel must be offered as at ${say.temp(15)}`;
    return too_much
      ? `${amount}, more than primers are made for: warm cylinders and intake first.`
      : `${amount} for the same vapour; how to prime is the handbook's to say.`;
  },
  "breather-iced": () => "it may be iced: feel and look",
  "why-title": ({ topic }) => TITLES[topic],
  "why-oil-viscosity": ({ oil, temp_c, viscosity_pa_s, ratio, cranking_c, pumping_c }, say) =>
    `At ${say.temp(temp_c)} ${oil} has ${brief(viscosity_pa_s, say)} Pa s, ${brief(ratio, say)} times as much as at ${say.temp(20)}; ` +
    `it is too stiff to crank below ${say.temp(cranking_c)} and may not reach the pump below ${say.temp(pumping_c)}.`,
  "why-oil-pressure": ({ temp_c, least_s, most_s }, say) =>
    `At ${say.temp(temp_c)} the oil takes some ${say.number(least_s)} to ${say.number(most_s)} s to show pressure, if it flows ` +
    "at all. This is a rough range. Stop the engine when there is no pressure within 10 s; its handbook decides.",
  "why-cranking-drag": ({ temp_c, torque_nm, ratio, mostly }, say) =>
    `At ${say.temp(temp_c)} all through, turning it at 100 rpm takes ${say.number(torque_nm)} N m, ${say.percent(ratio)} of what ` +
    `it takes at ${say.temp(27)}; ${mostly === "films" ? "oil films" : "compression and dry friction"} are most of it.`,
  "why-cranking-power": ({ temp_c, battery, power }, say) =>
    `At ${say.temp(temp_c)} a full ${BATTERIES[battery]} battery cranks with ${say.percent(power)} of its power at ${say.temp(27)}, while ` +
    "the engine wants more.",
  "why-cranking-speed": ({ temp_c, charge, rpm, least_rpm }, say) =>
    `At ${say.temp(temp_c)}, engine and battery, the battery ${say.percent(charge)} charged, the starter turns about ` +
    `${say.number(rpm)} rpm. It takes ${say.number(least_rpm)} rpm at least.`,
  "why-battery-freezing": ({ temp_c, charge, margin_k, freezing_c, empty_c }, say) =>
    `At ${say.temp(temp_c)} a battery ${say.percent(charge)} charged is ${aboveOrBelow(margin_k, say)} the freezing point of its ` +
    `acid, ${say.temp(freezing_c)}; empty it would freeze at ${say.temp(empty_c)}.`,
  "why-battery-cut-off": ({ temp_c, margin_k, cut_off_c }, say) =>
    `At ${say.temp(temp_c)} the pack is ${aboveOrBelow(margin_k, say)} its cut-off of ${say.temp(cut_off_c)}.`,
  "why-fuel-vapour": ({ temp_c, fuel, vapour, lean, lean_c, ratio }, say) =>
    `At ${say.temp(temp_c)} air over ${fuel} holds at most ${say.number(100 * vapour, 1)} % of vapour (it burns from ` +
    `${say.number(100 * lean, 1)} %, so not below ${say.temp(lean_c)}), and ${say.number(ratio, 1)} times as ` +
    `much fuel must be offered as at ${say.temp(15)}; the handbook says how to prime.`,
  "why-bearing-clearance": ({ temp_c, left_mm, whole_mm }, say) =>
    `At ${say.temp(temp_c)} an aluminium case has closed in on its steel shaft: ${say.number(left_mm, 3)} mm of ` +
    `${say.number(whole_mm, 3)} mm are left, if the case alone set the bore.`,
  "why-piston-clearance": ({ temp_c, left_mm, warm_mm }, say) =>
    `With barrels at ${say.temp(temp_c)} and the piston already at ${say.temp(100)}, ${say.number(left_mm, 3)} mm are left; with ` +
    `barrels at ${say.temp(20)} it would be ${say.number(warm_mm, 3)} mm.`,
  "why-frost-point": ({ temp_c, frost_c }, say) =>
    `A reported dew point of ${say.temp(temp_c)} means frost on anything below ${say.temp(frost_c, 1)}.`,
  "why-dew-point": ({ temp_c }, say) =>
    `A dew point of ${say.temp(temp_c)} means dew, not frost, on anything below it.`,
};

function figuresOf({ rpm, current_a, voltage_v }: StartingFindings["starter-turns"], say: Say): string {
  return `${say.number(rpm)} rpm at ${say.number(current_a)} A and ${say.number(voltage_v, 1)} V`;
}

function batteryAt({ temp_c, charge }: StartingFindings["battery-frozen"], say: Say): string {
  return `the battery at ${say.temp(temp_c)}, taken as ${say.percent(charge)} charged,`;
}

function aboveOrBelow(margin: number, say: Say): string {
  return `${say.difference(Math.abs(margin), 0)} ${margin < 0 ? "below" : "above"}`;
}

/** Two figures, without powers of ten. */
function brief(value: number, say: Say): string {
  const rounded = Number(value.toPrecision(2));
  return say.number(rounded, Math.max(0, 1 - Math.floor(Math.log10(rounded))));
}
