import { z } from "zod";
import { WET_TIME_LIMITS } from "../starting/index.js";
import { basisSchema } from "./basis-schema.js";
import { SCENARIO_VERSION } from "./migrations.js";
import { record } from "./record.js";
import { caution, citation, finding, said } from "./said.js";

// Documents that the program writes. They carry the version of the scenario document they answer.

const stamp = record({ at_h: z.number(), time: z.string() }).meta({
  description: "a moment: hours from the scenario's start, and local time with offset",
});
const chance = z.number().min(0).max(1);
const band = record({ p05: z.number(), p50: z.number(), p95: z.number() });
const numbers = z.array(z.number());

const header = {
  soakline: z.literal(SCENARIO_VERSION),
  name: z.string(),
  aircraft: record({ id: z.string(), name: z.string() }),
  start: stamp,
  zone: z.string(),
  members: z.int().meta({ description: "drawn cases that chances are counted over" }),
  assumptions: z.array(finding),
  warnings: z.array(record({ path: z.string(), expected: z.string(), received: z.string() })),
  cautions: z.array(caution),
};

const course = record({
  time_h: numbers,
  parts: z.record(z.string(), record({ p05_c: numbers, p50_c: numbers, p95_c: numbers })).meta({
    description:
      "oil, sump, crankcase, crankshaft, cylinders, heads (the coldest), heater_surface (the hottest), cowl_air, ..., outside_air",
  }),
  energy_kwh: record({ p05: numbers, p50: numbers, p95: numbers }),
});

const happening = record({ ...stamp.shape, do: z.string(), what: z.string() });

const criterion = record({
  id: z.string(),
  title: finding,
  unit: z.enum(["c", "k", "rpm", "percent", "ratio", "index", "count"]),
  direction: z.enum(["at-least", "at-most"]),
  judged: z.enum(["at-start", "while-heating"]),
  advisory: z.boolean().meta({
    description: "shown with its margin, but neither in the chance nor able to be the weakest point",
  }),
  aim: z
    .enum(["least", "warm-through"])
    .meta({ description: "warm-through: counts only where the engine is to be warm through" }),
  limit: z.number(),
  value: band,
  margin: band.meta({ description: "positive when the criterion holds" }),
  chance,
  reason: finding,
  source: citation,
});

const stay = record({
  sure_h: z
    .number()
    .meta({ description: "hours after departure that the wanted share of all cases outlasts" }),
  median_h: z.number(),
  horizon_h: z.number().meta({ description: "hours looked ahead; a value equal to it means at least" }),
});

const toll = record({
  plug_in: stamp.nullable(),
  heater_h: z.number(),
  energy_kwh: z.number(),
  wet_h: z.number().meta({
    description: `hours above 0 °C of the inner wall that is wet or frosted longest. ${WET_TIME_LIMITS}`,
  }),
  condensed_g: z.number(),
  breather_frost_g: z.number(),
  hottest_surface_c: z.number().nullable(),
  hottest_film_c: z.number(),
}).meta({ description: "what heating does to the engine until departure, in the middle estimate" });

const start = record({
  notes: z.array(
    record({
      topic: z.enum([
        "oil",
        "oil-pressure",
        "oil-grade",
        "propeller",
        "cranking",
        "battery",
        "fuel",
        "breather",
      ]),
      text: finding,
      cautions: z.array(caution),
    }),
  ),
}).meta({ description: "what to know before the starter is pressed, at middle temperatures" });

const window = record({
  opens: record({ sure: stamp, half: stamp }),
  closes: record({ sure: stamp, half: stamp }),
});

const line = record({
  reached: z.boolean(),
  plug_in: stamp.nullable().meta({ description: "null where no heat is used" }),
  chance,
  energy_kwh: z.number(),
});

const chances = { chance, warm_chance: chance };

