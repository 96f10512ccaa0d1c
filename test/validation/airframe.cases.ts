import { airFilm } from "../../src/airframe/air-film.js";
import { freezingLevel, temperatureProfile } from "../../src/airframe/climb.js";
import { vapourPerHeatTransfer } from "../../src/airframe/evaporation.js";
import { evaporationFluxStefanTube } from "../../src/airframe/gap.js";
import { COMBUSTION_VAPOUR, nightFrost, snowMass, thawAndDry } from "../../src/airframe/index.js";
import { EMISSIVITY_WET } from "../../src/airframe/panel-faces.js";
import { meltTerms } from "../../src/airframe/snow-cover.js";
import { LATENT_HEAT_VAPORISATION } from "../../src/airframe/wet-layer.js";
import {
  evaporationFluxAshraePool,
  latentHeatVaporisation,
  STEFAN_BOLTZMANN,
} from "../../src/properties/index.js";
import {
  celsiusFromKelvin,
  JOULE_OF_KILOWATT_HOUR,
  kelvinFromCelsius,
  METRES_OF_FOOT,
  SECONDS_OF_HOUR,
} from "../../src/units/index.js";
import { frostRequest, night, resultOf, thawRequest } from "../airframe/examples.js";
import { dryingFilm, hoursToMelt, LONE_SKIN } from "./airframe-runs.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const KOJIMA = "Kojima, Seppyo 18(1) 1956, evaluated by hand for a 1 m surface";
const POOL =
  "ASHRAE Handbook, HVAC Applications, pool equation on an adiabatic wet-bulb surface, evaluated by hand";
const ICAO = "ICAO Doc 7488 / ISO 2533:1975, computed apart";

/** [°C] air, then kg/(m2 h) calm, at 1 m/s laminar, at 3 m/s turbulent. */
const MELT = [
  [10, 0.12, 0.4, 1.3],
  [15, 0.2, 0.6, 1.95],
  [20, 0.28, 0.8, 2.6],
] as const;

/** [°C] air, relative humidity, hours to dry 0.2 mm at 0.5 m/s and 2 m/s. */
const FILM = [
  [10, 0.5, 3.6, 1.9],
  [15, 0.5, 3.0, 1.6],
  [20, 0.4, 2.1, 1.1],
  [20, 0.6, 3.3, 1.7],
] as const;

