import type { Configuration, Kit } from "../aircraft/index.js";
import { applyChange, type TimedChange } from "../simulation/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import type { SourceIssue } from "./aircraft-scenario.js";

/** Heaters that belong outdoors and would run in the hangar: no scenario may have one. */
export function burnersIndoors(
  kit: Kit,
  start: Configuration,
  events: readonly TimedChange[],
): SourceIssue[] {
  const found: SourceIssue[] = [];
  const look = (configuration: Configuration, path: string) => {
    if (configuration.place !== "hangar") return;
    for (const heater of kit.heaters) {
      if (heater.runs !== "outdoors" || !configuration.heatersOn.has(heater.id)) continue;
      const expected = `${heater.id} off in the hangar: a burner makes carbon monoxide. Switch it off and open the doors`;
      found.push({ path, expected, received: '"on"' });
    }
  };
  look(start, "plugged_in");
  let configuration = start;
  for (const { change } of events) {
    const after = applyChange(configuration, change);
    if (after.place !== configuration.place || after.heatersOn.size > configuration.heatersOn.size) {
      look(after, "events");
    }
    configuration = after;
  }
  return found;
}

/** Heaters that the scenario's own events leave on longer than their description allows in one go. */
export function heatersOnTooLong(
  kit: Kit,
  start: Configuration,
  events: readonly TimedChange[],
  duration: number,
): SourceIssue[] {
  const found: SourceIssue[] = [];
  for (const heater of kit.heaters) {
    let configuration = start;
    let since = start.heatersOn.has(heater.id) ? 0 : undefined;
    const ended = (at: number) => {
      const on = since === undefined ? 0 : (at - since) / SECONDS_OF_HOUR;
      if (on <= heater.longest_on_h) return;
      const expected = `${heater.id} on for at most ${heater.longest_on_h} h in one go`;
      found.push({ path: "events", expected, received: `"${on.toFixed(1)} h"` });
    };
    for (const { at, change } of events) {
      configuration = applyChange(configuration, change);
      const isOn = configuration.heatersOn.has(heater.id);
      if (isOn && since === undefined) since = at;
      if (!isOn && since !== undefined) {
        ended(at);
        since = undefined;
      }
    }
    ended(duration);
  }
  return found;
}
