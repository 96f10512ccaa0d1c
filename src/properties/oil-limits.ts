import { findRoot } from "../numerics/index.js";
import { requirePositive } from "../units/index.js";
import { dynamicViscosityOil, type Oil } from "./oil.js";
import { crankingLimitBetweenGrades, SAE_J300_WINTER, VISCOSITY_PUMPING_LIMIT } from "./sae-j300.js";

/** [K] between which an oil's limits are looked for (-100 to +150 °C). */
const TEMP_COLDEST = 173.15;
const TEMP_HOTTEST = 423.15;

/** The coldest temperature at which an oil still passes a limit, and what sets it. */
export interface OilLimit {
  /** [K] */
  readonly temp: number;
  /**
   * "winter-grade": the limit of the oil's own J300 grade; "between-grades": J300 read between its rows, for
   * a straight grade; "pour-point": the oil stops flowing before it reaches the viscosity.
   */
  readonly basis: "winter-grade" | "between-grades" | "pour-point";
}

/**
 * Temperature [K] at which an oil reaches a dynamic viscosity (Walther line, low shear).
 * @param viscosity [Pa s]
 */
export function tempOfDynamicViscosityOil(oil: Oil, viscosity: number): number {
  requirePositive("viscosity", viscosity, "Pa s");
  return zeroOf((temp) => Math.log(dynamicViscosityOil(oil, temp) / viscosity), oil.id);
}

/**
 * Coldest temperature at which the oil can be pumped: where it reaches 60 Pa s (SAE J300, ASTM D4684), or its
 * pour point where that is warmer. An engine run with its oil below this may have no oil pressure; the engine
 * maker's figure comes first.
 */
export function pumpingLimitOil(oil: Oil): OilLimit {
  const temp = tempOfDynamicViscosityOil(oil, VISCOSITY_PUMPING_LIMIT);
  const basis = oil.winterGrade === undefined ? "between-grades" : "winter-grade";
  return notBelowPourPoint(oil, { temp, basis });
}

/**
 * Coldest temperature at which the oil meets the cranking limit of SAE J300: of its own winter grade, or for
 * a straight grade, which J300 gives no limit, where its line crosses {@link crankingLimitBetweenGrades}.
 * Reckoned with low-shear viscosity, so on the warm, safe side for a multigrade. Tells that a starter can
 * turn automotive test engines, not that this engine should be started; the engine maker's preheat figure
 * comes first.
 */
export function crankingLimitOil(oil: Oil): OilLimit {
  if (oil.winterGrade !== undefined) {
    const viscosity = SAE_J300_WINTER[oil.winterGrade].viscosityCranking;
    const temp = tempOfDynamicViscosityOil(oil, viscosity);
    return notBelowPourPoint(oil, { temp, basis: "winter-grade" });
  }
  const temp = zeroOf((t) => Math.log(dynamicViscosityOil(oil, t) / crankingLimitBetweenGrades(t)), oil.id);
  return notBelowPourPoint(oil, { temp, basis: "between-grades" });
}

function notBelowPourPoint(oil: Oil, limit: OilLimit): OilLimit {
  return limit.temp >= oil.pourPoint ? limit : { temp: oil.pourPoint, basis: "pour-point" };
}

/** Temperature at which a function that falls with temperature passes zero, to 1e-6 K. */
function zeroOf(excess: (temp: number) => number, name: string): number {
  const temp = findRoot(excess, TEMP_COLDEST, TEMP_HOTTEST, 1e-6);
  if (temp === undefined) {
    throw new RangeError(
      `invalid oil: ${name} (expected to pass its limit between ${TEMP_COLDEST} and ${TEMP_HOTTEST} K)`,
    );
  }
  return temp;
}
