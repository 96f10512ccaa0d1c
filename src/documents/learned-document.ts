import type { FittedAircraft } from "../learning/index.js";
import { utcText } from "../weather/index.js";
import type { LearnedDocument } from "./learned-schema.js";
import { SCENARIO_VERSION } from "./migrations.js";
import { rounded } from "./result-header.js";

/** What was learned, as it is stored and exchanged. The multipliers keep all their digits: they are drawn from again. */
export function learnedDocument({ base, multipliers, evidence }: FittedAircraft): LearnedDocument {
  return {
    soakline: SCENARIO_VERSION,
    kind: "learned",
    base,
    multipliers: {
      names: [...multipliers.names] as LearnedDocument["multipliers"]["names"],
      mean_log: [...multipliers.mean],
      factor_log: multipliers.factor.map((row) => [...row]),
    },
    evidence: evidence.map(({ origin, hash, readings, from, to, heaters, settings, probes }) => ({
      ...{ origin, hash, readings, heaters: [...heaters] },
      from: utcText(from),
      to: utcText(to),
      settings: settings.map(({ place, covers }) => ({ place, covers: [...covers] })),
      probes: probes.map(({ name, offset, lag }) => ({
        name,
        offset_k: rounded(offset, 3),
        lag_s: rounded(lag, 1),
      })),
    })),
  };
}
