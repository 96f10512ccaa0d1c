import type { Caution } from "../aircraft/index.js";

/** What can hurt when a base shares its power, its hangar and its people. */
export const BASE_CAUTIONS = {
  circuit: {
    text: "The plan knows only the heaters named in it: whatever else hangs on a circuit comes on top. A breaker that trips leaves everything on it cold; a cable, reel or adapter that is warm to the hand comes out of use. A residual-current device belongs on every outlet outside",
    source: "common practice, no published source; local electrical code decides",
  },
  generator: {
    text: "A generator runs in the open and away from doors and intakes: its exhaust holds carbon monoxide. It is not refuelled while hot, and somebody stays within call while it runs",
    source: "common practice, no published source; the maker's instructions decide",
  },
  moving: {
    text: "Propeller as if live, chocks and cord out before moving, somebody at the wing tip; an aircraft brought in with fuel or a hot heater near vapour is a fire risk",
    source: "common practice, no published source; the handbook and hangar rules decide",
  },
} as const satisfies Record<string, Caution>;
