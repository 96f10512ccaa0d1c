import { randomUUID } from "node:crypto";
import { type Finding, finding } from "../findings/index.js";
import type { NowDocument } from "../index.js";
import type { AircraftState, EventOf, FaultCode } from "../logbook/index.js";

type Deviation = NowDocument["deviations"][number];

/** What the live estimate noticed, as faults of the logbook: each once for as long as it lasts. */
export interface EstimateFaults {
  /** Faults to be written down for what is new in an estimate. */
  newFaults(aircraft: AircraftState, now: NowDocument, at: string): EventOf<"fault">[];
}

const FAULTS: Readonly<
  Partial<Record<Deviation["finding"], readonly [FaultCode, (chance: number) => Finding]>>
> = {
  "heater-not-heating": ["heater-not-heating", (chance) => finding("heater-seems-cold", { chance })],
  "cover-off": ["cover-off", (chance) => finding("cover-seems-off", { chance })],
  "probe-out": ["probe-out", (chance) => finding("probe-seems-out", { chance })],
};

export function createEstimateFaults(): EstimateFaults {
  const raised = new Map<string, Set<string>>();
  return {
    newFaults({ setUp, faults }, { deviations }, at) {
      const said = raised.get(setUp.id) ?? new Set(faults.map(({ fault, probe }) => keyOf(fault, probe)));
      const lasting = new Set<string>();
      const events = deviations.flatMap((deviation): EventOf<"fault">[] => {
        const { believed, probe, chance } = deviation;
        const [fault, text] = FAULTS[deviation.finding] ?? [];
        if (!believed || fault === undefined || text === undefined) return [];
        const key = keyOf(fault, probe);
        lasting.add(key);
        if (said.has(key)) return [];
        // A reading by hand is no probe of the set-up.
        const known = probe !== undefined && setUp.probes.some(({ id }) => id === probe);
        const event = { kind: "fault", id: randomUUID(), at, by: "keeper", aircraft: setUp.id } as const;
        return [{ ...event, fault, ...(known ? { probe } : {}), text: text(chance) }];
      });
      raised.set(setUp.id, lasting);
      return events;
    },
  };
}

function keyOf(fault: string, probe: string | undefined): string {
  return `${fault} ${probe ?? ""}`;
}
