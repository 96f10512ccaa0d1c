import { fault, kitOf, type Notes, newNotes, type Path } from "../documents/index.js";
import { checkSwitch, switchProtocol } from "../switching/index.js";
import type { BaseAircraft, BaseSetUp, HeaterSwitch } from "./set-up.js";

/** Switches that could put a heater on with no end, or the wrong one, or could not say whether it is off. */
export function checkSwitches({ aircraft = [] }: Partial<BaseSetUp>, notes: Notes): void {
  const all = aircraft.flatMap(({ switches }) => switches);
  const commanding = new Map<string, string>();
  const telling = new Map<string, string>();
  aircraft.forEach((one, i) => {
    const of = ["aircraft", i, "switches"];
    checkHeaters(one, of, notes);
    one.switches.forEach((each, j) => {
      const path = [...of, j];
      notes.issues.push(...checkSwitch(each, path));
      const name = `${each.id} of ${one.id}`;
      const protocol = switchProtocol(each.via);
      const command = protocol.command(each.via);
      const other = commanding.get(command.text);
      if (other === undefined) commanding.set(command.text, name);
      else {
        const expected = `a command of its own: ${other} is commanded the same way`;
        fault(notes, [...path, "via", ...command.path], expected, command.shown ?? command.text);
      }
      const state = protocol.state(each.via);
      // Where it tells that it is off, and in which words.
      const off = JSON.stringify([each.via.kind, state.text, each.via.hear.pointer ?? "", each.via.hear.off]);
      const told = telling.get(off);
      if (told === undefined) telling.set(off, name);
      else {
        const expected = `a state of its own: ${told} tells off the same way, and would confirm this one`;
        fault(notes, [...path, "via", ...state.path], expected, each.via.hear.off);
      }
      checkBeside(each, all, path, notes);
    });
  });
}

/** What commands another switch is neither asked nor listened to. */
function checkBeside({ via }: HeaterSwitch, all: readonly HeaterSwitch[], path: Path, notes: Notes): void {
  for (const { path: place, text } of switchProtocol(via).beside(via)) {
    const commanded = all.find(
      (other) =>
        other.via !== via &&
        other.via.kind === via.kind &&
        switchProtocol(other.via).command(other.via).text === text,
    );
    if (commanded === undefined) continue;
    const expected = `a topic that does not command another switch (${commanded.id})`;
    fault(notes, [...path, "via", ...place], expected, text);
  }
}

function checkHeaters({ kit, switches }: BaseAircraft, of: Path, notes: Notes): void {
  const feeding = new Map<string, string>();
  const heaters = kitOf({ kit }, undefined, newNotes())?.heaters ?? [];
  switches.forEach((one, j) => {
    const path = [...of, j];
    one.heaters.forEach((heater, k) => {
      const feeder = feeding.get(heater);
      if (feeder === undefined) feeding.set(heater, one.id);
      else fault(notes, [...path, "heaters", k], `a heater named once (${feeder} feeds it)`, heater);
    });
    for (const heater of heaters.filter((h) => one.heaters.includes(h.id))) {
      const most = heater.longest_on_h * 60;
      if (one.longest_on_min > most) {
        const expected = `${most} or less, the longest ${heater.id} may be on in one go`;
        fault(notes, [...path, "longest_on_min"], expected, one.longest_on_min);
      }
      if (!heater.attended) continue;
      const expected = "heaters that may run with nobody beside them: fire and carbon monoxide";
      fault(notes, [...path, "heaters"], expected, heater.id);
    }
  });
}
