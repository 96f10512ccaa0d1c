import type { Said, Words } from "../../words/index.svelte.js";
import type { FrostView, WeatherView } from "../../worker/protocol.js";
import { frostAt, HOUR } from "./night-model.js";

/** [h] the sentence looks ahead: a night and a morning. */
const AHEAD = 24;

/** The night's weather in a sentence or two. */
export function weatherSentence(
  weather: WeatherView | undefined,
  frost: FrostView | undefined,
  w: Words,
  say: Said,
): string {
  const hours = (weather?.time ?? []).flatMap((time, i) =>
    weather !== undefined && time > say.now - HOUR && time <= say.now + AHEAD * HOUR
      ? [{ time, air: weather.airC[i], wind: weather.windMps[i], cloud: weather.cloud[i] }]
      : [],
  );
  if (weather === undefined || hours.length === 0) return w.weather.none;
  const coldest = hours.reduce((a, b) => (b.air < a.air ? b : a));
  const windiest = Math.max(...hours.map(({ wind }) => wind));
  const cloud = hours.reduce((sum, h) => sum + h.cloud, 0) / hours.length;
  const { at } = say;
  const sky = w.weather.sky[cloud < 0.3 ? "clear" : cloud < 0.75 ? "half" : "overcast"];
  const parts = [
    w.weather.sentence(
      say.temp(hours[0].air),
      say.temp(coldest.air),
      at(coldest.time),
      say.wind(windiest),
      sky,
    ),
  ];
  const first = hours.find(({ time }) => frostAt(frost, time) === "likely");
  const possible = hours.find(({ time }) => frostAt(frost, time) === "possible");
  if (first !== undefined) parts.push(w.weather.frostFrom(at(first.time)));
  else if (possible !== undefined) parts.push(w.weather.frostPossible(at(possible.time)));
  else if (frost !== undefined) parts.push(w.weather.noFrost);
  return parts.join(" ");
}
