import type { Configuration, Kit } from "../aircraft/index.js";
import { finding } from "../findings/index.js";
import type { Change, TimedChange } from "../simulation/index.js";
import { type Clock, epochOfMoment } from "./clock.js";
import type { Path } from "./issue.js";
import { fault, type Notes } from "./reading.js";
import type { ScenarioDocument, ScenarioSections } from "./scenario-schema.js";

type EventEntry = NonNullable<ScenarioDocument["events"]>[number];

/** What is fitted and switched on at the start. */
export function startConfiguration(
  { place, fitted, plugged_in }: ScenarioSections,
  kit: Kit | undefined,
  notes: Notes,
): Configuration | undefined {
  const covers = fitted?.covers ?? [];
  const heaters = plugged_in ?? [];
  if (kit !== undefined) {
    requireIds(covers, kit.covers, ["fitted", "covers"], "kit.covers", notes);
    requireIds(heaters, kit.heaters, ["plugged_in"], "kit.heaters", notes);
    if (fitted === undefined && kit.covers.length > 0) {
      notes.assumptions.push(finding("no-cover-fitted", {}));
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
  notes: Notes,
): TimedChange[] {
  const changes = events.flatMap((entry, i): TimedChange[] => {
    const path = ["events", i];
    if (kit !== undefined && "heaters" in entry) {
      requireIds(entry.heaters, kit.heaters, [...path, "heaters"], "kit.heaters", notes);
    }
    if (kit !== undefined && "covers" in entry) {
      requireIds(entry.covers, kit.covers, [...path, "covers"], "kit.covers", notes);
    }
    if (clock === undefined) return [];
    const epoch = epochOfMoment(entry, path, clock, notes);
    if (epoch === undefined) return [];
    if (epoch < clock.start || epoch > clock.end) {
      fault(notes, path, `a time within the scenario's ${hours} h`, entry.time ?? `at_h ${entry.at_h}`);
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
  notes: Notes,
): number | undefined {
  if (plugged_in_since === undefined) {
    if (plugged_in.length > 0) {
      notes.assumptions.push(finding("heated-for-unknown", {}));
    }
    return undefined;
  }
  if (plugged_in.length === 0) {
    fault(notes, ["plugged_in_since"], "heaters in plugged_in", plugged_in_since);
  }
  const epoch = epochOfMoment({ time: plugged_in_since }, ["plugged_in_since"], clock, notes);
  if (epoch === undefined) return undefined;
  if (epoch > clock.start) fault(notes, ["plugged_in_since"], "a time before the start", plugged_in_since);
  return Math.max(0, clock.start - epoch);
}

export function requireIds(
  ids: readonly string[],
  carried: readonly { readonly id: string }[],
  path: Path,
  where: string,
  notes: Notes,
): void {
  const known = carried.map((e) => e.id);
  ids.forEach((id, i) => {
    if (known.includes(id)) return;
    fault(
      notes,
      [...path, i],
      known.length === 0 ? `nothing: ${where} is empty` : `one of ${where}: ${known.join(", ")}`,
      id,
    );
  });
}
