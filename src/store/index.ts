export type {
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
