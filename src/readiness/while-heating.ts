import { elementPart, originOf } from "../aircraft/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import { type CriterionMaker, highest, named } from "./criterion.js";

/** [°C] hottest oil film at a heated wall. */
const FILM_LIMIT_C = 180;

export const oilMaximum: CriterionMaker = ({ installation: { limits, origins } }) => [
  highest(
    named("oil-maximum", {}),
    ["oil"],
    kelvinFromCelsius(limits.oil_max_c),
    originOf(origins, "limits.oil_max_c"),
  ),
];

export const oilFilm: CriterionMaker = ({ kit }) => {
  const inOil = kit.heaters.flatMap((h) =>
    h.elements.filter((e) => e.in_oil).map((e) => elementPart(h.id, e.name)),
  );
  return [
    highest(
      named("oil-film", {}),
      ["sump", ...inOil],
      kelvinFromCelsius(FILM_LIMIT_C),
      "coking above 200-230 °C: tribology texts, from memory; 20 K kept, project judgement",
    ),
  ];
};

/** The surface of each element of each heater. */
export const surfaces: CriterionMaker = ({ kit }) =>
  kit.heaters.flatMap((heater) =>
    heater.elements.map((element, i) => ({
      ...highest(
        named("surface", { heater: heater.name, element: element.name }),
        [elementPart(heater.id, element.name)],
        kelvinFromCelsius(element.surface_max_c),
        originOf(heater.origins, `elements.${i}.surface_max_c`),
      ),
      id: `surface:${heater.id}:${element.name}`,
    })),
  );
