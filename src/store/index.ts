export { type BackupCounts, backupTo } from "./backup.js";
export type {
  AppendReadingsResult,
  AppendResult,
  DeviceTokenRow,
  ReadingsRequest,
  ReadingsRow,
  Resolution,
  Role,
  SessionRow,
  Store,
  UserRow,
} from "./contract.js";
export { StoreFailure, type StoreFailureKind } from "./failure.js";
export { STORE_VERSION } from "./migrate.js";
export { openStore, type StoreOptions } from "./open-store.js";
export { restoreFrom } from "./restore.js";
