import {
  fault,
  installationOf,
  kitOf,
  learnedOf,
  limitsOf,
  type Notes,
  newNotes,
  requireIds,
} from "../documents/index.js";
import type { BaseAircraft, BaseSetUp } from "./set-up.js";
import { checkOnce, checkProbes } from "./set-up-base.js";

/** Stands for the base itself where readings are kept. */
const RESERVED_ID = "base";

export function checkAircraft(base: Partial<BaseSetUp>, notes: Notes): void {
  const { aircraft = [], circuits } = base;
  checkOnce(aircraft, ["aircraft"], notes);
  aircraft.forEach((one, i) => {
    const found = newNotes();
    checkOne(one, found);
    if (one.circuit !== undefined && circuits !== undefined) {
      const known = circuits.map((c) => c.id);
      if (!known.includes(one.circuit)) {
        const expected =
          known.length === 0 ? "nothing: circuits is empty" : `one of circuits: ${known.join(", ")}`;
        fault(found, ["circuit"], expected, one.circuit);
      }
    }
    if (one.known.place === "hangar" && base.hangar === undefined) {
      fault(found, ["known", "place"], "ramp: the base has no hangar described", "hangar");
    }
    for (const issue of found.issues) {
      notes.issues.push({ ...issue, path: `aircraft[${i}].${issue.path}` });
    }
  });
}

function checkOne(aircraft: BaseAircraft, notes: Notes): void {
  const { id, engine, learned, kit, known, limits, habits, probes, switches } = aircraft;
  if (id === RESERVED_ID) fault(notes, ["id"], `another id: "${RESERVED_ID}" stands for the base`, id);
  const ofEngine = newNotes();
  const installation = installationOf({ aircraft: engine }, ofEngine);
  for (const issue of ofEngine.issues) {
    notes.issues.push({ ...issue, path: issue.path.replace(/^aircraft/, "engine") });
  }
  const read = kitOf({ kit }, installation, notes);
  if (learned !== undefined) learnedOf({ learned }, installation, undefined, notes);
  if (limits !== undefined) limitsOf({ limits }, installation, notes);
  const { all_c, shut_down_h_ago } = known.initial;
  if (all_c !== undefined && shut_down_h_ago !== undefined) {
    const expected = "either all_c or shut_down_h_ago, not both";
    fault(notes, ["known", "initial"], expected, { all_c, shut_down_h_ago });
  }
  if (habits !== undefined && habits.cover_off_before_min > habits.unplug_before_min) {
    const expected = `${habits.unplug_before_min} or less: covers come off after unplugging`;
    fault(notes, ["habits", "cover_off_before_min"], expected, habits.cover_off_before_min);
  }
  checkProbes(probes, ["probes"], notes);
  checkOnce(switches, ["switches"], notes);
  if (read === undefined) return;
  requireIds(known.covers_on, read.covers, ["known", "covers_on"], "kit.covers", notes);
  switches.forEach((one, i) => {
    requireIds(one.heaters, read.heaters, ["switches", i, "heaters"], "kit.heaters", notes);
  });
}
