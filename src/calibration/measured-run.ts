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
    occasion: z
      .string()
      .exactOptional()
      .meta({ description: "runs of one night or flight share it; the run itself without it" }),
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

/** @throws where the text is no run, or not of this name: what was expected and received, in one message. */
export function readMeasuredRun(name: string, text: string): MeasuredRun {
  const run = runSchema.safeParse(JSON.parse(text));
  if (!run.success) throw new Error(`data/measured-runs/${name}: ${z.prettifyError(run.error)}`);
  if (`${run.data.run}.json` !== name) throw new Error(`data/measured-runs/${name}: run is ${run.data.run}`);
  return run.data;
}
