import { type Explanation, explainWhy, INSTALLATIONS, type WhyTopic, whyTopics } from "../index.js";
import { BadInput } from "./exit.js";

/** The answer to one question, or the questions there are. Throws BadInput that names every fault. */
export function whyAnswer(
  topic: string | undefined,
  temp: string,
  aircraft: string,
): Explanation | { readonly topics: readonly WhyTopic[] } {
  const installation = INSTALLATIONS.find((i) => i.id === aircraft);
  if (installation === undefined) {
    const known = INSTALLATIONS.map((i) => i.id).join(", ");
    throw new BadInput([{ path: "--aircraft", expected: `one of ${known}`, received: aircraft }]);
  }
  const topics = whyTopics(installation);
  if (topic === undefined) return { topics };
  const celsius = Number(temp.trim() === "" ? Number.NaN : temp);
  const faults = [
    ...(topics.includes(topic as WhyTopic)
      ? []
      : [{ path: "topic", expected: `one of ${topics.join(", ")}`, received: topic }]),
    ...(celsius >= -40 && celsius <= 40
      ? []
      : [{ path: "temp_c", expected: "a number from -40 to 40", received: temp }]),
  ];
  if (faults.length > 0) throw new BadInput(faults);
  return explainWhy(topic as WhyTopic, celsius, installation);
}
