export { createAccounts } from "./access/accounts.js";
export { checkBinding } from "./access/address.js";
export { newSetUpCode } from "./access/secrets.js";
export { createServer } from "./create-server.js";
export type { HandOutcome, HandSwitching, Live, LiveChange, StandingPlan } from "./live.js";
export type { AccessOptions, LogLevel, ServerOptions } from "./options.js";
