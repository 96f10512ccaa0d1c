import fc from "fast-check";

// Random cases are the same in every run, unless another seed is asked for.
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(process.env.TEST_SEED ?? 20_261_130) });
