import {
  type Findings,
  fault,
  installationOf,
  kitOf,
  learnedOf,
  limitsOf,
  newFindings,
  requireIds,
} from "../documents/index.js";
import type { BaseAircraft, BaseSetUp } from "./set-up.js";
import { checkOnce, checkProbes } from "./set-up-base.js";

/** Stands for the base itself where readings are kept. */
export const RESERVED_ID = "base";

export function checkAircraft(base: Partial<BaseSetUp>, findings: Findings): void {
  const { aircraft = [], circuits } = base;
  checkOnce(aircraft, ["aircraft"], findings);
  aircraft.forEach((one, i) => {
    const found = newFindings();
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
      findings.issues.push({ ...issue, path: `aircraft[${i}].${issue.path}` });
    }
  });
}

function checkOne(aircraft: BaseAircraft, findings: Findings): void {
  const { id, engine, learned, kit, known, limits, habits, probes, switches } = aircraft;
  if (id === RESERVED_ID) fault(findings, ["id"], `another id: "${RESERVED_ID}" stands for the base`, id);
  const ofEngine = newFindings();
  const installation = installationOf({ aircraft: engine }, ofEngine);
  for (const issue of ofEngine.issues) {
    findings.issues.push({ ...issue, path: issue.path.replace(/^aircraft/, "engine") });
  }
  const read = kitOf({ kit }, installation, findings);
  if (learned !== undefined) learnedOf({ learned }, installation, undefined, findings);
  if (limits !== undefined) limitsOf({ limits }, installation, findings);
  const { all_c, shut_down_h_ago } = known.initial;
  if (all_c !== undefined && shut_down_h_ago !== undefined) {
    const expected = "either all_c or shut_down_h_ago, not both";
    fault(findings, ["known", "initial"], expected, { all_c, shut_down_h_ago });
  }
  if (habits !== undefined && habits.cover_off_before_min > habits.unplug_before_min) {
    const expected = `${habits.unplug_before_min} or less: covers come off after unplugging`;
    fault(findings, ["habits", "cover_off_before_min"], expected, habits.cover_off_before_min);
  }
  checkProbes(probes, ["probes"], findings);
  checkOnce(switches, ["switches"], findings);
  if (read === undefined) return;
  requireIds(known.covers_on, read.covers, ["known", "covers_on"], "kit.covers", findings);
  switches.forEach((one, i) => {
    requireIds(one.heaters, read.heaters, ["switches", i, "heaters"], "kit.heaters", findings);
  });
}
