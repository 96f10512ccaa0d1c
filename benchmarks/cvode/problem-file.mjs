// A described initial-value problem (test/reference/cases.mjs) as the list of numbers that network.c reads.

const LAWS = ["conduction", "free-convection", "ventilation", "radiation"];
/** Surfaces and air, which the simulation also takes less exactly than the engine. */
const LIGHT_PARTS = /^(heater:.*|cowl_air|cowl_skin)$/;

export function problemFile({
  parts,
  inputs,
  links,
  sources,
  oil,
  configurations,
  stretches,
  initial,
  sampleTimes,
}) {
  const rows = [...parts.map((part) => part.name), ...inputs];
  const row = (name) => (name === null ? -1 : rows.indexOf(name));
  const counts = [parts, inputs, links, sources, configurations, stretches, sampleTimes];
  return [
    counts.map((list) => list.length),
    [oil.nu40 * 1e6, oil.nu100 * 1e6],
    parts.map((part) => part.heatCapacity),
    parts.map((part) => part.heatCapacitySlope),
    parts.map((part) => part.latentHeat),
    parts.map(({ name }) => (LIGHT_PARTS.test(name) ? 1 : 0)),
    ...links.map((link) => [
      LAWS.indexOf(link.law),
      row(link.from),
      row(link.to),
      row(link.factorInput),
      row(link.windInput),
      link.oilFilm ? 1 : 0,
    ]),
    ...sources.map(({ part, limiter }) =>
      limiter === null
        ? [row(part), -1, 0, 1]
        : [row(part), row(limiter.senses), limiter.setPoint, limiter.width],
    ),
    ...configurations.map(({ conductance }) => conductance),
    ...configurations.map(({ power }) => power),
    ...stretches.map(({ from, to, configuration, inputsFrom, inputsTo }) => [
      from,
      to,
      configuration,
      ...inputsFrom,
      ...inputsTo,
    ]),
    initial,
    sampleTimes,
  ]
    .map((numbers) => `${numbers.join(" ")}\n`)
    .join("");
}
