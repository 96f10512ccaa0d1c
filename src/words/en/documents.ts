import type { DocumentsFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const documents: Phrases<DocumentsFindings> = {
  "own-words": ({ text }) => text,
  "of-aircraft": ({ name, finding }, say) => `${name}: ${say.finding(finding)}`,
  "members-taken": ({ members }) => `Chances are counted over ${members} drawn cases.`,
  "zone-of-start": ({ offset }) =>
    `No time zone is given: local times are shown at the start's offset, ${offset}, without daylight saving.`,
  "no-cover-fitted": () => "No cover or plug is named as fitted at the start: none is.",
  "heated-for-unknown": () =>
    "Since when the heater has been on is not known: it counts as on for too long, and is to be unplugged now.",
  "no-power-here": () => "There is no power here: every heater of the document is taken as off.",
  "hangar-taken": ({ air_c }, say) =>
    `No hangar is described: where one is tried as a way out, its air is taken at ${say.temp(air_c)}.`,
  "ground-taken": ({ roughness_m }) =>
    `Ground upwind is taken as snow-covered fields (roughness length ${roughness_m} m), where much of the wind reaches the cowl.`,
  "heaters-together": ({ heaters }) => `All heaters of the kit are used together: ${heaters.join(", ")}.`,
  "chance-taken": ({ chance }, say) => `Wanted chance of being ready: ${say.percent(chance)}.`,
  "unplugged-before": ({ minutes }) => `The heater is unplugged ${minutes} min before the start.`,
  "covers-off-before": ({ minutes }) => `Covers come off ${minutes} min before the start.`,
  "shut-down-taken": ({ hours }) =>
    `The engine is taken as shut down from cruise ${hours} h before the start, with temperatures typical of its class, and as cooled since where it stands now.`,
  "weather-held-back": () => "The weather begins after the shut-down: its first values are held back to it.",
  "parts-as-heated": ({ hours }, say) =>
    `Parts without a reading are taken as heated for ${say.number(hours, 1)} h from cold, under the weather that is known.`,
  "parts-at-air": ({ air_c, of, where }, say) => {
    const what =
      of === "all" ? "No temperature of the engine is given: all parts are" : "Parts without a reading are";
    const air =
      where === "hangar"
        ? "the hangar's air"
        : "the coldest air of the 6 h before the start that the weather knows";
    return `${what} taken at ${say.temp(air_c, 1)}, ${air}.`;
  },
  "start-known-to": ({ sd_k }, say) =>
    `Temperatures at the start are taken as known to ±${say.difference(sd_k, 0)} (standard deviation).`,
  "idled-before-start": ({ minutes, air_c, oil_c, heads_c, caution }, say) =>
    `The engine is taken as idled for ${minutes} min up to the start, from the temperatures before it, in air of ${say.temp(air_c)}: oil then at ${say.temp(oil_c)}, front heads at ${say.temp(heads_c)}, by common practice without a published source. ${say.finding(caution)}`,
  "forecast-used": ({ origin, hours }, say) => `Weather: ${origin}, received ${say.number(hours, 1)} h ago.`,
  "anchor-not-used": ({ known_at, begins_at }) =>
    `How the engine stood at ${known_at} is not used: the run begins at ${begins_at}, from when on the weather is known or remembered.`,
  "logged-before-not-used": ({ begins_at }) =>
    `What was logged before ${begins_at} is not used: nothing is known of then.`,
  "probe-left-out": ({ probe, reason }, say) => `Probe ${probe} is left out: ${say.finding(reason)}.`,
  "hand-reading-left-out": ({ part, reason }, say) =>
    `The reading by hand of ${part} is left out: ${say.finding(reason)}.`,
  "element-unnamed": ({ elements }) =>
    `the kit has ${elements} heater elements, and it is not said on which one it sits`,
  "no-such-part": ({ part }) => `this aircraft has no ${part}`,
  "no-battery": () => "No battery is in the aircraft. Fit it warm and charged before the start.",
  "oil-unlisted": ({ grade, air_c, listed }, say) =>
    `Oil: SAE ${grade} is not listed for ${say.temp(air_c)}: ${listed.map((g) => `SAE ${g}`).join(", ")} are. Look in your engine maker's table.`,
  "attended-taken": ({ amount, currency }) =>
    `An hour of somebody standing by or plugging in counts ${`${amount} ${currency}`.trimEnd()}: project judgement, set prices.attended_per_h.`,
  "hands-there": ({ from, until }) =>
    `Somebody can be there to plug in from ${from} to ${until}; timers are set at ${until} the evening before.`,
  "cold-cases-taken": (_, say) =>
    `In the cold cases the aircraft is cold-soaked under its covers, the sky clear, the air ${say.difference(2, 0)} above its dew point, all night alike.`,
  "flight-taken": ({ hours }) => `A flight is taken to last ${hours} h, warm through at the end.`,
  "first-day-left-out": ({ departures }) =>
    `Departures in the winter's first day are left out (${departures}): the aircraft first takes the weather's temperature.`,
  "winters-made": ({ years }) => `${years} winters are made from the normals.`,
  "winter-weather-made": ({ origin }) => `The weather is made, not measured: ${origin}.`,
  "no-fuel-named": () => "No fuel is named: the piece of wing looked at has no tank behind it.",
  "fuel-as": ({ as }) =>
    `Fuel is taken as warm as ${as === "air-at-start" ? "the air at the start" : "the skin when it comes in"}.`,
  "place-taken": ({ roughness_m, wing_height_m, isOpenSky, isSeaLevel }) => {
    const taken = [
      ...(roughness_m === undefined ? [] : [`snow-covered fields (roughness length ${roughness_m} m)`]),
      ...(wing_height_m === undefined ? [] : [`the wing ${wing_height_m} m up`]),
      ...(isOpenSky ? ["open sky all around"] : []),
      ...(isSeaLevel ? ["sea level"] : []),
    ];
    return `Of the place is assumed: ${taken.join(", ")}.`;
  },
  "air-changes-taken": ({ per_h }) =>
    `The hangar's air is taken to change ${per_h} time an hour (0.6 to 2 measured).`,
  "heater-with-flue": () =>
    "The heater is taken as electric or with a flue: it brings no water into the air.",
  "dew-point-taken": ({ where, below_k }, say) =>
    `The dew point ${where === "outside" ? "outside" : "at roll-out"} is taken ${say.difference(below_k, 0)} below the air.`,
  "roll-out-taken": ({ minutes, wind_mps, isClear }, say) => {
    const taken = [
      ...(minutes === undefined ? [] : [`${minutes} min from roll-out to take-off`]),
      ...(wind_mps === undefined ? [] : [`wind ${say.wind(wind_mps)}`]),
      ...(isClear ? ["clear sky"] : []),
    ];
    return `At roll-out is assumed: ${taken.join(", ")}.`;
  },
  "climb-taken": ({ climb_fpm, airspeed_mps }, say) => {
    const taken = [
      ...(climb_fpm === undefined ? [] : [`climbing ${climb_fpm} ft/min`]),
      ...(airspeed_mps === undefined ? [] : [`flying ${say.wind(airspeed_mps)}`]),
    ];
    return `Of the climb is assumed: ${taken.join(", ")}.`;
  },
  "hangar-at-sea-level": () => "The hangar is taken to stand at sea level.",
  "no-snow-named": () => "No snow is named: it comes in bare, with water in its gaps.",
  "broom-leaves": ({ share }, say) => `A broom is taken to leave ${say.percent(share)} of the snow.`,
  "comes-in-cold": ({ skin_c }, say) => `The aircraft comes in cold-soaked, at ${say.temp(skin_c)}.`,
  "skin-drips": () => "The melted skin is left to drip, not wiped.",
  "light-wind-taken": ({ wind_mps, engine_wind_mps }, say) =>
    `Where no wind is given it is taken as ${say.wind(wind_mps)}: light wind brings frost sooner than the ${say.wind(engine_wind_mps)} that cool an engine.`,
  "lull-frosts": () => "Where wind is assumed, a lull brings more frost than is told here.",
};
