import type { Cover, Heater, Installation, Origins } from "../aircraft/index.js";
import { GENERIC_OILS } from "../properties/index.js";
import { type DocumentIssue, isRecord, issueAt, type Path, pathText } from "./issue.js";

/** What the schema of an installation cannot say: known oil, coolant where there is liquid cooling, origins. */
export function installationIssues(installation: Installation, path: Path): DocumentIssue[] {
  const { bodies, contacts, cooling, cowl, oil, limits, shut_down } = installation;
  const issues = originIssues(installation, path);
  const oils = GENERIC_OILS.map((o) => o.id);
  if (!oils.includes(oil.oil_id)) {
    issues.push(issueAt([...path, "oil", "oil_id"], `one of ${oils.join(", ")}`, oil.oil_id));
  }
  const coolant = [
    [["bodies", "coolant"], bodies.coolant],
    [["contacts", "coolant_heads_w_per_k"], contacts.coolant_heads_w_per_k],
    [["contacts", "coolant_barrels_w_per_k"], contacts.coolant_barrels_w_per_k],
    [["shut_down", "coolant_c"], shut_down.coolant_c],
  ] as const;
  for (const [keys, value] of coolant) {
    if (cooling === "liquid" && value === undefined) {
      issues.push(issueAt([...path, ...keys], "a value: the engine is liquid-cooled", value));
    }
    if (cooling === "air" && value !== undefined) {
      issues.push(issueAt([...path, ...keys], "nothing: the engine is air-cooled", value));
    }
  }
  issues.push(...starterIssues(installation, path));
  if (cowl.emissivity === 0) issues.push(issueAt([...path, "cowl", "emissivity"], "a number above 0", 0));
  if (limits.no_preheat_c >= limits.oil_max_c) {
    issues.push(
      issueAt(
        [...path, "limits", "no_preheat_c"],
        `less than oil_max_c (${limits.oil_max_c})`,
        limits.no_preheat_c,
      ),
    );
  }
  return issues;
}

/** A starter that gives more than it takes: its torque, speed and resistance do not belong together. */
function starterIssues({ cranking }: Installation, path: Path): DocumentIssue[] {
  const { system_v, stall_torque_nm, no_load_rpm, starter_resistance_ohm } = cranking;
  const most = (system_v ** 2 * 60) / (2 * Math.PI * no_load_rpm * starter_resistance_ohm);
  if (stall_torque_nm <= most) return [];
  const expected = `at most ${most.toFixed(0)}, what system_v, no_load_rpm and starter_resistance_ohm leave`;
  return [issueAt([...path, "cranking", "stall_torque_nm"], expected, stall_torque_nm)];
}

/** What the schema of a heater cannot say. */
export function heaterIssues(heater: Heater, path: Path): DocumentIssue[] {
  const issues = originIssues(heater, path);
  if (heater.elements.length === 0 && heater.duct === undefined) {
    issues.push(issueAt([...path, "elements"], "at least one element, or a duct", heater.elements));
  }
  issues.push(...limitIssues(heater, path));
  const names = heater.elements.map((e) => e.name);
  names.forEach((name, i) => {
    if (names.indexOf(name) < i) {
      issues.push(issueAt([...path, "elements", i, "name"], "a name that no other element has", name));
    }
  });
  return issues;
}

/** [h] the makers' shortest hot air (Lycoming Service Instruction 1505, IO-390-D series manual p. 42). */
const LEAST_HOT_AIR = 0.5;

/** Limits that no description may lift: hot air long enough, a burner outdoors with somebody beside it. */
function limitIssues(
  { duct, least_on_h, longest_on_h, runs, attended }: Heater,
  path: Path,
): DocumentIssue[] {
  const issues: DocumentIssue[] = [];
  if (least_on_h > longest_on_h) {
    issues.push(issueAt([...path, "least_on_h"], `at most longest_on_h (${longest_on_h})`, least_on_h));
  }
  if (duct !== undefined && least_on_h < LEAST_HOT_AIR) {
    const expected = `${LEAST_HOT_AIR} or more: engine makers ask for 30 min of hot air`;
    issues.push(issueAt([...path, "least_on_h"], expected, least_on_h));
  }
  if (duct?.energy !== "fuel") return issues;
  if (runs !== "outdoors") {
    issues.push(issueAt([...path, "runs"], '"outdoors": a burner makes carbon monoxide', runs));
  }
  if (!attended) {
    issues.push(issueAt([...path, "attended"], "true: a burner is never left alone", attended));
  }
  return issues;
}

export function coverIssues(cover: Cover, path: Path): DocumentIssue[] {
  return originIssues(cover, path);
}

/** Numbers whose origin nobody named: an honest band needs to know where a number comes from. */
function originIssues(description: { readonly origins: Origins }, path: Path): DocumentIssue[] {
  const { origins, ...rest } = description;
  return numberPaths(rest)
    .filter((keys) => !hasOrigin(origins, keys))
    .map((keys) => issueAt([...path, "origins"], `an origin for ${pathText(keys)}`, undefined));
}

function hasOrigin(origins: Origins, keys: Path): boolean {
  return [...keys, ""].some((_, length) => origins[keys.slice(0, length).join(".")] !== undefined);
}

function numberPaths(value: unknown, path: Path = []): Path[] {
  if (typeof value === "number") return [path];
  if (Array.isArray(value)) return value.flatMap((entry, i) => numberPaths(entry, [...path, i]));
  if (!isRecord(value)) return [];
  return Object.entries(value).flatMap(([key, entry]) => numberPaths(entry, [...path, key]));
}
