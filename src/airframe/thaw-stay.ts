import type { WeatherSeries } from "../weather/index.js";
import type { RefreezeRequest } from "./refreeze.js";
import type { ThawRequest } from "./thaw.js";
import type { WingSite } from "./wing-weather.js";

/** How a thawed aircraft leaves; `at` is [s] from the start. */
export interface RollOut extends Pick<RefreezeRequest, "outside" | "falling" | "timeOutside" | "climb"> {
  readonly at: number;
}

/** An aircraft in a hangar, and how it is to leave it. */
export interface ThawStay {
  /** [s] since epoch of the roll-in. */
  readonly start: number;
  readonly request: ThawRequest;
  /** Where it stands after roll-out. */
  readonly site: WingSite;
  readonly rollOut: RollOut | undefined;
  /** Outside from the roll-in as far as it is known. */
  readonly weather: WeatherSeries | undefined;
}
