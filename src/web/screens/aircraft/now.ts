import type { NowDocument } from "../../../documents/index.js";
import type { AircraftView, WeatherView } from "../../worker/protocol.js";
import type { PartTemp } from "./course.js";

type Criterion = NowDocument["criteria"][number];

/** Every part now; the heater is its hottest element. */
export function tempsNow(
  { parts }: NowDocument,
  weather: WeatherView | undefined,
  now: number,
): Map<string, PartTemp> {
  const temps = new Map<string, PartTemp>();
  for (const [part, { p05_c: low, p50_c: mid, p95_c: high }] of Object.entries(parts)) {
    const isElement = part.startsWith("heater:");
    const name = isElement ? "heater_surface" : part;
    const before = temps.get(name);
    if (before === undefined || before.mid < mid) temps.set(name, { part: name, low, mid, high });
  }
  const air = airAt(weather, now);
  if (air !== undefined) temps.set("outside_air", { part: "outside_air", low: air, mid: air, high: air });
  return temps;
}

/** [°C] between the hours of a forecast linearly; undefined outside of it. */
function airAt(weather: WeatherView | undefined, now: number): number | undefined {
  if (weather === undefined) return undefined;
  const { time, airC } = weather;
  const next = time.findIndex((t) => t >= now);
  if (next < 0) return undefined;
  if (next === 0) return time[0] === now ? airC[0] : undefined;
  const share = (now - time[next - 1]) / (time[next] - time[next - 1]);
  return airC[next - 1] + share * (airC[next] - airC[next - 1]);
}

/** What it hangs on whether it may be started. */
export function deciding({ criteria }: NowDocument): readonly Criterion[] {
  return criteria.filter(
    ({ judged, advisory, aim }) => judged === "at-start" && !advisory && aim === "least",
  );
}

/** What an oil gauge does not show: the oil holds, these do not. Empty when the gauge tells no less than there is. */
export function besidesOil(document: NowDocument, wanted: number): readonly Criterion[] {
  const all = deciding(document);
  const isMet = ({ chance }: Criterion) => chance >= wanted;
  return all.some((each) => each.id === "oil" && isMet(each)) ? all.filter((each) => !isMet(each)) : [];
}

/** Where a part's temperature comes from: the time of the last reading by hand, a probe, or nothing but the model. */
export type Known = { readonly by: "hand"; readonly at: number } | { readonly by: "probe" } | undefined;

const BY_HAND = "by-hand:";
/** Names of parts as readings have them, by those of the estimate. */
const READ_AS: Readonly<Record<string, readonly string[]>> = {
  heads_front: ["heads", "heads_front"],
  cylinders: ["cylinders", "barrels"],
};

/** Parts that were measured since the estimate began, and whose readings it could use. */
export function measured(
  { probes, deviations }: NowDocument,
  readings: AircraftView["readings"],
): Map<string, Known> {
  const isOut = (name: string) =>
    deviations.some(({ finding, probe, believed }) => finding === "probe-out" && believed && probe === name);
  const known = new Map<string, Known>();
  for (const { name, part, readings: count, left_aside } of probes) {
    if (count <= left_aside || isOut(name)) continue;
    const shown = Object.entries(READ_AS).find(([, names]) => names.includes(part))?.[0] ?? part;
    if (!name.startsWith(BY_HAND)) known.set(shown, { by: "probe" });
    else if (!known.has(shown)) {
      const times = readings.filter((reading) => reading.part === part).map(({ at }) => at);
      if (times.length > 0) known.set(shown, { by: "hand", at: Math.max(...times) });
    }
  }
  return known;
}
