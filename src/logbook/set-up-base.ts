import { fault, kitOf, type Notes, newNotes, type Path } from "../documents/index.js";
import { checkProbe } from "../switching/index.js";
import { isTimeZone } from "../weather/index.js";
import type { BaseProbe, BaseSetUp } from "./set-up.js";

/** The base itself: zone, place, ids that stand once, carts, people, its own probes. */
export function checkBase(base: Partial<BaseSetUp>, notes: Notes): void {
  const { zone, latitude_deg, longitude_deg, circuits = [], carts = [], people = [], probes = [] } = base;
  // A fixed offset would pass as a zone, and be an hour off for half of the year.
  if (zone !== undefined && !(/^[A-Za-z]/.test(zone) && isTimeZone(zone))) {
    fault(notes, ["zone"], 'an IANA time zone such as "Europe/Oslo"', zone);
  }
  if ((latitude_deg === undefined) !== (longitude_deg === undefined)) {
    const missing = latitude_deg === undefined ? "latitude_deg" : "longitude_deg";
    fault(notes, [missing], "latitude_deg and longitude_deg together", undefined);
  }
  checkOnce(circuits, ["circuits"], notes);
  checkOnce(carts, ["carts"], notes);
  carts.forEach(({ heater }, i) => {
    const found = newNotes();
    kitOf({ kit: { heaters: [heater], covers: [] } }, undefined, found);
    for (const issue of found.issues) notes.issues.push({ ...issue, path: `carts[${i}].heater` });
  });
  people.forEach(({ from, to }, i) => {
    if (Date.parse(from) < Date.parse(to)) return;
    fault(notes, ["people", i, "to"], `a time after ${from}`, to);
  });
  checkProbes(probes, ["probes"], notes);
}

/** Ids that name two things would let an event or a command mean the wrong one. */
export function checkOnce(entries: readonly { readonly id: string }[], path: Path, notes: Notes): void {
  const first = new Map<string, number>();
  entries.forEach(({ id }, i) => {
    const other = first.get(id);
    if (other === undefined) first.set(id, i);
    else fault(notes, [...path, i, "id"], `an id that stands once (entry ${other} has it too)`, id);
  });
}

export function checkProbes(probes: readonly BaseProbe[], path: Path, notes: Notes): void {
  checkOnce(probes, path, notes);
  probes.forEach((probe, i) => {
    notes.issues.push(...checkProbe(probe, [...path, i]));
  });
}