/** What `plan` answers. */
export const planSchema = record({
  ...header,
  kind: z.literal("plan"),
  status: z.enum(["ready", "not-required", "look-first", "not-reachable"]).meta({
    description:
      "not-required: past the maker's limit without heat; look-first: it would be ready, but for what look_first says",
  }),
  message: finding.nullable().meta({ description: "why it is not reachable; null otherwise" }),
  first_cautions: z
    .array(caution)
    .max(3)
    .meta({ description: "those that belong to this kit and this night, for the first screen" }),
  look_first: z
    .array(record({ code: z.enum(["oil-unlisted", "no-battery"]), text: finding, source: z.string() }))
    .meta({ description: "what must be put right or looked up before any number here counts" }),
  aim: z.enum(["least", "warm-through"]).meta({ description: "the line that the plug-in aims at" }),
  lines: record({ least: line, warm_through: line }).meta({
    description:
      "least: each part past the maker's limit, where heating becomes mandatory; warm_through: case, bearings, barrels, heads and oil warm",
  }),
  heat_needed: z.boolean(),
  heaters: z.array(
    record({
      id: z.string(),
      name: z.string(),
      basis: basisSchema,
      attended: z.boolean(),
      least_on_h: z.number(),
      longest_on_h: z.number(),
      procedure: record({ steps: z.array(said), pause_min: z.number(), source: z.string() }).nullable(),
      surfaces: z.array(
        record({ name: z.string(), p50_c: z.number(), p95_c: z.number(), limit_c: z.number() }),
      ),
    }),
  ),
  barred: z
    .array(record({ id: z.string(), name: z.string(), reason: z.enum(["indoors", "engine-too-small"]) }))
    .meta({ description: "heaters wanted that may not be used here" }),
  heating: record({
    heaters: z.array(z.string()),
    since: stamp.nullable(),
    on_h: z.number().nullable(),
    longest_on_h: z.number(),
    stays_on: z
      .boolean()
      .meta({ description: "false: its limits forbid that it stays on, and it goes off now" }),
    wet_h: z.number().nullable().meta({ description: "wet or frosted inside since it was plugged in" }),
  })
    .nullable()
    .meta({ description: "heat that is on when the plan is made" }),
  plug_in: stamp
    .nullable()
    .meta({ description: "latest plug-in; null when no heat is needed, it is on already, or there is none" }),
  unplug: stamp,
  cover_off: stamp,
  departure: stamp,
  start_within_min: z
    .number()
    .nullable()
    .meta({ description: "minutes from covers off within which it starts with the wanted chance" }),
  wanted_chance: chance,
  ...chances,
  chance_error: z.number(),
  weakest: z
    .string()
    .meta({ description: "id of the criterion that holds least often on the line aimed at" }),
  criteria: z.array(criterion),
  start_briefing: start,
  too_hot: z.array(z.string()).meta({ description: "ids of ceilings broken in the middle estimate" }),
  window: window.nullable().meta({
    description: "from when to when it may be started as planned, covers off and out, with the wanted chance",
  }),
  covered_window: window.nullable().meta({
    description: "the same should covers stay on and the aircraft stay where it is",
  }),
  quarter_more: record(chances).nullable().meta({ description: "with a quarter of an hour more heat" }),
  stay_warm: record({ covered: stay, uncovered: stay }),
  energy_kwh: band,
  curve: z.array(record({ plug_in: stamp, ...chances })),
  late: z.array(record({ late_by_h: z.number(), plug_in: stamp, ...chances })),
  habits: z.array(record({ lead_h: z.number(), plug_in: stamp, ...chances, energy_kwh: z.number() })),
  toll: record({ planned: toll, left_on: toll }).nullable().meta({
    description: "the plan beside leaving the heaters plugged in from the scenario's start on",
  }),
  remedies: z.array(record({ text: finding, attended: z.boolean(), chance, plug_in: stamp.nullable() })),
  happenings: z.array(happening),
  course,
}).meta({ title: "Soakline plan" });

/** What `simulate` answers. */
export const simulationSchema = record({
  ...header,
  kind: z.literal("simulation"),
  happenings: z.array(happening),
  course,
}).meta({ title: "Soakline simulation" });

const flows = record({
  at: stamp,
  heaters_w: z.number(),
  flows: z.array(record({ from: z.string(), to: z.string(), heat_w: z.number() })).meta({
    description: "mean heat flow over the drawn cases, positive from `from` to `to`",
  }),
  stored: z.array(record({ part: z.string(), heat_w: z.number() })).meta({
    description: "heat going into each part's store, negative while it cools",
  }),
});

