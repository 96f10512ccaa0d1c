export { backupTo } from "./backup.js";
export type {
  AppendReadingsResult,
  AppendResult,
  DeviceTokenRow,
  ReadingsRow,
  Resolution,
  Role,
  Store,
  UserRow,
} from "./contract.js";
export { StoreFailure } from "./failure.js";
export { openStore } from "./open-store.js";
export { restoreFrom } from "./restore.js";
