import {
  COVERS,
  type Cover,
  HEATERS,
  type Heater,
  INSTALLATIONS,
  type Installation,
  type Kit,
} from "../aircraft/index.js";
import { coverIssues, heaterIssues, installationIssues } from "./description-checks.js";
import type { DocumentIssue, Path } from "./issue.js";
import { fault, type Notes } from "./reading.js";
import type { ScenarioSections } from "./scenario-schema.js";

export function installationOf({ aircraft }: ScenarioSections, notes: Notes): Installation | undefined {
  if (aircraft === undefined) return undefined;
  return entry(aircraft, ["aircraft"], INSTALLATIONS, installationIssues, notes);
}

/** The kit with catalogue entries put in for their ids; undefined when any piece has a fault. */
export function kitOf(
  { kit }: ScenarioSections,
  installation: Installation | undefined,
  notes: Notes,
): Kit | undefined {
  if (kit === undefined) return undefined;
  const before = notes.issues.length;
  const heaters = kit.heaters.map((h, i) => entry(h, ["kit", "heaters", i], HEATERS, heaterIssues, notes));
  const covers = kit.covers.map((c, i) => entry(c, ["kit", "covers", i], COVERS, coverIssues, notes));
  refuseDuplicates(heaters, ["kit", "heaters"], notes);
  refuseDuplicates(covers, ["kit", "covers"], notes);
  refuseSecondDuct(heaters, notes);
  if (installation !== undefined) refuseMisfits(heaters, installation, notes);
  if (notes.issues.length > before) return undefined;
  return { heaters: heaters.filter((h) => h !== undefined), covers: covers.filter((c) => c !== undefined) };
}

function entry<T extends Installation | Heater | Cover>(
  value: string | T,
  path: Path,
  catalogue: readonly T[],
  check: (description: T, path: Path) => DocumentIssue[],
  notes: Notes,
): T | undefined {
  if (typeof value !== "string") {
    const issues = check(value, path);
    notes.issues.push(...issues);
    return issues.length === 0 ? value : undefined;
  }
  const found = catalogue.find((e) => e.id === value);
  return (
    found ?? fault(notes, path, `one of ${catalogue.map((e) => e.id).join(", ")}, or a description`, value)
  );
}

function refuseDuplicates(entries: readonly (Heater | Cover | undefined)[], path: Path, notes: Notes): void {
  const ids = entries.map((e) => e?.id);
  ids.forEach((id, i) => {
    if (id !== undefined && ids.indexOf(id) < i) fault(notes, [...path, i], "an id that stands once", id);
  });
}

/** The network joins one duct to the cowl. */
function refuseSecondDuct(heaters: readonly (Heater | undefined)[], notes: Notes): void {
  const ducted = heaters.flatMap((h, i) => (h?.duct === undefined ? [] : [{ id: h.id, i }]));
  for (const { id, i } of ducted.slice(1)) {
    fault(notes, ["kit", "heaters", i], `no second ducted heater beside ${ducted[0].id}`, id);
  }
}

function refuseMisfits(
  heaters: readonly (Heater | undefined)[],
  installation: Installation,
  notes: Notes,
): void {
  heaters.forEach((heater, i) => {
    if (heater?.cylinders === undefined || heater.cylinders === installation.cylinders) return;
    const expected = `a heater for ${installation.cylinders} cylinders`;
    fault(notes, ["kit", "heaters", i], expected, `${heater.id} for ${heater.cylinders}`);
  });
  if (installation.bodies.coolant !== undefined) return;
  heaters.forEach((heater, i) => {
    heater?.elements.forEach((element, j) => {
      for (const part of [element.target, element.limiter?.senses]) {
        if (part !== "coolant") continue;
        fault(notes, ["kit", "heaters", i, "elements", j], `a part that ${installation.id} has`, part);
      }
    });
  });
}
