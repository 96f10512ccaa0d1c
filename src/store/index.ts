export type {
  AppendReadingsResult,
  AppendResult,
  DeviceTokenRow,
  ProbeReading,
  ReadingsRequest,
  ReadingsRow,
  Resolution,
  Role,
  SessionRow,
  Store,
  UserRow,
} from "./contract.js";
