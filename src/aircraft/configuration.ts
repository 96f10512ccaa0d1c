/** What is switched, fitted and where: everything that jumps at known times. */
export interface Configuration {
  readonly place: "ramp" | "hangar";
  /** Ids of the heaters that have power now. */
  readonly heatersOn: ReadonlySet<string>;
  /** Ids of the covers that are fitted now. */
  readonly coversOn: ReadonlySet<string>;
}
