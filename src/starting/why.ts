import { type Installation, oilById } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import { kelvinFromCelsius, requireInside } from "../units/index.js";
import { WHY_TOPICS, type WhyTopic } from "./why-topics.js";

/** One question of the teaching page, answered for one temperature. */
export interface Explanation {
  readonly title: Finding;
  readonly value: number;
  readonly unit: string;
  readonly sentence: Finding;
  readonly equation: string;
  readonly source: string;
  /** The answer over -40 to 40 °C. */
  readonly plot: { readonly x_c: readonly number[]; readonly y: readonly number[] };
}

const PLOT_FROM = -40;
const PLOT_TO = 40;

/** All topics there are for an installation, in the order of a start. */
export function whyTopics(installation: Installation): WhyTopic[] {
  return (Object.keys(WHY_TOPICS) as WhyTopic[]).filter(
    (topic) => answerer(topic, installation) !== undefined,
  );
}

/**
 * Why a part or a property matters at `tempC` [°C], with the number, its equation, its source and a curve.
 * Throws a RangeError for a topic that is not known or that the engine does not have.
 */
export function explainWhy(topic: WhyTopic, tempC: number, installation: Installation): Explanation {
  if (!Object.hasOwn(WHY_TOPICS, topic)) {
    throw new RangeError(`unknown topic: ${topic} (expected one of ${whyTopics(installation).join(", ")})`);
  }
  requireInside("tempC", tempC, PLOT_FROM, PLOT_TO, "°C");
  const answer = answerer(topic, installation);
  if (answer === undefined) {
    throw new RangeError(`unknown topic: ${topic} (${installation.id} has no such part or fit)`);
  }
  const { unit, equation, source, sentence } = WHY_TOPICS[topic];
  const x_c = Array.from({ length: PLOT_TO - PLOT_FROM + 1 }, (_, i) => PLOT_FROM + i);
  const value = answer(kelvinFromCelsius(tempC));
  return {
    title: finding("why-title", { topic }),
    value,
    unit,
    sentence: sentence(value, tempC, installation),
    equation,
    source: topic === "oil-viscosity" ? `${source}; ${oilById(installation.oil.oil_id).origin}` : source,
    plot: { x_c, y: x_c.map((c) => answer(kelvinFromCelsius(c))) },
  };
}

/** The topic's answer against temperature, or undefined when this engine has none. */
function answerer(topic: WhyTopic, installation: Installation): ((temp: number) => number) | undefined {
  return WHY_TOPICS[topic].answer(installation);
}
