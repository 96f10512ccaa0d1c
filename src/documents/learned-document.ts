import type { FittedAircraft } from "../learning/index.js";
import { utcText } from "../weather/index.js";
import { CATALOGUE_EDITION, type LearnedDocument } from "./learned-schema.js";
import { SCENARIO_VERSION } from "./migrations.js";
import { rounded } from "./result-header.js";

/** What was learned, as it is stored and exchanged. The multipliers keep all their digits: they are drawn from again. */
export function learnedDocument({ base, multipliers, evidence }: FittedAircraft): LearnedDocument {
  return {
    soakline: SCENARIO_VERSION,
    kind: "learned",
    base,
    catalogue: CATALOGUE_EDITION,
    multipliers: {
      names: [...multipliers.names] as LearnedDocument["multipliers"]["names"],
      mean_log: [...multipliers.mean],
      factor_log: multipliers.factor.map((row) => [...row]),
    },
    evidence: evidence.map(({ of, origin, hash, readings, from, to, heaters, settings, probes }) => ({
      ...(of === undefined ? {} : { of }),
      ...{ origin, hash, readings, heaters: [...heaters] },
      from: utcText(from),
      to: utcText(to),
      settings: settings.map(({ place, covers }) => ({ place, covers: [...covers] })),
      probes: probes.map((probe) => ({
        name: probe.name,
        part: typeof probe.place === "object" ? probe.place.part : probe.place,
        noise_k: rounded(probe.noise, 3),
        offset_k: rounded(probe.offset, 3),
        offset_sd_k: rounded(probe.offsetSd, 3),
        lag_s: rounded(probe.lag, 1),
        lag_log_sd: rounded(probe.lagLogSd, 3),
      })),
    })),
  };
}
