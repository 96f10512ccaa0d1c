export { awayScreen, bridgeLine } from "./away.js";
export { kitScreen } from "./kit.js";
export { type KnownPlan, planScreen, weakestLine } from "./plan.js";
export type { Fact, FirstScreen } from "./screen.js";
export { thawScreen, triedLine, worstRefreeze } from "./thaw.js";
export { wetHours, winterScreen } from "./winter.js";
