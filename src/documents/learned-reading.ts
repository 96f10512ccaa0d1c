import { INSTALLATIONS, type Installation } from "../aircraft/index.js";
import type { FittedAircraft, ProbePlace } from "../learning/index.js";
import { epochFromLocal } from "../weather/index.js";
import { inFormOfKind } from "./current-form.js";
import { issueAt, type Path } from "./issue.js";
import { type LearnedDocument, learnedSchema } from "./learned-schema.js";
import { fault, type Notes } from "./reading.js";
import type { ScenarioSections } from "./scenario-schema.js";
import { issuesOfSchema } from "./schema-issues.js";
import type { ReadFile } from "./weather-sources/index.js";

/** What a scenario says was learned of its aircraft, from the document itself or a file beside it. */
export function learnedOf(
  { learned }: ScenarioSections,
  installation: Installation | undefined,
  readFile: ReadFile | undefined,
  notes: Notes,
): FittedAircraft | undefined {
  if (learned === undefined) return undefined;
  const document = typeof learned === "string" ? fromFile(learned, readFile, notes) : learned;
  if (document === undefined) return undefined;
  const aircraft = checked(document, notes);
  if (aircraft === undefined || installation === undefined) return aircraft;
  if (aircraft.base !== installation.id) {
    return fault(notes, ["learned", "base"], `the scenario's aircraft, ${installation.id}`, aircraft.base);
  }
  return aircraft;
}

function fromFile(name: string, readFile: ReadFile | undefined, notes: Notes): LearnedDocument | undefined {
  const path: Path = ["learned"];
  const file = readFile?.(name) ?? { ok: false, reason: "files cannot be read here" };
  if (!file.ok) return fault(notes, path, `a file that can be read (${file.reason})`, name);
  const form = inFormOfKind("learned", file.text);
  if (!form.ok) {
    notes.issues.push({ ...form.issue, path: `${name}: ${form.issue.path}` });
    return undefined;
  }
  const parsed = learnedSchema.safeParse(form.document);
  if (parsed.success) return parsed.data;
  const issues = issuesOfSchema(parsed.error, form.document);
  notes.issues.push(...issues.map((issue) => ({ ...issue, path: `${name}: ${issue.path}` })));
  return undefined;
}

/** ln of how much larger the catalogue's numbers are than those of its first edition. */
const STORES_GREW: Readonly<Record<string, number>> = { heat_stores: Math.log(77.8 / 50.8) };

/** What the schema cannot say: lengths that belong together, a triangular factor, times that are times. */
function checked(
  { base, catalogue, multipliers, evidence }: LearnedDocument,
  notes: Notes,
): FittedAircraft | undefined {
  const before = notes.issues.length;
  const isOfFirstEdition = catalogue === undefined && INSTALLATIONS.some(({ id }) => id === base);
  const { names, mean_log, factor_log } = multipliers;
  const path: Path = ["learned", "multipliers"];
  if (new Set(names).size < names.length) fault(notes, [...path, "names"], "names that stand once", names);
  if (mean_log.length !== names.length) {
    fault(notes, [...path, "mean_log"], `${names.length} numbers`, mean_log.length);
  }
  const triangular =
    factor_log.length === names.length &&
    factor_log.every(
      (row, i) => row.length === names.length && row.every((v, j) => j <= i || v === 0) && row[i] > 0,
    );
  if (!triangular) {
    const expected = `a lower-triangular matrix of ${names.length} rows with a positive diagonal`;
    fault(notes, [...path, "factor_log"], expected, `${factor_log.length} rows`);
  }
  const times = evidence.map(({ from, to }, i) =>
    [from, to].map((text, k) => {
      const epoch = epochFromLocal(text);
      if (epoch.ok) return epoch.epoch;
      notes.issues.push(
        issueAt(["learned", "evidence", i, k === 0 ? "from" : "to"], "a time with offset", text),
      );
      return 0;
    }),
  );
  if (notes.issues.length > before) return undefined;
  return {
    version: 1,
    base,
    multipliers: {
      names,
      mean: isOfFirstEdition ? mean_log.map((m, i) => m - (STORES_GREW[names[i]] ?? 0)) : mean_log,
      factor: factor_log,
    },
    evidence: evidence.map(({ probes, ...rest }, i) => ({
      ...rest,
      from: times[i][0],
      to: times[i][1],
      probes: probes.map((probe) => ({
        name: probe.name,
        place: placeOf(probe.part),
        noise: probe.noise_k,
        offset: probe.offset_k,
        offsetSd: probe.offset_sd_k,
        lag: probe.lag_s,
        lagLogSd: probe.lag_log_sd,
      })),
    })),
  };
}

function placeOf(part: string): ProbePlace {
  return part === "outside-air" || part === "hangar-air" ? part : { part };
}
