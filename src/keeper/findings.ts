import { randomUUID } from "node:crypto";
import type { NowDocument } from "../index.js";
import type { AircraftState, EventOf, FaultCode } from "../logbook/index.js";

type Deviation = NowDocument["deviations"][number];

/** What the live estimate noticed, as faults of the logbook: each once for as long as it lasts. */
export interface FindingFaults {
  /** Faults to be written down for what is new in an estimate. */
  newFaults(aircraft: AircraftState, now: NowDocument, at: string): EventOf<"fault">[];
}

const CODES: Readonly<Partial<Record<Deviation["finding"], FaultCode>>> = {
  "heater-not-heating": "heater-not-heating",
  "cover-off": "cover-off",
  "probe-out": "probe-out",
};

const WORDS: Readonly<Record<string, string>> = {
  "heater-not-heating": "the temperatures look as if the heater did not heat; look at lead, plug and fuse",
  "cover-off": "the temperatures look as if the cover were not on",
  "probe-out": "this probe no longer fits the others; look whether it has come off its part",
};

export function createFindingFaults(): FindingFaults {
  const raised = new Map<string, Set<string>>();
  return {
    newFaults({ setUp, faults }, { deviations }, at) {
      const said = raised.get(setUp.id) ?? new Set(faults.map(({ fault, probe }) => keyOf(fault, probe)));
      const believed = deviations.filter((deviation) => deviation.believed);
      const lasting = new Set<string>();
      const events = believed.flatMap(({ finding, probe, chance }): EventOf<"fault">[] => {
        const fault = CODES[finding];
        if (fault === undefined) return [];
        const key = keyOf(fault, probe);
        lasting.add(key);
        if (said.has(key)) return [];
        // A reading by hand is no probe of the set-up.
        const known = setUp.probes.some(({ id }) => id === probe);
        return [
          {
            ...{ kind: "fault", id: randomUUID(), at, by: "keeper", aircraft: setUp.id, fault },
            ...(probe !== undefined && known ? { probe } : {}),
            text: `${WORDS[fault]} (chance ${Math.round(100 * chance)} %)`,
          },
        ];
      });
      raised.set(setUp.id, lasting);
      return events;
    },
  };
}

function keyOf(fault: string, probe: string | undefined): string {
  return `${fault} ${probe ?? ""}`;
}
