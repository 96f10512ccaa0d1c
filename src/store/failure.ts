export type StoreFailureKind =
  | "newer-version"
  | "migration-failed"
  | "not-a-store"
  | "not-empty"
  | "backup-damaged"
  | "backup-of-newer-version";

/** The store or a backup cannot be used; the message says why and what to do. */
export class StoreFailure extends Error {
  readonly kind: StoreFailureKind;

  constructor(kind: StoreFailureKind, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = "StoreFailure";
    this.kind = kind;
  }
}
