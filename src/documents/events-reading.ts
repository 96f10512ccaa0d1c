import type { Configuration, Kit } from "../aircraft/index.js";
import { applyChange, type Change, type TimedChange } from "../simulation/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { type Clock, epochOfMoment } from "./clock.js";
import { issueAt, type Path } from "./issue.js";
import { type Findings, fault } from "./reading.js";
import type { ScenarioDocument, ScenarioSections } from "./scenario-schema.js";

type EventEntry = NonNullable<ScenarioDocument["events"]>[number];

/** What is fitted and switched on at the start. */
export function startConfiguration(
  { place, fitted, plugged_in }: ScenarioSections,
  kit: Kit | undefined,
  findings: Findings,
): Configuration | undefined {
  const covers = fitted?.covers ?? [];
  const heaters = plugged_in ?? [];
  if (kit !== undefined) {
    requireIds(covers, kit.covers, ["fitted", "covers"], "kit.covers", findings);
    requireIds(heaters, kit.heaters, ["plugged_in"], "kit.heaters", findings);
    if (fitted === undefined && kit.covers.length > 0) {
      findings.assumptions.push("No cover or plug is named as fitted at the start: none is.");
    }
  }
  if (place === undefined) return undefined;
  return { place, heatersOn: new Set(heaters), coversOn: new Set(covers) };
}

/** The timed events, in order of time. */
export function eventsOf(
  { events = [], hours }: ScenarioSections,
  kit: Kit | undefined,
  clock: Clock | undefined,
  findings: Findings,
): TimedChange[] {
  const changes = events.flatMap((entry, i): TimedChange[] => {
    const path = ["events", i];
    if (kit !== undefined && "heaters" in entry) {
      requireIds(entry.heaters, kit.heaters, [...path, "heaters"], "kit.heaters", findings);
    }
    if (kit !== undefined && "covers" in entry) {
      requireIds(entry.covers, kit.covers, [...path, "covers"], "kit.covers", findings);
    }
    if (clock === undefined) return [];
    const epoch = epochOfMoment(entry, path, clock, findings);
    if (epoch === undefined) return [];
    if (epoch < clock.start || epoch > clock.end) {
      fault(findings, path, `a time within the scenario's ${hours} h`, entry.time ?? `at_h ${entry.at_h}`);
    }
    return [{ at: epoch - clock.start, change: changeOf(entry) }];
  });
  return changes.sort((a, b) => a.at - b.at);
}

function changeOf(entry: EventEntry): Change {
  switch (entry.do) {
    case "plug_in":
      return { do: "plug-in", heaters: entry.heaters };
    case "unplug":
      return { do: "unplug", heaters: entry.heaters };
    case "cover_on":
      return { do: "cover-on", covers: entry.covers };
    case "cover_off":
      return { do: "cover-off", covers: entry.covers };
    case "move":
      return { do: "move", to: entry.to };
  }
}

/** [s] that the heaters plugged in at the start have been on; undefined where nobody knows, which is said. */
export function heatedForOf(
  { plugged_in = [], plugged_in_since }: ScenarioSections,
  clock: Clock,
  findings: Findings,
): number | undefined {
  if (plugged_in_since === undefined) {
    if (plugged_in.length > 0) {
      findings.assumptions.push(
        "Since when the heater has been on is not known: it counts as on for too long, and is to be unplugged now.",
      );
    }
    return undefined;
  }
  if (plugged_in.length === 0) {
    fault(findings, ["plugged_in_since"], "heaters in plugged_in", plugged_in_since);
  }
  const epoch = epochOfMoment({ time: plugged_in_since }, ["plugged_in_since"], clock, findings);
  if (epoch === undefined) return undefined;
  if (epoch > clock.start) fault(findings, ["plugged_in_since"], "a time before the start", plugged_in_since);
  return Math.max(0, clock.start - epoch);
}

/** Refuses a scenario in which a heater that belongs outdoors runs in the hangar. */
export function refuseIndoors(
  kit: Kit,
  start: Configuration,
  events: readonly TimedChange[],
  findings: Findings,
): void {
  const refuse = (configuration: Configuration, path: Path) => {
    if (configuration.place !== "hangar") return;
    for (const heater of kit.heaters) {
      if (heater.runs !== "outdoors" || !configuration.heatersOn.has(heater.id)) continue;
      const expected = `${heater.id} off in the hangar: a burner makes carbon monoxide. Switch it off and open the doors`;
      fault(findings, path, expected, "on");
    }
  };
  refuse(start, ["plugged_in"]);
  let configuration = start;
  for (const { change } of events) {
    const after = applyChange(configuration, change);
    if (after.place !== configuration.place || after.heatersOn.size > configuration.heatersOn.size) {
      refuse(after, ["events"]);
    }
    configuration = after;
  }
}

/** Warns of every heater that the document leaves on longer than its description allows in one go. */
export function warnLongestOn(
  kit: Kit,
  start: Configuration,
  events: readonly TimedChange[],
  duration: number,
  findings: Findings,
): void {
  for (const heater of kit.heaters) {
    let configuration = start;
    let since = start.heatersOn.has(heater.id) ? 0 : undefined;
    const ended = (at: number) => {
      const on = since === undefined ? 0 : (at - since) / SECONDS_OF_HOUR;
      if (on <= heater.longest_on_h) return;
      const expected = `${heater.id} on for at most ${heater.longest_on_h} h in one go`;
      findings.warnings.push(issueAt(["events"], expected, `${on.toFixed(1)} h`));
    };
    for (const { at, change } of events) {
      configuration = applyChange(configuration, change);
      const on = configuration.heatersOn.has(heater.id);
      if (on && since === undefined) since = at;
      if (!on && since !== undefined) {
        ended(at);
        since = undefined;
      }
    }
    ended(duration);
  }
}

export function requireIds(
  ids: readonly string[],
  carried: readonly { readonly id: string }[],
  path: Path,
  where: string,
  findings: Findings,
): void {
  const known = carried.map((e) => e.id);
  ids.forEach((id, i) => {
    if (known.includes(id)) return;
    fault(
      findings,
      [...path, i],
      known.length === 0 ? `nothing: ${where} is empty` : `one of ${where}: ${known.join(", ")}`,
      id,
    );
  });
}
