import type { LearningFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const learning: Phrases<LearningFindings> = {
  "heat-unsure": ({ heater, kind, percent }) =>
    `How much heat it brings is ${kind === "scaled" ? "scaled from another heater" : "estimated"}, not measured: cases differ by ${percent} % more for it (${heater}).`,
  "learned-from": ({ readings, origins, isReset }) =>
    `This aircraft's numbers are as learned from ${readings} readings (${origins.join(", ")})${isReset ? "; what was learned under other covers, heaters or at another place counts as unknown" : ""}.`,
  "learned-at-base": ({ aircraft }, say) =>
    `What aircraft of one kind at this base have in common is as learned on ${say.list(aircraft)}.`,
  "reading-contradicts": ({ probe, at, reading_c, model_c }, say) =>
    `${probe} read ${say.temp(reading_c)} at ${say.clock(at)} where the model says ${say.temp(model_c)}. Is it the probe, its place, or the model?`,
  "air-as-measured": ({ probes }, say) =>
    `The air around the aircraft is as ${say.list(probes)} measured it, not as the weather has it.`,
  "corrected-by-record": ({ plans, colder_k, spread }, say) => {
    const air =
      colder_k === 0
        ? []
        : [
            `as if outside were ${say.difference(Math.abs(colder_k), 1)} ${colder_k > 0 ? "colder" : "warmer"}`,
          ];
    const cases = spread === 1 ? [] : [`with cases ${say.number(spread, 2)} times as far apart`];
    return `Corrected by this base's own record of ${plans} plans: planned ${say.list([...air, ...cases])}.`;
  },
  "unknown-snow": () => "snow or ice on the cowl",
  "unknown-air": () => "lasting error of the air temperature",
  "unknown-start": ({ part }) => `initial temperature of ${part ?? "all parts"}`,
  "unknown-offset": ({ probe }) => `offset of probe ${probe}`,
  "unknown-lag": ({ probe }) => `lag of probe ${probe}`,
};
