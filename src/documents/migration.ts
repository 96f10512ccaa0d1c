/** A step from one version of a document to the next. */
export interface Migration {
  readonly from: number;
  /** Returns the document in the form of version `from + 1`; the version number itself is set by the chain. */
  migrate(document: Readonly<Record<string, unknown>>): Record<string, unknown>;
}
