import { OF_BASE } from "../base/index.js";
import { PROBE_DRIVERS, type ProbeLink } from "../devices/index.js";
import type { Finding } from "../findings/index.js";
import type { BaseSetUp } from "../logbook/index.js";

export interface Probes {
  /** Listens to the probes of a set-up, and no longer to others. */
  setUp(base: BaseSetUp): void;
  troubles(): readonly Finding[];
  close(): Promise<void>;
}

/** Hears every probe of the base, however it speaks. */
export function listenToProbes(link: ProbeLink): Probes {
  const listeners = PROBE_DRIVERS.map((driver) => ({ kind: driver.kind, listener: driver.listen(link) }));
  return {
    setUp({ aircraft, probes }) {
      const sources = [
        ...aircraft.flatMap((one) => one.probes.map((probe) => ({ aircraft: one.id, probe }))),
        ...probes.map((probe) => ({ aircraft: OF_BASE, probe })),
      ];
      for (const { kind, listener } of listeners)
        listener.listenTo(sources.filter(({ probe }) => probe.via?.kind === kind));
    },
    troubles: () => listeners.flatMap(({ listener }) => listener.troubles()),
    close: async () => {
      await Promise.all(listeners.map(({ listener }) => listener.close()));
    },
  };
}
