export { type Accounts, createAccounts } from "./access/accounts.js";
export { type Binding, checkBinding } from "./access/address.js";
export { newSetUpCode } from "./access/secrets.js";
export { createServer } from "./create-server.js";
export type { HandOutcome, HandSwitching, Live, LiveChange, LiveHealth, StandingPlan } from "./live.js";
export { type AccessOptions, LIMITS, type Limits, type LogLevel, type ServerOptions } from "./options.js";
