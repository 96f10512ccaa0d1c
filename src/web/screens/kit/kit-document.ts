import type { KitDocument, ScenarioDocument } from "../../../documents/index.js";

export type Switching = KitDocument["kits"][number]["switching"];

/** A kit as it is put together on the screen. */
export interface KitChoice {
  readonly name: string;
  readonly heaters: readonly string[];
  readonly covers: readonly string[];
  readonly switching: Switching;
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
