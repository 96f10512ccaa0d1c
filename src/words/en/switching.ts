import type { SwitchingFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const switching: Phrases<SwitchingFindings> = {
  "server-stops": () => "the server stops",
  "unknown-after-start": () => "nothing is known after a start",
  "unknown-after-lost-link": () => "after a lost link nothing is known",
  "unknown-after-failed-command": () => "a command failed: where it stands is not known",
  "on-perhaps-late": () => "it says on, perhaps late",
  "switched-on-by-other": () => "somebody else switched it on",
  "switched-off-by-other": () => "somebody switched it off, perhaps with the hands in there",
  "switched-off-by-hand": () => "switched off by hand",
  "switched-on-by-hand": () => "switched on by hand",
  "plan-was-withdrawn": () => "the plan was withdrawn",
  "outside-wanted-hours": () => "outside the hours in which it is wanted",
  "on-by-plan": ({ plan }) => `plan ${plan ?? "without a name"}`,
  "switch-locked": ({ fault }) => `locked since the fault "${fault}" until a person acknowledges it`,
  "switch-unconfirmed": ({ to, within_s }) =>
    `commanded ${to}, but no confirmation came within ${within_s} s`,
  "switch-memory-lost": () =>
    "what was saved of this switch cannot be read: whether it was on, and for how long, is not known",
  "switch-silent": () => "the switch does not answer",
  "switching-failed": ({ error }) => `the switching failed: ${error}`,
  "clock-jumped": () => "the clock was set or has jumped: hours are not believed yet",
  "nothing-written-down": () => "nothing can be written down: on-time could be forgotten",
  "probe-too-hot": ({ probe, temp_c, at_most_c }, say) =>
    `${probe} is at ${say.temp(temp_c, 1)}, above its limit of ${say.temp(at_most_c)}`,
  "probe-stuck": ({ probe, temp_c, for_min }, say) =>
    `${probe} has said exactly ${say.temp(temp_c, 1)} for ${for_min} min with the heater on`,
  "probe-silent": ({ probe, within_s }) => `nothing fresh from ${probe} within ${within_s} s`,
  "on-time-used-up": ({ longest_min }) =>
    `its longest on-time of ${longest_min} min is used up: it rests first`,
  "fault-ends-itself": ({ fault }) => `"${fault}" ends by itself when its cause does`,
  "fault-not-open": ({ fault }) => `there is no fault "${fault}" to acknowledge`,
  "off-not-confirmed": () => "the switch has not confirmed off yet",
  "switch-not-ready": () => "the switch is not ready yet",
  "switch-unsafe": ({ issues }) => {
    const told = issues.map(
      ({ place, expected, received }) => `${place}: expected ${expected}, received ${received}`,
    );
    return `its set-up is not safe (${told.join("; ")})`;
  },
  "switch-no-on-time": () =>
    "This switch does not go off by itself. If the base's computer stops, the broker switches it off. If the broker or " +
    "the network stops too, the heater stays on. Use a device that goes off by itself, or put a mains timer in the line.",
  "plan-not-switched": ({ reason }, say) => `The plan is not switched: ${say.finding(reason)}.`,
  "heater-needs-somebody": ({ heater }) =>
    `${heater} is not to run unattended: somebody who stays with it switches it on`,
  "chance-too-low-to-heat": ({ chance }, say) =>
    `with a chance of ${say.percent(chance)} somebody has to decide whether to heat`,
  "circuit-overloaded": ({ circuit, load_w, limit_w, share }, say) =>
    `${circuit} would carry ${say.number(load_w)} W, more than the ${say.number(limit_w)} W that a continuous load may draw (${say.percent(share)} of its breaker)`,
  "store-not-writable": () => "The store cannot be written: heaters stay off.",
  "broker-unreachable": () => "The broker cannot be reached: no probe is heard.",
  "switch-no-answer": (values) => `The switch ${values.switch} does not answer.`,
  "switch-stays-off": (values, say) =>
    `The switch ${values.switch} stays off: ${say.finding(values.reason)}.`,
  "switch-cannot-be-used": (values) => `${values.switch} cannot be switched: ${values.error}`,
  "aircraft-not-worked-out": ({ aircraft, error }) => `${aircraft} could not be worked out: ${error}`,
  "no-estimate": ({ aircraft, reason }, say) => `no estimate of ${aircraft}: ${say.finding(reason)}`,
  "no-plan": ({ aircraft, reason }, say) => `no plan for ${aircraft}: ${say.finding(reason)}`,
  "aircraft-was-started": () => "the aircraft was started",
  "departure-no-longer-wanted": () => "the departure is no longer wanted",
  "heater-seems-cold": ({ chance }, say) =>
    `the temperatures look as if the heater did not heat; look at lead, plug and fuse (chance ${say.percent(chance)})`,
  "cover-seems-off": ({ chance }, say) =>
    `the temperatures look as if the cover were not on (chance ${say.percent(chance)})`,
  "probe-seems-out": ({ chance }, say) =>
    `this probe no longer fits the others; look whether it has come off its part (chance ${say.percent(chance)})`,
};
