import { originOf, type PartName } from "../aircraft/index.js";
import { finding } from "../findings/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import {
  type Criterion,
  type CriterionMaker,
  type CriterionSetting,
  extreme,
  lowest,
  named,
} from "./criterion.js";

/** [K] largest spread between the engine's own parts. */
const EVENNESS_LIMIT = 50;
/** [°C] parts at least this warm are warm through and count as this warm: an engine just shut down is not half-warm. */
const RUNNING_WARM_C = 60;
/** [°C] case, bearings, barrels, heads and oil of an engine that is warm through; project judgement, the owner may set it. */
const WARM_THROUGH_C = 5;

const HEADS: readonly PartName[] = ["heads_front", "heads_rear"];
const CORE_PARTS: readonly PartName[] = ["oil", "crankcase", "crankshaft", "barrels", ...HEADS];

/** What every part of the engine must reach: the maker's limit, or the owner's where that is stricter. */
function engineLimit({ installation, stricter }: CriterionSetting) {
  const maker = kelvinFromCelsius(installation.limits.no_preheat_c);
  const makerSource = originOf(installation.origins, "limits.no_preheat_c");
  const limit = Math.max(maker, stricter.engineAtLeast ?? maker);
  const source: Criterion["source"] =
    limit > maker ? finding("owners-limit", { maker: makerSource }) : makerSource;
  return { limit, source };
}

function engineAtLeast(
  id: "bearings" | "crankcase" | "barrels" | "heads",
  parts: readonly PartName[],
): CriterionMaker {
  return (setting) => {
    const { limit, source } = engineLimit(setting);
    return [lowest(named(id, {}), parts, limit, source)];
  };
}

export const oil: CriterionMaker = (setting) => {
  const { limit, source } = engineLimit(setting);
  const own = Math.max(limit, setting.stricter.oilAtLeast ?? limit);
  const place = setting.installation.lubrication === "dry-tank" ? "tank" : "sump";
  return [
    lowest(
      named("oil", { in: place }),
      ["oil"],
      own,
      own > limit ? finding("owners-limit", { maker: null }) : source,
    ),
  ];
};

export const bearings = engineAtLeast("bearings", ["crankshaft"]);
export const crankcase = engineAtLeast("crankcase", ["crankcase"]);
export const barrels = engineAtLeast("barrels", ["barrels"]);
export const heads = engineAtLeast("heads", HEADS);

const COOLER = "cooler, filter and external lines are to be heated too: Lycoming Service Instruction 1505";

export const oilCooler: CriterionMaker = (setting) => {
  const { limit, source } = engineLimit(setting);
  const cited =
    typeof source === "string"
      ? `${source}; ${COOLER}`
      : finding("owners-limit", { maker: `${source.values.maker}; ${COOLER}` });
  return [lowest(named("oil-cooler", {}), ["accessories"], limit, cited)];
};

export const hub: CriterionMaker = ({ installation: { propeller, limits, origins } }) =>
  propeller.constant_speed && limits.hub_c !== undefined
    ? [lowest(named("hub", {}), ["hub"], kelvinFromCelsius(limits.hub_c), originOf(origins, "limits.hub_c"))]
    : [];

/** The line above the least: the engine warm, not only past the limit where heating becomes mandatory. */
export const warmThrough: CriterionMaker = (setting) => {
  const wished = setting.stricter.warmThrough ?? kelvinFromCelsius(WARM_THROUGH_C);
  const limit = Math.max(engineLimit(setting).limit, wished);
  const parts = {
    oil: ["oil"],
    bearings: ["crankshaft"],
    crankcase: ["crankcase"],
    barrels: ["barrels"],
    heads: HEADS,
  } as const;
  return (["oil", "bearings", "crankcase", "barrels", "heads"] as const).map((part) => ({
    ...lowest(named("warm", { part }), parts[part], limit, "project judgement; the owner may set it"),
    id: `${part}-warm`,
    aim: "warm-through",
  }));
};

export const evenness: CriterionMaker = ({ stricter }) => {
  let coldest = new Float64Array(0);
  const runningWarm = kelvinFromCelsius(RUNNING_WARM_C);
  return [
    {
      ...named("evenness", {}),
      quantity: "temperature-difference",
      direction: "at-most",
      judged: "at-start",
      limit: Math.min(EVENNESS_LIMIT, stricter.evennessAtMost ?? EVENNESS_LIMIT),
      source: "no published limit; project judgement",
      values(state, out) {
        if (coldest.length !== out.length) coldest = new Float64Array(out.length);
        extreme(state, CORE_PARTS, Math.max, out);
        extreme(state, CORE_PARTS, Math.min, coldest);
        for (let m = 0; m < out.length; m++) {
          out[m] = Math.max(0, Math.min(out[m], runningWarm) - Math.min(coldest[m], runningWarm));
        }
      },
    },
  ];
};
