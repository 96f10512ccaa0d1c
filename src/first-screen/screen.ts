import type { Finding, Label, SaidCaution } from "../findings/index.js";

/** The first screen of an answer, whatever shows it: what to do, in the order in which it is needed. */
export interface FirstScreen {
  /** The sentence or two that say it all. */
  readonly verdict: readonly Finding[];
  /** About eight, each with its label. */
  readonly facts: readonly Fact[];
  /** Those that belong to this kit and this night, the gravest first. */
  readonly cautions: readonly SaidCaution[];
}

/** A line of a first screen, or a few under one label. */
export interface Fact {
  readonly label: Label;
  readonly texts: readonly Finding[];
}

/** The fact in a list of facts; none where there is nothing to say. */
export function fact(label: Label, ...texts: readonly Finding[]): Fact[] {
  return texts.length === 0 ? [] : [{ label, texts }];
}
