import type { Configuration, Installation, Kit } from "../aircraft/index.js";
import type { Site } from "../simulation/index.js";

/** What is known of an aircraft that stands somewhere, before its temperatures. */
export interface StandingAircraft {
  readonly installation: Installation;
  readonly kit: Kit;
  readonly configuration: Configuration;
  readonly site: Site;
}