/** What `explain` answers. */
export const explanationSchema = record({
  ...header,
  kind: z.literal("explanation"),
  departure: stamp,
  chance,
  weakest: z.string(),
  criteria: z.array(criterion),
  heating: flows.nullable().meta({ description: "just before unplugging; null when nothing heats" }),
  at_departure: flows,
}).meta({ title: "Soakline explanation" });

const answered = z.enum(["ready", "not-ready"]).meta({
  description: "ready only with the wanted chance, counted over all cases",
});

const atReturn = record({
  status: answered,
  chance,
  weakest: z.string().meta({ description: "id of the criterion that holds least often then" }),
  criteria: z.array(criterion),
});

const away = record({
  sure_h: z.number().meta({
    description:
      "hours from now that the wanted share of all cases outlasts; 0 when it is not ready now with the wanted chance",
  }),
  median_h: z.number(),
  horizon_h: z.number().meta({ description: "hours looked ahead; a value equal to it means at least" }),
  at_return: atReturn.nullable().meta({ description: "null where no return was named" }),
  course,
});

const engineRun = record({ start: stamp, stop: stamp });

const bridge = record({
  kind: z.enum(["cover", "run", "cover-and-run"]),
  cover_on_by: stamp.nullable().meta({ description: "covers on at the latest then" }),
  runs: z.array(engineRun).meta({
    description: "the engine run outdoors; a single run starts at the latest as given, several as given",
  }),
  run_from: stamp.nullable().meta({ description: "a single run starts no sooner than this" }),
  run_min: z.number().nullable(),
  chance: chance.meta({ description: "over all cases, that every run and the start at the return succeed" }),
});

const furthest = record({
  back: stamp,
  covered: z.boolean(),
  runs: z.array(engineRun),
});

/** What `away` answers. */
export const awaySchema = record({
  ...header,
  kind: z.literal("away"),
  status: answered.meta({
    description: "at the return with covers put on now where there are any, or now where no return was named",
  }),
  wanted_chance: chance,
  back: stamp.nullable().meta({ description: "when it is to be started again" }),
  engine_from: z.enum(["shut-down", "readings", "air"]).meta({
    description: "what the engine's temperatures are known from; air: nobody said, the cold side was taken",
  }),
  shut_down_h_ago: z.number().nullable(),
  covers_on_now: z.array(z.string()),
  cover_off_before_min: z.number().meta({ description: "covers come off this long before a start" }),
  status_now: answered,
  chance_now: chance,
  weakest: z.string().meta({ description: "id of the criterion that holds least often now" }),
  criteria: z.array(criterion).meta({ description: "as they stand now" }),
  start_briefing: start,
  covered: away.nullable().meta({
    description:
      "every cover of the kit put on now and taken off shortly before the start; null where none is carried",
  }),
  uncovered: away.meta({ description: "nothing on the cowl" }),
  bridges: z.array(bridge).meta({
    description:
      "each alone brings it to the return with the wanted chance; empty when none is needed or none does",
  }),
  furthest: furthest.nullable().meta({
    description: "the latest return that covers and runs reach, where no bridge reaches the one asked for",
  }),
  soonest: stamp.nullable().meta({
    description: "when the weather alone makes it ready, where it is not ready now; null when it does not",
  }),
}).meta({ title: "Soakline time away from power" });

/** For results described elsewhere. */
export { criterion as criterionSchema, header as resultHeader, stamp as stampSchema, start as startSchema };

export type StartDocument = z.infer<typeof start>;
export type StampDocument = z.infer<typeof stamp>;
export type CourseDocument = z.infer<typeof course>;
export type CriterionDocument = z.infer<typeof criterion>;
export type HappeningDocument = z.infer<typeof happening>;
export type FlowsDocument = z.infer<typeof flows>;
export type PlanDocument = z.infer<typeof planSchema>;
export type AwayDocument = z.infer<typeof awaySchema>;
export type SimulationDocument = z.infer<typeof simulationSchema>;
export type ExplanationDocument = z.infer<typeof explanationSchema>;