export const AIRFRAME_VALIDATION: ValidationGroup = {
  title: "airframe",
  part: "physics",
  cases: [
    ...MELT.flatMap(([t, calm, laminar, turbulent]) => [
      melting(t, 0, calm),
      melting(t, 1, laminar),
      melting(t, 3, turbulent),
    ]),
    hours("calm convection alone, by Kojima's coefficient", 25, 1, "given as about 25 h", () =>
      byTerms(1.24, 0),
    ),
    hours("calm convection and 70 W/m2 of radiation", 5, 0.3, "given as about 5 h", () => byTerms(1.24, 70)),
    hours("3 m/s and 70 W/m2 of radiation", 2, 0.3, "given as about 2 h", () => byTerms(12, 70)),
    hours(
      "calm and radiation, simulated",
      5,
      0.3,
      "given as about 5 h; own convection is 0.9 times Kojima's",
      () => hoursToMelt(5, 15, 0),
    ),
    hours("3 m/s and radiation, simulated", 2, 0.2, "given as about 2 h", () => hoursToMelt(5, 15, 3)),
    {
      name: "melt of spring snow in three days of sun and still air of 7.5 to 9.3 °C",
      source:
        "Morin et al., Earth Syst. Sci. Data 4 (2012) 13: Col de Porte, runoff of 20 to 22 April 2006, with the day's mean radiation, albedo and air",
      mark: "published",
      unit: "kg/m2",
      expected: 74.6,
      tolerance: 6,
      toleranceReason:
        "vapour is taken to neither condense nor evaporate; 10 W/m2 of radiation would be 8 kg/m2",
      got: meltAtColDePorte,
    },
    ratio("laminar", 1.8, 0.1),
    ratio("turbulent", 1.5, 0.3),
    ...FILM.flatMap(([t, humidity, slow, fast]) => [
      film(t, humidity, 0.5, slow),
      film(t, humidity, 2, fast),
    ]),
    {
      name: "evaporation from a warm pool in still air by own film, over the ASHRAE pool equation",
      source: "Smith, Löf and Jones, Solar Energy 53 (1994) 3-7, measured",
      mark: "published",
      unit: "1",
      expected: 0.72,
      tolerance: 0.1,
      toleranceReason: "pool of 10 m by 20 m and air that weighs as 8 K colder are taken; 3 K more are 0.08",
      got: stillPoolShare,
    },
    {
      name: "temperature of a wet skin without radiation, air 7 °C, 61 %",
      source: "psychrolib test suite: wet bulb of 7 °C, 61 %, 100 kPa",
      mark: "published",
      unit: "°C",
      expected: 3.92667,
      tolerance: 0.4,
      toleranceReason: "a plate evaporates by Le^(2/3) = 0.89 and not 1, and at 101.3 kPa here",
      got: () => celsiusFromKelvin(dryingFilm(7, 0.61, 2).temp),
    },
    {
      name: "diffusion of water up a tube of 0.1524 m at 20 °C into dry air",
      source: "Geankoplis, Transport Processes and Unit Operations, 3rd ed., Example 6.2-2",
      mark: "from memory",
      unit: "kmol/(m2 s)",
      expected: 1.595e-7,
      tolerance: 0.001e-7,
      toleranceReason: "last digit printed",
      got: () => evaporationFluxStefanTube(2341, 0, 0.1524, 293, 101_325, 0.25e-4) / 18.015,
    },
    {
      name: "freezing level over an aerodrome at sea level and 15 °C",
      source: ICAO,
      mark: "computed from the published formula",
      unit: "m",
      expected: 2307.69,
      tolerance: 0.01,
      toleranceReason: "last digit given",
      got: () => freezingLevel(standard(), 5000) ?? Number.NaN,
    },
    aloft(8000, -0.8496),
    aloft(10_000, -4.812),
    aloft(18_000, -20.6616),
    {
      name: "dew on a wing in 10 h of a night at 10 °C, 90 %, three tenths of cloud, 1 m/s",
      source:
        "Ritter, Berkelhammer and Beysens, Hydrol. Earth Syst. Sci. 23 (2019) 1179: grassland, per night",
      mark: "published",
      unit: "mm",
      expected: 0.14,
      tolerance: 0.12,
      toleranceReason: "standard deviation of the nine sites; grass is no wing, but as cold",
      got: () => dewRate(10, 1.6, 1, 0.3) * 10,
    },
    {
      name: "dew on a wing in saturated air, clear, 15 °C, 1 m/s, per hour",
      source:
        "Garratt and Segal, Boundary-Layer Meteorology 45 (1988) 209: high rates up to 0.06, extremes 0.09 mm/h",
      mark: "published",
      unit: "mm/h",
      expected: 0.06,
      tolerance: 0.03,
      toleranceReason: "from high rates to extremes",
      got: () => dewRate(15, 0, 1, 0),
    },
    {
      name: "water from burning propane without a flue",
      source: "stoichiometry of C3H8, 46.4 MJ/kg",
      mark: "from memory",
      unit: "kg/kWh",
      expected: 0.127,
      tolerance: 0.001,
      toleranceReason: "heating values quoted differ by 0.5 %",
      got: () => COMBUSTION_VAPOUR * JOULE_OF_KILOWATT_HOUR,
    },
    {
      name: "drying of a wet, brushed-off airframe in a hangar at 15 °C, gaps included",
      source: "8 to 12 h in a heated hangar",
      mark: "common practice, no published source",
      unit: "h",
      expected: 10,
      tolerance: 2,
      toleranceReason: "span of the rule, which the usual gap was chosen by",
      isCalibration: true,
      got: () => inHours(resultOf(thawAndDry(thawRequest({ snow: 0.3 }))).gapsDry.middle),
    },
    {
      name: "thawing of 5 cm of new snow in a hangar at 15 °C",
      source: "four hours thaw it, but it is still wet",
      mark: "common practice, no published source",
      unit: "h",
      expected: 4,
      tolerance: 1.5,
      toleranceReason: "a rule without the depth of snow or the hangar's temperature",
      got: () => inHours(resultOf(thawAndDry(thawRequest({ snow: snowMass(0.05, "new") }))).skinClear.middle),
    },
  ],
};

function melting(t: number, windSpeed: number, expected: number): ValidationCase {
  return {
    name: `snow melt by own convection at ${t} °C, ${windSpeed} m/s`,
    source: KOJIMA,
    mark: "computed from the published formula",
    unit: "kg/(m2 h)",
    expected,
    tolerance: 0.12 * expected,
    toleranceReason: "two digits of his coefficients, and plate laws against measured snow",
    got: () => {
      const tempAir = kelvinFromCelsius(t);
      const conditions = { tempFilm: kelvinFromCelsius(t / 2), pressure: 101_325 };
      const size = { alongWind: LONE_SKIN.chord, stillAir: LONE_SKIN.chord / 2 };
      const convection = airFilm("up", size, conditions)(-t, windSpeed);
      const terms = meltTerms({ tempAir, pressureVapour: 611, convection, evaporation: 0, radiation: 0 });
      return terms.total * SECONDS_OF_HOUR;
    },
  };
}

