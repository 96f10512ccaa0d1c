import { CAUTIONS, type Caution, type Kit } from "../aircraft/index.js";
import { keyOf } from "../findings/index.js";

/** Most cautions of a first screen. */
const MOST = 2;

/** What kills first, over all kits, then what belongs to the best one. */
export function firstCautions(best: Kit | undefined, kits: readonly Kit[]): Caution[] {
  const has = (kit: Kit, caution: Caution) =>
    kit.heaters.some(({ cautions }) => cautions.some((one) => keyOf(one) === keyOf(caution)));
  const own = [
    CAUTIONS.unattended,
    CAUTIONS.superficial,
    CAUTIONS.sumpOnly,
    CAUTIONS.batteryHeat,
    CAUTIONS.inspectDaily,
  ].filter((caution) => best !== undefined && has(best, caution));
  const burns = kits.some((kit) => has(kit, CAUTIONS.carbonMonoxide)) ? [CAUTIONS.carbonMonoxide] : [];
  return [...burns, ...own].slice(0, MOST);
}
