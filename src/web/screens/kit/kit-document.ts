import type { KitDocument, ScenarioDocument } from "../../../documents/index.js";
import type { AircraftView } from "../../worker/protocol.js";

export type Switching = KitDocument["kits"][number]["switching"];

/** A kit as it is put together on the screen. */
export interface KitChoice {
  name: string;
  heaters: readonly string[];
  covers: readonly string[];
  switching: Switching;
}

/** A pad under the sump, for comparison and for who has nothing yet. */
const PAD = "sump-pad-220";

/** The kit of an aircraft, or else the pad under that name. */
export function ownKit(own: AircraftView | undefined, padName: string): KitChoice {
  const hasHeater = own !== undefined && own.heaters.length > 0;
  return {
    name: hasHeater ? own.name : padName,
    heaters: hasHeater ? own.heaters.map(({ id }) => id) : [PAD],
    covers: own?.covers.map(({ id }) => id) ?? [],
    switching: "by_hand",
  };
}

/** Those that go on an engine with so many cylinders. */
export function fitting<H extends { readonly cylinders: number | undefined }>(
  heaters: readonly H[],
  cylinders: number | undefined,
): H[] {
  return heaters.filter((h) => h.cylinders === undefined || h.cylinders === cylinders);
}

/** The most kits that stand side by side on a screen. */
export const MOST_KITS = 6;
/** Drawn cases: enough to tell kits apart, few enough for a phone. */
const MEMBERS = 60;

/** The question as a document; the aircraft's own kit is left out of the scenario it is taken from. */
export function kitDocument(scenario: ScenarioDocument, kits: readonly KitChoice[]): KitDocument {
  const { name, aircraft, learned, zone, place, hangar, site, limits, start, hours, initial, weather, want } =
    scenario;
  return {
    soakline: 2,
    kind: "kit",
    name,
    aircraft,
    place,
    ...(learned === undefined ? {} : { learned }),
    ...(zone === undefined ? {} : { zone }),
    ...(hangar === undefined ? {} : { hangar }),
    ...(site === undefined ? {} : { site }),
    ...(limits === undefined ? {} : { limits }),
    ...(want === undefined
      ? {}
      : {
          tonight: {
            ...{ start, hours, weather, departure: want.departure },
            ...(initial === undefined ? {} : { initial }),
            ...(want.pulled_out === undefined ? {} : { pulled_out: want.pulled_out }),
          },
        }),
    chance: Math.min(0.99, Math.max(0.5, want?.chance ?? 0.9)),
    kits: kits.map(({ heaters, covers, ...rest }) => ({
      ...rest,
      heaters: [...heaters],
      covers: [...covers],
    })),
    ensemble: { members: MEMBERS, seed: 1 },
  };
}
