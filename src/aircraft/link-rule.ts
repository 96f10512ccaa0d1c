import type { Link, Source } from "../thermal/index.js";
import type { Configuration } from "./configuration.js";

/** A link with its conductance [W/K] in a configuration. */
export interface LinkRule {
  readonly link: Link;
  readonly conductance: (configuration: Configuration) => number;
}

/** A source with its power [W] in a configuration. */
export interface SourceRule {
  readonly source: Source;
  readonly power: (configuration: Configuration) => number;
}

/** A link whose conductance no configuration changes. */
export function fixed(link: Link, wPerK: number): LinkRule {
  return { link, conductance: () => wPerK };
}
