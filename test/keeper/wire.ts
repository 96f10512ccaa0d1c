import { z } from "zod";
import type { ProbeDriver, SwitchDriver } from "../../src/devices/driver.js";
import { record } from "../../src/documents/index.js";
import type { ProbeProtocol, SwitchProtocol } from "../../src/switching/protocols/protocol.js";

// A switch and a probe on a wire, which no line of the program knows: what it takes to add a protocol is here, and the
// two lists it is added to.

const switchSchema = record({
  kind: z.literal("wire"),
  line: z.string(),
  hear: record({ on: z.string(), off: z.string() }),
});
export const wireSwitch: SwitchProtocol<typeof switchSchema> = {
  schema: switchSchema,
  hasLastWill: false,
  issues: () => [],
  onTexts: () => [],
  canBeToldOff: () => true,
  secretNames: () => [],
  command: ({ line }) => ({ path: ["line"], text: line }),
  state: ({ line }) => ({ path: ["line"], text: line }),
  beside: () => [],
};
export const wire = { is: "off", told: [] as string[] };
export const wireSwitches: SwitchDriver = {
  kind: "wire" as never,
  connect(of) {
    const line = (of.via as unknown as z.infer<typeof switchSchema>).line;
    let hear = (_: "on" | "off") => {};
    return {
      async command(to) {
        wire.told.push(`${line} ${to}`);
        wire.is = to;
        queueMicrotask(() => hear(to));
      },
      onState: (listener) => {
        hear = listener;
      },
      onLink: (listener) => listener(true),
      close: async () => undefined,
    };
  },
};

const probeSchema = record({ kind: z.literal("wire"), pair: z.int() });
export const wireProbe: ProbeProtocol<typeof probeSchema> = { schema: probeSchema, issues: () => [] };
export const wireProbes: ProbeDriver = {
  kind: "wire" as never,
  listen: ({ onReading, clock }) => ({
    listenTo(sources) {
      for (const { aircraft, probe } of sources)
        onReading({ aircraft, probe: probe.id, time: clock(), tempC: -7 });
    },
    troubles: () => [],
    close: async () => undefined,
  }),
};
