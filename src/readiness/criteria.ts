import { elementPart, type Installation, type Kit, originOf, type PartName } from "../aircraft/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import type { Criterion } from "./criterion.js";
import { extreme, highest, lowest } from "./extreme.js";

/** Limits a user may set, [K]; only stricter than the installation's own ones count. */
export interface StricterLimits {
  /** Oil, bearings, case, barrels and heads at least this warm. */
  readonly engineAtLeast?: number;
  /** Oil at least this warm. */
  readonly oilAtLeast?: number;
  /** Spread between the engine's parts at most this. */
  readonly evennessAtMost?: number;
  /** What the owner calls warm through; the usual one where left out. */
  readonly warmThrough?: number;
}

/** [K] largest spread between the engine's own parts. */
const EVENNESS_LIMIT = 50;
/** [°C] parts at least this warm are warm through and count as this warm: an engine just shut down is not half-warm. */
const RUNNING_WARM_C = 60;
/** [°C] case, bearings, barrels, heads and oil of an engine that is warm through; project judgement, the owner may set it. */
const WARM_THROUGH_C = 5;
/** [°C] hottest oil film at a heated wall. */
const FILM_LIMIT_C = 180;

const CORE_PARTS: readonly PartName[] = [
  "oil",
  "crankcase",
  "crankshaft",
  "barrels",
  "heads_front",
  "heads_rear",
];

/** The criteria that temperatures alone decide, for one installation and its kit. */
export function temperatureCriteria(
  installation: Installation,
  kit: Kit,
  stricter: StricterLimits = {},
): Criterion[] {
  const { limits, origins, propeller, lubrication } = installation;
  const maker = kelvinFromCelsius(limits.no_preheat_c);
  const makerSource = originOf(origins, "limits.no_preheat_c");
  const engine = Math.max(maker, stricter.engineAtLeast ?? maker);
  const engineSource = engine > maker ? `owner's stricter limit; maker: ${makerSource}` : makerSource;
  const oil = Math.max(engine, stricter.oilAtLeast ?? engine);
  const atLeast = (
    id: string,
    title: string,
    parts: PartName[],
    limit: number,
    reason: string,
    source: string,
  ) => lowest(id, title, parts, limit, reason, source);
  const criteria: Criterion[] = [
    atLeast(
      "oil",
      lubrication === "dry-tank" ? "oil in the tank" : "oil in the sump",
      ["oil"],
      oil,
      "congealed oil does not reach the pump and starves the bearings",
      oil > engine ? "owner's stricter limit" : engineSource,
    ),
    atLeast(
      "bearings",
      "crankshaft and bearings",
      ["crankshaft"],
      engine,
      "no gauge shows them; cold bearings have stiff oil and, in an aluminium case, the least clearance",
      engineSource,
    ),
    atLeast(
      "crankcase",
      "crankcase",
      ["crankcase"],
      engine,
      "oil galleries and bearing saddles are in it",
      engineSource,
    ),
    atLeast(
      "barrels",
      "barrels and pistons",
      ["barrels"],
      engine,
      "aluminium pistons outgrow cold steel barrels in the first minutes, and oil films there carry most of the drag",
      engineSource,
    ),
    atLeast(
      "heads",
      "coldest cylinder head",
      ["heads_front", "heads_rear"],
      engine,
      "fuel does not vaporise on cold heads and plugs frost over after a failed start",
      engineSource,
    ),
    atLeast(
      "oil-cooler",
      "oil cooler, filter and lines",
      ["accessories"],
      engine,
      "congealed oil in cooler, filter or lines holds back the oil that the sump has warm",
      `${engineSource}; cooler, filter and external lines are to be heated too: Lycoming Service Instruction 1505`,
    ),
    ...warmThrough(Math.max(engine, stricter.warmThrough ?? kelvinFromCelsius(WARM_THROUGH_C))),
    evenness(Math.min(EVENNESS_LIMIT, stricter.evennessAtMost ?? EVENNESS_LIMIT)),
    highest(
      "oil-maximum",
      "oil, hottest",
      ["oil"],
      kelvinFromCelsius(limits.oil_max_c),
      "hotter oil ages and boils off",
      originOf(origins, "limits.oil_max_c"),
    ),
    highest(
      "oil-film",
      "oil film at the heated wall",
      [
        "sump",
        ...kit.heaters.flatMap((h) =>
          h.elements.filter((e) => e.in_oil).map((e) => elementPart(h.id, e.name)),
        ),
      ],
      kelvinFromCelsius(FILM_LIMIT_C),
      "thick cold oil over a hot wall cokes long before the bulk is warm",
      "coking above 200-230 °C: tribology texts, from memory; 20 K kept, project judgement",
    ),
  ];
  if (propeller.constant_speed && limits.hub_c !== undefined) {
    criteria.push(
      atLeast(
        "hub",
        "propeller hub",
        ["hub"],
        kelvinFromCelsius(limits.hub_c),
        "congealed oil in the hub leaves the propeller without control",
        originOf(origins, "limits.hub_c"),
      ),
    );
  }
  for (const heater of kit.heaters) {
    heater.elements.forEach((element, i) => {
      criteria.push(
        highest(
          `surface:${heater.id}:${element.name}`,
          `surface of ${heater.name}, ${element.name}`,
          [elementPart(heater.id, element.name)],
          kelvinFromCelsius(element.surface_max_c),
          "a surface hot enough to char oil, hose or cover is a fire risk; it needs a look, not only a number",
          originOf(heater.origins, `elements.${i}.surface_max_c`),
        ),
      );
    });
  }
  return criteria;
}

/** The line above the least: the engine warm, not only past the limit where heating becomes mandatory. */
function warmThrough(limit: number): Criterion[] {
  const parts: readonly (readonly [string, string, readonly PartName[]])[] = [
    ["oil", "oil", ["oil"]],
    ["bearings", "crankshaft and bearings", ["crankshaft"]],
    ["crankcase", "crankcase", ["crankcase"]],
    ["barrels", "barrels and pistons", ["barrels"]],
    ["heads", "coldest cylinder head", ["heads_front", "heads_rear"]],
  ];
  return parts.map(([id, title, of]) => ({
    ...lowest(
      `${id}-warm`,
      `${title}, warm through`,
      of,
      limit,
      "past the maker's limit an engine may be started; warm through it starts easily and wears little",
      "project judgement; the owner may set it",
    ),
    aim: "warm-through" as const,
  }));
}

function evenness(limit: number): Criterion {
  const coldest = { values: new Float64Array(0) };
  const runningWarm = kelvinFromCelsius(RUNNING_WARM_C);
  return {
    id: "evenness",
    title: "hottest less coldest part of the engine",
    quantity: "temperature-difference",
    direction: "at-most",
    judged: "at-start",
    limit,
    reason: "a half-warm engine has warm gauges and cold bearings or cylinders",
    source: "no published limit; project judgement",
    values(state, out) {
      if (coldest.values.length !== out.length) coldest.values = new Float64Array(out.length);
      extreme(state, CORE_PARTS, Math.max, out);
      extreme(state, CORE_PARTS, Math.min, coldest.values);
      for (let m = 0; m < out.length; m++) {
        out[m] = Math.max(0, Math.min(out[m], runningWarm) - Math.min(coldest.values[m], runningWarm));
      }
    },
  };
}
