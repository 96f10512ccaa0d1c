import { readdirSync, readFileSync } from "node:fs";
import { z } from "zod";

// One measured engine on one occasion, as a file of data/measured-runs.

const reading = z
  .strictObject({
    at_h: z.number().positive(),
    part: z
      .enum(["oil", "heads", "battery", "coolant"])
      .meta({ description: "heads: the mean of all heads" }),
    c: z.number(),
    coldest_c: z.number().exactOptional(),
    hottest_c: z.number().exactOptional(),
    error_k: z.number().positive().meta({ description: "standard deviation of the reading" }),
  })
  .readonly();

const runSchema = z
  .strictObject({
    run: z.string(),
    process: z.enum(["cool-down", "heat-up"]),
    aircraft: z.strictObject({
      id: z.string().meta({ description: "runs of one aircraft share it" }),
      engine: z.string(),
      described_as: z
        .string()
        .meta({ description: "the installation of the catalogue that is nearest, or one of nearest.ts" }),
    }),
    grade: z.enum(["logged", "read-by-eye", "owner-report"]),
    source: z.string(),
    remark: z.string().exactOptional(),
    set_a_constant: z
      .literal(true)
      .exactOptional()
      .meta({ description: "a constant of the model was taken from it: it judges nothing" }),
    only_shape: z
      .literal(true)
      .exactOptional()
      .meta({ description: "no aircraft's engine: shown for the shape of its course, judges nothing" }),
    unrecorded: z.array(z.enum(["wind", "cover", "place"])),
    place: z.enum(["ramp", "hangar"]),
    wind_mps: z
      .tuple([z.number(), z.number()])
      .meta({ description: "at 10 m; from and to where unrecorded" }),
    air_c: z.array(z.tuple([z.number(), z.number()])).min(2),
    heaters: z.array(z.string()).default([]),
    covers: z.array(z.string()).default([]),
    start: z.strictObject({
      shut_down: z.literal(true).exactOptional(),
      heads_c: z.number().exactOptional(),
      oil_c: z.number().exactOptional(),
      coolant_c: z.number().exactOptional(),
      others_c: z.number().exactOptional(),
      error_k: z.number(),
    }),
    readings: z.array(reading).min(1),
  })
  .readonly();

export type MeasuredRun = z.infer<typeof runSchema>;
export type MeasuredReading = z.infer<typeof reading>;

const FOLDER = new URL("../../data/measured-runs/", import.meta.url);

/** Every run there is, in the order of their names; a file that is no run is an error that names it. */
export function measuredRuns(): MeasuredRun[] {
  return readdirSync(FOLDER)
    .filter((name) => name.endsWith(".json"))
    .sort()
    .map((name) => {
      const run = runSchema.safeParse(JSON.parse(readFileSync(new URL(name, FOLDER), "utf8")));
      if (!run.success) throw new Error(`data/measured-runs/${name}: ${z.prettifyError(run.error)}`);
      if (`${run.data.run}.json` !== name)
        throw new Error(`data/measured-runs/${name}: run is ${run.data.run}`);
      return run.data;
    });
}
