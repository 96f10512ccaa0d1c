// Two days of every catalogue installation in made weather with much switching: what the independent check and the
// benchmark against CVODE integrate. Plain JavaScript without imports, so that the test (on the sources) and the
// benchmark (on the built package) can share it; types in cases.d.mts.

const HOUR = 3600;
const FREEZING = 273.15;
export const DURATION = 48 * HOUR;

/** Installation, heaters and covers: every kind of heater at least once. */
export const CASES = [
  { installation: "two-light-60", heaters: ["immersion-250"], covers: ["insulated-cover"] },
  {
    installation: "four-light-100",
    heaters: ["sump-pad-100", "battery-blanket-60"],
    covers: ["insulated-cover", "propeller-cover"],
  },
  { installation: "four-carburettor-160", heaters: ["sump-pad-220"], covers: ["improvised-quilt"] },
  { installation: "four-injected-200", heaters: ["in-cowl-400"], covers: ["insulated-cover"] },
  {
    installation: "six-carburettor-230",
    heaters: ["sump-pad-300", "ducted-electric-1500"],
    covers: ["inlet-plugs"],
  },
  {
    installation: "six-injected-300",
    heaters: ["whole-engine-6", "battery-blanket-60"],
    covers: ["insulated-cover", "propeller-cover"],
  },
  { installation: "liquid-light-100", heaters: ["ducted-electric-1500"], covers: ["improvised-quilt"] },
  {
    installation: "radial-nine-360",
    heaters: ["whole-engine-9", "ducted-fuel-12000"],
    covers: ["insulated-cover"],
  },
];

/** Hourly weather around -30 °C by fixed formulas: daily swing, wind 0-12 m/s, varying dew point and cloud. */
function madeWeather() {
  const hours = Float64Array.from({ length: 49 }, (_, h) => h);
  const tempAir = hours.map(
    (h) => FREEZING - 30 + 6 * Math.sin((2 * Math.PI * (h - 9)) / 24) + 2 * Math.sin(h / 5),
  );
  return {
    time: hours.map((h) => h * HOUR),
    tempAir,
    windSpeed: hours.map((h) => 6 - 6 * Math.cos((2 * Math.PI * h) / 17)),
    tempDewPoint: tempAir.map((t, h) => t - 3 - 2 * Math.sin(h / 3)),
    cloudCover: hours.map((h) => 0.5 + 0.5 * Math.sin(h / 7)),
    origin: "made by fixed formulas for the check against independent integrators",
    assumptions: [],
  };
}

/** Switching at and between weather knots; for the integrators, not as practice (a duct would not run for hours alone). */
function events({ heaters, covers }) {
  const clock = (h, minutes) => h * HOUR + minutes * 60;
  return [
    { at: clock(6, 20), change: { do: "plug-in", heaters } },
    { at: clock(14, 0), change: { do: "cover-off", covers } },
    { at: clock(16, 40), change: { do: "unplug", heaters } },
    { at: clock(17, 10), change: { do: "cover-on", covers } },
    { at: clock(22, 30), change: { do: "move", to: "hangar" } },
    { at: clock(30, 15), change: { do: "plug-in", heaters } },
    { at: clock(33, 0), change: { do: "move", to: "ramp" } },
    { at: clock(38, 45), change: { do: "unplug", heaters } },
    { at: clock(44, 0), change: { do: "plug-in", heaters } },
  ];
}

/** The scenario of one case; `library` looks up what it names. */
function scenarioOf(one, library) {
  return {
    installation: library.installationById(one.installation),
    kit: {
      heaters: one.heaters.map(library.heaterById),
      covers: one.covers.map(library.coverById),
    },
    start: 0,
    duration: DURATION,
    weather: madeWeather(),
    site: { tempHangar: FREEZING + 6, roughness: 0.01 },
    initial: {
      configuration: { place: "ramp", heatersOn: new Set(), coversOn: new Set(one.covers) },
      temps: new Map([["oil", FREEZING - 20]]),
      tempOthers: FREEZING - 28,
      sd: 0,
    },
    events: events(one),
  };
}

/** A case made ready to run, and as the plain data that other integrators get; `library` is the built package or its sources. */
export function referenceRun(one, library, sampleTimes) {
  const scenario = scenarioOf(one, library);
  const central = library.centralDraws(scenario.weather);
  // The catalogue's own numbers, which is what the description below tells.
  const multipliers = new Map([...central.multipliers.keys()].map((name) => [name, Float64Array.of(1)]));
  const run = library.prepareRun(scenario, { ...central, multipliers });
  const timeline = library.timelineOf(scenario.initial.configuration, scenario.events);
  const { network, valuesIn } = library.installationNetwork(scenario.installation, scenario.kit);
  const { nu40, nu100 } = library.GENERIC_OILS.find(({ id }) => id === scenario.installation.oil.oil_id);
  const switchings = timeline.slice(1).map((entry) => entry.from);
  const description = describeProblem({
    name: one.installation,
    network,
    oil: { nu40, nu100 },
    valuesIn,
    writeInputs: run.forcing.write,
    configurationAt: (t) => library.configurationAt(timeline, t),
    bounds: [...new Set([0, ...run.forcing.knots, ...switchings, DURATION])].sort((a, b) => a - b),
    initial: run.initial,
    sampleTimes,
  });
  const advance = (tolerance) =>
    run.advance({ state: run.initial, from: 0, to: DURATION, timeline, sampleTimes, tolerance });
  return { description, advance };
}

/**
 * An initial-value problem as plain data for integrators written in other languages: structure, the numbers of each
 * configuration, and the inputs at both ends of each stretch between two bounds.
 */
export function describeProblem({
  name,
  network,
  oil,
  valuesIn,
  writeInputs,
  configurationAt,
  bounds,
  initial,
  sampleTimes,
}) {
  const configurations = [];
  const stretches = bounds.slice(1).map((to, i) => {
    const from = bounds[i];
    const configuration = configurationAt(from);
    if (!configurations.includes(configuration)) configurations.push(configuration);
    return {
      from,
      to,
      configuration: configurations.indexOf(configuration),
      inputsFrom: inputsAt(configuration, from),
      inputsTo: inputsAt(configuration, to),
    };
  });
  return {
    name,
    parts: network.parts.map(({ name, heatCapacity, heatCapacitySlope = 0, latentHeat = 0 }) => ({
      name,
      heatCapacity,
      heatCapacitySlope,
      latentHeat,
    })),
    inputs: network.inputs,
    links: network.links.map(({ from, to, law, factorInput = null, windInput = null, filmFactor }) => ({
      from,
      to,
      law,
      factorInput,
      windInput,
      oilFilm: filmFactor !== undefined,
    })),
    sources: network.sources.map(({ part, limiter = null }) => ({ part, limiter })),
    oil,
    configurations: configurations.map((configuration) => {
      const { conductance, power } = valuesIn(configuration);
      return { conductance: [...conductance], power: [...power] };
    }),
    stretches,
    initial: [...initial],
    sampleTimes: [...sampleTimes],
  };

  function inputsAt(configuration, t) {
    const out = new Float64Array(network.inputs.length);
    writeInputs(configuration, t, out);
    return [...out];
  }
}

/** Greatest difference [K] between two lists of sampled temperatures; NaN when they cannot be compared. */
export function greatestDifference(one, other) {
  if (one.length !== other.length) return Number.NaN;
  let greatest = 0;
  for (let k = 0; k < one.length; k++) {
    const difference = Math.abs(one[k] - other[k]);
    if (!(difference <= greatest)) greatest = difference;
  }
  return greatest;
}