/** [W/m2] sun, [-] albedo, [W/m2] long-wave from above, [°C] air; wind about 0.1 m/s. */
const COL_DE_PORTE = [
  [184, 0.47, 291, 7.5],
  [222, 0.44, 288, 8.8],
  [186, 0.39, 297, 9.3],
] as const;

function meltAtColDePorte(): number {
  const conditions = { tempFilm: kelvinFromCelsius(4), pressure: 86_500 };
  const film = airFilm("up", { alongWind: 10, stillAir: 2.5 }, conditions);
  return COL_DE_PORTE.reduce((sum, [sun, albedo, longWave, t]) => {
    const radiation =
      sun * (1 - albedo) + EMISSIVITY_WET * (longWave - STEFAN_BOLTZMANN * kelvinFromCelsius(0) ** 4);
    const { total } = meltTerms({
      tempAir: kelvinFromCelsius(t),
      pressureVapour: 611.15,
      convection: film(-t, 0.1),
      evaporation: 0,
      radiation,
    });
    return sum + total * 24 * SECONDS_OF_HOUR;
  }, 0);
}

function stillPoolShare(): number {
  const conditions = { tempFilm: kelvinFromCelsius(20), pressure: 101_325 };
  const film = airFilm("up", { alongWind: 10, stillAir: 200 / 60 }, conditions);
  const analogy = vapourPerHeatTransfer(conditions) * film(8, 0);
  return analogy / evaporationFluxAshraePool(1, 0, 0, latentHeatVaporisation(kelvinFromCelsius(25)));
}

function hours(
  what: string,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  return {
    name: `melting 5 kg/m2 at 15 °C: ${what}`,
    source: KOJIMA,
    mark: "computed from the published formula",
    unit: "h",
    expected,
    tolerance,
    toleranceReason,
    got,
  };
}

function byTerms(convection: number, radiation: number): number {
  const around = {
    tempAir: kelvinFromCelsius(15),
    pressureVapour: 611.15,
    convection,
    evaporation: 0,
    radiation,
  };
  return 5 / meltTerms(around).total / SECONDS_OF_HOUR;
}

function ratio(stream: string, expected: number, tolerance: number): ValidationCase {
  return {
    name: `kelvins of air that melt as much as one millibar of vapour, ${stream}`,
    source: "Kojima, Seppyo 18(1) 1956: ratio of his vapour and heat coefficients",
    mark: "computed from the published formula",
    unit: "K/mb",
    expected,
    tolerance,
    toleranceReason: "two digits of each coefficient, and measured snow against the heat-mass analogy",
    got: () =>
      100 * LATENT_HEAT_VAPORISATION * vapourPerHeatTransfer({ tempFilm: 278.15, pressure: 101_325 }),
  };
}

function film(t: number, humidity: number, windSpeed: number, expected: number): ValidationCase {
  return {
    name: `drying of 0.2 mm, simulated, ${t} °C, ${100 * humidity} %, ${windSpeed} m/s`,
    source: POOL,
    mark: "computed from the published formula",
    unit: "h",
    expected,
    tolerance: 0.05 + 0.1 * expected,
    toleranceReason:
      "half the last digit; the skin settles up to 0.4 K off the wet bulb; the last film thins slowly",
    got: () => dryingFilm(t, humidity, windSpeed).hours,
  };
}

function aloft(feet: number, expected: number): ValidationCase {
  return {
    name: `air temperature ${feet} ft over sea level at 15 °C, standard lapse`,
    source: ICAO,
    mark: "computed from the published formula",
    unit: "°C",
    expected,
    tolerance: 1e-4,
    toleranceReason: "last digit given",
    got: () => celsiusFromKelvin(standard().tempAt(feet * METRES_OF_FOOT)),
  };
}

function standard() {
  const climb = { elevation: 0, cruiseAltitude: 9000, rate: 3, airspeed: 50 };
  return temperatureProfile(climb, kelvinFromCelsius(15));
}

/** [mm/h] of dew on the upper skin over the second to fourth hour of a night, before any runs off. */
function dewRate(t: number, depression: number, windSpeed: number, cloud: number): number {
  const { series } = resultOf(nightFrost(frostRequest(night(t, depression, windSpeed, cloud))));
  const at = (h: number) =>
    series.waterUpper.middle[Math.round((h * SECONDS_OF_HOUR) / (series.time[1] - series.time[0]))];
  return (at(3) - at(1)) / 2;
}

function inHours(time: number | undefined): number {
  return (time ?? Number.NaN) / SECONDS_OF_HOUR;
}
